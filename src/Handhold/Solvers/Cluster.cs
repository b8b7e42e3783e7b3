namespace Handhold.Solvers;

/// <summary>One cluster at a point: of each row the linear predictor, its keepers and its rejects.</summary>
internal readonly ref struct Cluster(ReadOnlySpan<double> predictors, ReadOnlySpan<int> keepers, ReadOnlySpan<int> rejects)
{
    internal ReadOnlySpan<double> Predictors { get; } = predictors;

    internal ReadOnlySpan<int> Keepers { get; } = keepers;

    internal ReadOnlySpan<int> Rejects { get; } = rejects;

    internal int Rows => Predictors.Length;
}
