namespace Handhold.Cli;

/// <summary>Where one run reads and writes.</summary>
internal sealed class Desk(TextReader input, TextWriter output, TextWriter error, CancellationToken cancellation = default)
{
    public TextReader Input { get; } = input;
    public TextWriter Output { get; } = output;
    public TextWriter Error { get; } = error;
    public CancellationToken Cancellation { get; } = cancellation;

    /// <summary>Columns of the terminal behind <see cref="Output"/>; null when it is redirected.</summary>
    public int? Width { get; init; }

    /// <summary>Whether somebody watches <see cref="Error"/>, so that progress is worth showing.</summary>
    public bool Watched { get; init; }
}
