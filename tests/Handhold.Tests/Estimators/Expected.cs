using System.Text.Json;

namespace Handhold.Tests.Estimators;

/// <summary>The numbers of a reference case, by path.</summary>
internal static class Expected
{
    internal static JsonElement Of(string caseName, params string[] path)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(GoldenFolder.PathOf(caseName, "expected.json")));
        return path.Aggregate(document.RootElement, (element, name) => element.GetProperty(name)).Clone();
    }

    internal static double Number(string caseName, params string[] path) => Of(caseName, path).GetDouble();

    /// <summary>Our name of a column for the reference's.</summary>
    internal static string Column(string reference) =>
        reference switch
        {
            "(Intercept)" => "intercept",
            "x" => "log2Exposure",
            "sexM" => "sex=M",
            "sexM:x" => "log2Exposure×sex=M",
            "photographerbob" => "photographer=bob",
            _ => throw new ArgumentException($"No column for {reference}."),
        };

    internal static Coefficient Coefficient(this KeeperCurve curve, string name) => curve.Linear!.Coefficients.Single(c => c.Name == name);
}
