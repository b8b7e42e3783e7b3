using System.Text;
using Handhold.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var cancelled = new CancellationTokenSource();
Console.CancelKeyPress += (_, press) =>
{
    press.Cancel = !cancelled.IsCancellationRequested; // the first press stops the work in good order, the second at once
    cancelled.Cancel();
};
using var input = new StreamReader(Console.OpenStandardInput(), Encoding.UTF8);
return CommandLine.Run(
    args,
    new Desk(input, Console.Out, Console.Error, cancelled.Token)
    {
        Width = Console.IsOutputRedirected || Console.WindowWidth < 40 ? null : Console.WindowWidth,
        Watched = !Console.IsErrorRedirected,
    }
);
