using System.Collections.Immutable;

namespace Handhold;

/// <summary>What is fitted to a table of judged frames.</summary>
/// <remarks>
/// P(keeper) = floor + (ceiling - floor) F(eta), x = log2(exposure / 1 s). For the posterior F is logistic and eta = b (tau - x); for the other
/// estimators eta is linear in x, the terms and their products.
/// </remarks>
public sealed partial record KeeperModel
{
    private readonly Ceiling? _ceiling;
    private readonly LuckKind? _luck;
    private readonly ImmutableArray<string>? _each;

    private static ImmutableArray<string> UsualEach { get; } = ["photographer", "setup", "criterion"];

    /// <summary>The model as most people want it.</summary>
    public static KeeperModel Default { get; } = new();

    /// <summary>How the curve is estimated; the posterior unless said otherwise.</summary>
    public Estimator Estimator { get; init; } = Estimator.Posterior;

    /// <summary>The shape F of the curve; logistic unless said otherwise.</summary>
    public Link Link { get; init; } = Link.Logit;

    /// <summary>
    /// Columns that shift the curve, by name, or built-in terms: <c>focal</c>, <c>stabiliser</c>, <c>magnification</c>, <c>subjectMotion</c>,
    /// <c>firstFrame</c>. Empty: the built-in terms whose columns vary within a curve, unless <see cref="PoolConditions"/>.
    /// </summary>
    public ImmutableArray<string> Terms { get; init; } = [];

    /// <summary>Products of two terms, of which one may be <c>exposure</c>.</summary>
    public ImmutableArray<TermProduct> Products { get; init; } = [];

    /// <summary>Columns whose levels are fitted together, each borrowing from the others what its own frames lack: on the scale of stops by the posterior, on that of the link by the likelihood with ceiling one and floor zero.</summary>
    public ImmutableArray<Varying> Varies { get; init; } = [];

    /// <summary>What is believed before the data; only the posterior uses it.</summary>
    public Priors Priors { get; init; } = Priors.Default;

    /// <summary>The ceiling; unless said otherwise the posterior estimates it, and for the other estimators it is one.</summary>
    public Ceiling Ceiling
    {
        get => _ceiling ?? (Estimator == Estimator.Posterior ? Ceiling.Estimated : Ceiling.One);
        init => _ceiling = value;
    }

    /// <summary>The floor; zero unless said otherwise.</summary>
    public Floor Floor { get; init; } = Floor.Zero;

    /// <summary>How often verdicts are right; always, unless said otherwise. Only the posterior allows for wrong ones.</summary>
    public Judging Judging { get; init; } = Judging.Perfect;

    /// <summary>How frames share luck; unless said otherwise normal for the posterior, none for the others. The bias-reduced estimator knows none.</summary>
    public LuckKind Luck
    {
        get => _luck ?? (Estimator == Estimator.Posterior ? LuckKind.Normal : LuckKind.None);
        init => _luck = value;
    }

    /// <summary>
    /// Quadrature nodes that the likelihood integrates a burst's normal luck, or one varying intercept, by, 1 to 200, 1 being Laplace's method; null: as many as the
    /// log-likelihood takes to settle within 1e-9. Where more varies the method is Laplace's.
    /// </summary>
    public int? Nodes { get; init; }

    /// <summary>Which frames share a burst.</summary>
    public BurstUse Bursts { get; init; } = BurstUse.Recorded;

    /// <summary>Probability inside reported intervals.</summary>
    public double Level { get; init; } = 0.95;

    /// <summary>Seed of the points that a posterior with terms is represented by; other fits draw nothing.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Columns whose combinations get a curve each; unless said otherwise photographer, setup and criterion, those present and neither among the terms nor varying.</summary>
    public ImmutableArray<string> Each
    {
        get => _each ?? [.. UsualEach.Except(Terms).Except(Varies.SelectMany(v => v.Path))];
        init => _each = value;
    }

    /// <summary>Pool frames whose recorded focal length, stabiliser, magnification or subject differ into one curve, instead of refusing.</summary>
    public bool PoolConditions { get; init; }

    /// <summary>Checks every number once, before work begins.</summary>
    /// <exception cref="ArgumentException">A number is out of range; the message names it, its value and what is allowed.</exception>
    internal void Check()
    {
        CheckPriors();
        if (!(Level is > 0 and < 1))
            throw new ArgumentException(FormattableString.Invariant($"The level {Level} is not between 0 and 1. Use, say, 0.95."));
        CheckJudging();
        CheckEstimator();
        CheckTerms();
        CheckVaries();
        if (Ceiling.Value is { } ceiling && Floor.Value is { } floor && !(floor < ceiling))
            throw new ArgumentException(
                FormattableString.Invariant($"The floor {floor} is not below the ceiling {ceiling}. Lower the floor or raise the ceiling.")
            );
    }
}
