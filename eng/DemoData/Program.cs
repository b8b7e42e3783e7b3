using DemoData;

// Writes the demo table into the folder given.
if (args is not [var folder])
{
    await Console.Error.WriteLineAsync("Usage: dotnet run --project eng/DemoData -- shared/demo").ConfigureAwait(false);
    return 2;
}
await File.WriteAllTextAsync(Path.Combine(folder, "clock-museum.csv"), ClockMuseum.Csv()).ConfigureAwait(false);
return 0;
