using ScottPlot;

namespace Handhold.Plots;

/// <summary>Breaking text into lines.</summary>
internal static class Paragraph
{
    /// <summary>The words of <paramref name="text"/> in lines of at most <paramref name="width"/> pixels; a longer word has its own line.</summary>
    public static string Wrap(string text, float width, LabelStyle style, Paint paint)
    {
        List<string> lines = [];
        var line = "";
        foreach (var word in text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && style.Measure(longer, paint).Width > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        lines.Add(line);
        return string.Join('\n', lines);
    }
}
