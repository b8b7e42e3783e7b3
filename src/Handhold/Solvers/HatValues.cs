using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>How many of the free numbers of an estimate each row fixes: the diagonal of the hat matrix.</summary>
/// <remarks>
/// h = g (Σ g gᵀ)⁻¹ g over the rows with g = √(n / P(1 - P)) · dP/dθ, θ the coefficients and an estimated ceiling and floor; the squared rows of Q where the g are QR.
/// They add up to the number of free numbers. Source: Pregibon (1981), Annals of Statistics 9, 705-724.
/// </remarks>
internal static class HatValues
{
    internal static double[] Of(BinomialProblem problem, BinomialEstimate estimate)
    {
        var (rows, columns) = (problem.Rows, problem.Columns.Length);
        bool[] free = [estimate.CeilingStandardError is not null, estimate.FloorStandardError is not null];
        var size = columns + free.Count(f => f);
        var q = new double[rows * size];
        for (var i = 0; i < rows; i++)
        {
            var at = estimate.At(problem, i);
            var (root, next) = (Math.Sqrt(problem.Frames.Span[i] * at.Weight), columns);
            for (var j = 0; j < columns; j++)
                q[j * rows + i] = root * problem.Design.Span[i * columns + j];
            foreach (var (rise, _) in new[] { at.F, at.G }.Zip(free).Where(p => p.Second))
                q[next++ * rows + i] = rise * Math.Sqrt(problem.Frames.Span[i] / (at.Rate * at.Miss));
        }

        Orthonormal.Factor(q, rows, size, new double[size * size], 1e-12);
        return [.. Enumerable.Range(0, rows).Select(i => Enumerable.Range(0, size).Sum(j => q[j * rows + i] * q[j * rows + i]))];
    }
}
