namespace Handhold.Cli.Tests;

/// <summary>Small tables, made by hand.</summary>
internal static class Tables
{
    /// <summary>One curve, one day, no bursts recorded.</summary>
    public const string Plain = """
        exposure,frames,keepers
        1/125,6,6
        1/60,6,5
        1/30,6,4
        1/15,6,2
        1/8,6,0
        """;

    /// <summary>Two lenses of one photographer, judged on prints, in bursts of two days; some frames not judged.</summary>
    public const string TwoLenses = """
        exposure,keeper,photographer,setup,criterion,session,burst,focal_eq_mm
        1/125,yes,Ada,50 mm,print,mon,1,50
        1/125,yes,Ada,50 mm,print,mon,1,50
        1/60,yes,Ada,50 mm,print,mon,2,50
        1/60,no,Ada,50 mm,print,mon,2,50
        1/30,yes,Ada,50 mm,print,tue,3,50
        1/30,no,Ada,50 mm,print,tue,3,50
        1/15,no,Ada,50 mm,print,tue,4,50
        1/15,,Ada,50 mm,print,tue,4,50
        1/250,yes,Ada,200 mm,print,mon,5,200
        1/250,yes,Ada,200 mm,print,mon,5,200
        1/125,yes,Ada,200 mm,print,tue,6,200
        1/125,no,Ada,200 mm,print,tue,6,200
        1/60,no,Ada,200 mm,print,tue,7,200
        1/60,no,Ada,200 mm,print,tue,7,200
        """;
}
