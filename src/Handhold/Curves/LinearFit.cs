using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Solvers;

namespace Handhold;

/// <summary>What the likelihood or bias-reduced estimator found of one curve.</summary>
public sealed partial class LinearFit
{
    private readonly Found<ImmutableArray<Coefficient>> _coefficients;
    private readonly Lazy<ImmutableArray<TermInStops>> _inStops;
    private readonly Lazy<Coefficient?> _luck;
    private readonly Found<ImmutableArray<GroupSpread>> _groups;
    private readonly Lazy<Conditions> _sharedConditions;
    private readonly Lazy<Conditions> _referenceConditions;

    internal LinearFit(CurveLikelihood likelihood, ImmutableArray<FrameCell> cells, double level)
    {
        (Likelihood, Level) = (likelihood, level);
        _sharedConditions = new(() => Conditions.Shared(cells.Select(c => c.Conditions)));
        _referenceConditions = new(() => CurveData.Typical(cells, Terms, c => likelihood.Layout.Terms.Sum(t => t.FromReference(c))));
        _coefficients = new(FindCoefficients);
        _inStops = new(FindInStops);
        _groups = new(stop => Likelihood.Grouped?.Spreads(Likelihood, ReferenceConditions, level, stop) ?? []);
        _luck = new(() => Likelihood.Shared is { } shared ? LuckOf(shared) : null);
    }

    /// <summary>False when all frames had one exposure, so that there is no exposure term.</summary>
    public bool HasExposure => Likelihood.Layout.HasExposure;

    /// <summary>Confidence of the intervals, such as 0.95.</summary>
    public double Level { get; }

    /// <summary>The terms beside the exposure; a question must say where they stand.</summary>
    public ImmutableArray<CurveTerm> Terms => [.. Likelihood.Layout.Terms.Select(t => new CurveTerm(t.Name, t.Sources, t.Levels))];

    /// <summary>Coefficients on the scale of the link, of raw columns: <c>log2Exposure</c> is negative for falling curves.</summary>
    public ImmutableArray<Coefficient> Coefficients => _coefficients.Value;

    /// <summary>Covariance of the estimates, rows of columns in the order of <see cref="Coefficients"/>; empty where the likelihood has no finite maximum.</summary>
    public ImmutableArray<ImmutableArray<double>> Covariance =>
        Likelihood.Estimate is { } estimate
            ? [.. Enumerable.Range(0, Columns).Select(i => estimate.Covariance.Slice(i * Columns, Columns))]
            : [];

    /// <summary>Log-likelihood on the Bernoulli scale: no binomial coefficients, so pooling does not change it. Without a maximum, its least upper bound.</summary>
    public double LogLikelihood => Likelihood.LogLikelihood;

    /// <summary>The log-likelihood plus half the log determinant of the expected information; null but for the bias-reduced estimator.</summary>
    public double? PenalisedLogLikelihood => Likelihood.Estimate?.PenalisedLogLikelihood;

    /// <summary>Twice the log-likelihood lost against the saturated model of cells pooled by all columns in use.</summary>
    public double Deviance => Likelihood.Estimate?.Deviance ?? Likelihood.Limit.Deviance;

    /// <summary>Cells less parameters.</summary>
    public int DegreesOfFreedom =>
        (Likelihood.Shared?.Problem.Cells ?? Likelihood.Grouped?.Fit.Problem.Rows.Rows ?? Likelihood.Problem.Rows) - Parameters;

    /// <summary>Akaike's criterion, 2 (parameters - log-likelihood) on the Bernoulli scale; only differences between fits of the same frames mean anything.</summary>
    public double Akaike => 2 * (Parameters - LogLikelihood);

    /// <summary>The ceiling given or estimated.</summary>
    public double Ceiling => Likelihood.Ceiling;

    /// <summary>Standard error of an estimated ceiling; null when it was given, or ended at 1.</summary>
    public double? CeilingStandardError => Likelihood.Estimate?.CeilingStandardError;

