namespace Handhold.Curves;

/// <summary>The law of a line on the scale of the link, which crosses a height at one exposure.</summary>
internal interface ILineLaw : IRateLaw
{
    /// <summary>How intervals of rates are made.</summary>
    string Method { get; }

    /// <summary>The exposure that has a rate, log2 seconds; null where the line has none, or is as good as level.</summary>
    double? Exposure(double rate);

    /// <summary>The exposures at which a rate is not excluded.</summary>
    ExposureSet Set(double rate, double level, IntervalMethod method);

    /// <summary>A luck of the link's scale in stops; null where the line has no slope.</summary>
    double? InStops(double luck);
}
