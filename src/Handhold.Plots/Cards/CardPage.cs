using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Text;

namespace Handhold.Plots;

/// <summary>Cards as one HTML page that needs no other file.</summary>
internal static class CardPage
{
    private const string Style = """
        :root { color-scheme: light dark; --paper: #fff; --ink: #20272b; --quiet: #555d62; --bar: #0a4558; --rule: #d9d3c7; --strong: #8f3f08 }
        @media (prefers-color-scheme: dark) { :root { --paper: #15191c; --ink: #eceff0; --quiet: #b3bcc1; --bar: #7cc4d6; --rule: #3d464b; --strong: #f2a56a } }
        * { box-sizing: border-box; margin: 0 }
        body { background: var(--paper); color: var(--ink); font: 16px/1.3 'Source Sans 3', 'Source Sans Pro', Arial, sans-serif }
        article { max-width: 30rem; margin: 0 auto; padding: 1rem }
        article + article { border-top: 1px solid var(--rule) }
        h2 { font-size: 1.2rem; line-height: 1.2; overflow-wrap: anywhere }
        .trust { margin: .5rem 0; color: var(--strong) }
        .trust strong { display: block; font-size: 1.75rem; line-height: 1.15 }
        table { width: 100%; border-collapse: collapse; font-size: 1.125rem }
        th, td { padding: .3rem .2rem; text-align: right; font-weight: 400; white-space: nowrap; border-top: 1px solid var(--rule) }
        thead th { font-size: .9rem; color: var(--quiet); border-top: 0; vertical-align: bottom; padding-top: 0; padding-bottom: 0 }
        tbody th, thead th[rowspan] { text-align: left }
        tbody th { font-weight: 700 }
        .rate { width: 40%; text-align: left; padding-left: .5rem }
        .rate span { display: inline-block; width: 3.1rem; text-align: right }
        .rate svg { width: calc(100% - 3.6rem); height: 1rem; vertical-align: -.15rem; margin-right: .3rem }
        .support { margin: .6rem 0; padding: .4rem .5rem; border: 2px solid var(--strong); font-weight: 700 }
        .note { font-size: .875rem; color: var(--quiet); margin-top: .2rem }
        @media print {
          :root { --paper: #fff; --ink: #000; --quiet: #444; --bar: #0a4558; --rule: #bbb; --strong: #7a3300 }
          body { font-size: 8.5pt; line-height: 1.2 }
          article { width: 105mm; height: 147.5mm; max-width: none; margin: 0; padding: 6mm; break-inside: avoid; border: 0 !important }
          h2 { font-size: 11pt }
          .trust { margin: 1.5mm 0 }
          .trust strong { font-size: 15pt }
          table { font-size: 10pt }
          thead th, .note { font-size: 7.5pt }
          th, td { padding: .75mm 1mm }
          .rate svg { height: 9pt }
          .support { margin: 1.5mm 0; padding: 1mm 1.5mm; border-width: 1pt }
        """;

    private const string OnA6 = """
          @page { size: 105mm 148mm; margin: 0 }
          article + article { break-before: page }
        }
        """;

    private const string OnA4 = """
          @page { size: A4; margin: 0 }
          article { float: left }
          article:nth-of-type(4n+5) { break-before: page }
        }
        """;

    public static string Write(ImmutableArray<CardFace> faces, CardPaper paper)
    {
        StringBuilder page = new();
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            <!doctype html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{Text(faces.Length == 1 ? faces[0].Title : "Field cards")}</title>
            <style>
            {Style}
            {(paper == CardPaper.A4 ? OnA4 : OnA6)}
            </style>
            </head>
            <body>

            """
        );
        foreach (var face in faces)
        {
            Card(page, face);
        }

        return page.Append("</body>\n</html>\n").Replace("\r\n", "\n").ToString();
    }

    private static void Card(StringBuilder page, CardFace face)
    {
        var columns = string.Concat(CardFace.Assurances.Select(c => $"<th scope=\"col\">{Text(CurveWords.Percent(c))}</th>"));
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            <article>
            <h2>{Text(face.Title)}</h2>
            <p class="trust"><strong>{Text(face.Trust.Head)}</strong> {Text(face.Trust.Meaning)}</p>
            <table>
            <thead>
            <tr><th scope="col" rowspan="2">Speed</th><th scope="col" rowspan="2" class="rate">Keepers</th><th scope="colgroup" colspan="3">Frames for one keeper</th></tr>
            <tr>{columns}</tr>
            </thead>
            <tbody>

            """
        );
        foreach (var row in face.Rows)
        {
            page.Append(
                CultureInfo.InvariantCulture,
                $"<tr><th scope=\"row\">{Text(row.Speed)}</th><td class=\"rate\">{Bar(row.Rate)}<span>{Text(CardWords.Rate(row.Rate))}</span></td>{string.Concat(row.Frames.Select(f => $"<td>{Text(f)}</td>"))}</tr>\n"
            );
        }

        page.Append(CultureInfo.InvariantCulture, $"</tbody>\n</table>\n<p class=\"support\">{Text(face.Support)}</p>\n");
        foreach (var note in face.Notes)
        {
            page.Append(CultureInfo.InvariantCulture, $"<p class=\"note\">{Text(note)}</p>\n");
        }

        page.Append("</article>\n");
    }

    /// <summary>A bar up to the median, and a line over the interval; drawn shapes are printed where backgrounds are not.</summary>
    private static string Bar(RateEstimate? rate) =>
        rate is null
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture,
                $"<svg viewBox=\"0 0 100 16\" preserveAspectRatio=\"none\" aria-hidden=\"true\"><rect x=\"0\" y=\"0\" width=\"{100 * rate.Median:0.#}\" height=\"10\" fill=\"var(--bar)\"/><rect x=\"{100 * rate.Interval.Lower:0.#}\" y=\"12.5\" width=\"{Math.Max(0.5, 100 * (rate.Interval.Upper - rate.Interval.Lower)):0.#}\" height=\"2.5\" fill=\"var(--quiet)\"/></svg>"
            );

    private static string Text(string text) => WebUtility.HtmlEncode(text);
}