    /// <summary>The floor given or estimated.</summary>
    public double Floor => Likelihood.Floor;

    /// <summary>Standard error of an estimated floor; null when it was given, or ended at 0.</summary>
    public double? FloorStandardError => Likelihood.Estimate?.FloorStandardError;

    /// <summary>
    /// The luck that frames of a burst share: <c>burstLuck</c>, its normal sd on the scale of the link, or <c>rho</c>, the correlation of two frames; null where frames
    /// were taken as independent. Zero, without a standard error, where frames of a burst are no more alike than others.
    /// </summary>
    public Coefficient? Luck => _luck.Value;

    /// <summary>The levels that vary, in the order asked for; empty where none do. The coefficients are then those of a typical level.</summary>
    public ImmutableArray<GroupSpread> Groups => _groups.Value;

    /// <summary>Quadrature nodes that levels were integrated by, 1 being Laplace's method; null where none vary.</summary>
    public int? Nodes => Likelihood.Grouped?.Fit.Nodes;

    /// <summary>What each term costs or buys, in stops; without those that depend on the rate, since they change the steepness.</summary>
    public ImmutableArray<TermInStops> InStops => _inStops.Value;

    /// <summary>Conditions that frames were shot under, every label at its reference where possible: what a report is made at when none are asked for.</summary>
    public Conditions ReferenceConditions => _referenceConditions.Value;

    /// <summary>What all frames have in common, so that a question need not say it.</summary>
    internal Conditions SharedConditions => _sharedConditions.Value;

    internal CurveLikelihood Likelihood { get; }

    internal int Parameters =>
        Columns
        + (Likelihood.Problem.Ceiling is null ? 1 : 0)
        + (Likelihood.Problem.Floor is null ? 1 : 0)
        + (Likelihood.Shared is null ? 0 : 1)
        + (Likelihood.Grouped?.Fit.Problem.Spreads ?? 0);

    private int Columns => Likelihood.Layout.Columns.Length;

    /// <summary>Finds now the intervals of coefficients and spreads, which otherwise are found when first asked for.</summary>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work; it can be taken up again.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public void FindIntervals(IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        _coefficients.Find(cancellation);
        progress?.Report(0.5);
        _groups.Find(cancellation);
        progress?.Report(1);
    }

    private ImmutableArray<Coefficient> FindCoefficients(CancellationToken cancellation)
    {
        var coefficients = ImmutableArray.CreateBuilder<Coefficient>(Columns);
        for (var column = 0; column < Columns; column++)
        {
            var interval = ProfileInterval.Of(Likelihood.ProfileAt(Level, cancellation), Unit(column), Level);
            coefficients.Add(
                new(
                    Likelihood.Layout.Columns[column],
                    Likelihood.Coefficients[column],
                    Likelihood.Estimate?.StandardError(column) ?? Likelihood.Limit.StandardErrors[column],
                    new(interval.Lower, interval.Upper, Level, "profile")
                )
            );
        }

        return coefficients.MoveToImmutable();
    }

    private Coefficient LuckOf(ClusteredFit shared)
    {
        var (lower, upper) = new ClusteredProfile(shared, Level).SpreadInterval();
        if (shared.Luck == SharedLuck.NormalShift)
            return new("burstLuck", shared.Spread, shared.SpreadError, new(lower, upper, Level, "profile"));
        CoefficientInterval interval = new(
            BetaRates.Correlation(lower),
            upper is { } end ? BetaRates.Correlation(end) : 1,
            Level,
            "profile"
        );
        return new(
            "rho",
            shared.IsEndless ? 1 : BetaRates.Correlation(shared.Spread),
            shared.SpreadError is { } error ? BetaRates.CorrelationSlope(shared.Spread) * error : null,
            interval
        );
    }

    private ImmutableArray<double> Unit(int column, double weight = 1) =>
        [.. Enumerable.Range(0, Columns).Select(j => j == column ? weight : 0.0)];
}
