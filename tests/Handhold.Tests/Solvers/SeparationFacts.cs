using Handhold.Randomness;
using Handhold.Solvers;
using static Handhold.Tests.Solvers.Problems;

namespace Handhold.Tests.Solvers;

public class SeparationFacts
{
    [Fact]
    public void Ten_thousand_tests_are_judged_as_by_brute_force()
    {
        for (var world = 0; world < 10_000; world++)
        {
            var problem = Simulated(world);
            Assert.Equal(ByComparing(problem), Separation.Of(problem).Kind);
        }
    }

    [Fact]
    public void The_linear_program_and_the_scan_say_the_same()
    {
        for (var world = 0; world < 10_000; world++)
        {
            var problem = Simulated(world).Pooled();
            if (LineScan.Of(problem) is { } scanned)
                AssertSame(scanned, Separation.Program(problem, OrthonormalDesign.Of(problem)), world);
        }
    }

    [Theory]
    [InlineData(20, 1)]
    [InlineData(-20, 1)]
    [InlineData(0, 1e6)]
    [InlineData(0, 1e-6)]
    [InlineData(-20, 1e6)]
    public void The_verdict_knows_no_units(double shift, double scale)
    {
        for (var world = 0; world < 2_000; world++)
        {
            var problem = Simulated(world).Pooled();
            var moved = Mapped(problem, x => (x + shift) * scale);
            var (verdict, there) = (Separation.Of(problem), Separation.Of(moved));
            Assert.Equal(verdict.Kind, there.Kind);
            Assert.Equal(verdict.Rows, there.Rows);
            var program = Separation.Program(moved, OrthonormalDesign.Of(moved));
            Assert.Equal(verdict.Kind, program.Kind);
            Assert.Equal(verdict.Rows, program.Rows);
        }
    }

    [Fact]
    public void The_order_of_rows_and_their_pooling_change_nothing()
    {
        for (var world = 0; world < 2_000; world++)
        {
            var problem = Simulated(world);
            var pooled = problem.Pooled();
            int[] reversed = [.. Enumerable.Range(0, problem.Rows).Reverse()];
            BinomialProblem turned = Take(problem, reversed);
            var verdict = Separation.Of(problem);
            Assert.Equal(verdict.Kind, Separation.Of(turned).Kind);
            Assert.Equal(verdict.Kind, Separation.Of(pooled).Kind);
            Assert.Equal(verdict.Rows, Separation.Of(turned).Rows.Select(i => reversed[i]).Order());
            AssertSame(verdict, Separation.Program(turned, OrthonormalDesign.Of(turned)), world, compareRows: false);
        }
    }

    [Fact]
    public void Completely_separated_names_both_columns_and_all_rows()
    {
        var verdict = Separation.Of(Line([-3, -2, -1, 0, 1, 2, 3], [12, 12, 12, 12, 12, 12, 12], [12, 12, 12, 12, 0, 0, 0]));
        Assert.Equal(SeparationKind.Complete, verdict.Kind);
        Assert.Equal([("intercept", 1), ("x", -1)], verdict.Columns.Select(c => (c.Name, c.Sign)));
        Assert.Equal([0, 1, 2, 3, 4, 5, 6], verdict.Rows);
    }

    [Fact]
    public void A_mixed_speed_at_zero_holds_the_intercept()
    {
        var verdict = Separation.Of(Line([-1, 0, 1], [12, 12, 12], [12, 7, 0]));
        Assert.Equal(SeparationKind.Quasi, verdict.Kind);
        Assert.Equal([("x", -1)], verdict.Columns.Select(c => (c.Name, c.Sign)));
        Assert.Equal([0, 2], verdict.Rows);
    }

    [Fact]
    public void One_photographer_who_keeps_all_is_named_alone()
    {
        var problem = Table("separated", "quasi-group.csv", ("bob", Is("photographer", "bob")), ("x", Log2Exposure));
        var verdict = Separation.Of(problem);
        Assert.Equal(SeparationKind.Quasi, verdict.Kind);
        Assert.Equal([("bob", 1)], verdict.Columns.Select(c => (c.Name, c.Sign)));
        Assert.Equal([7, 8, 9, 10, 11, 12, 13], verdict.Rows);
    }

    [Fact]
    public void Nothing_but_keepers_and_nothing_but_rejects_have_verdicts_of_their_own()
    {
        var all = Separation.Of(Line([-1, 0, 1], [5, 5, 5], [5, 5, 5]));
        Assert.Equal(SeparationKind.AllKeepers, all.Kind);
        Assert.Equal([("intercept", 1), ("x", 0)], all.Columns.Select(c => (c.Name, c.Sign)));
        Assert.Equal(SeparationKind.NoKeepers, Separation.Of(Line([-1, 0, 1], [5, 5, 5], [0, 0, 0])).Kind);
    }

    [Fact]
    public void A_plane_that_no_single_covariate_shows_is_found()
    {
        // Keepers where u + w > 0; each alone overlaps.
        double[] u = [2, -1, 3, -2, 1, -3];
        double[] w = [-1, 2, -2, 1, -2, 2];
        int[] keepers = [1, 1, 1, 0, 0, 0];
        BinomialProblem problem = new(
            ["intercept", "u", "w"],
            u.Zip(w, (a, b) => new[] { 1, a, b }).SelectMany(r => r).ToArray(),
            (int[])[1, 1, 1, 1, 1, 1],
            keepers
        );
        var verdict = Separation.Of(problem);
        Assert.Equal(SeparationKind.Complete, verdict.Kind);
        Assert.Equal([1, 1], verdict.Columns.Where(c => c.Index > 0).Select(c => c.Sign));
        Assert.Equal(SeparationKind.None, Separation.Of(Line(u, [1, 1, 1, 1, 1, 1], keepers)).Kind);
    }

    [Fact]
    public void Random_planes_are_found_and_a_crossing_frame_undoes_them()
    {
        for (var world = 0; world < 500; world++)
        {
            var luck = Seed.From(20250202).Stream(world);
            var columns = 2 + (int)(luck.Uniform() * 5);
            double[] plane = [.. Enumerable.Range(0, columns).Select(_ => luck.Normal())];
            double[][] rows =
            [
                .. Enumerable.Range(0, 40).Select(_ => (double[])[1, .. Enumerable.Range(1, columns - 1).Select(_ => luck.Normal())]),
            ];
            int[] keepers = [.. rows.Select(row => row.Zip(plane, (x, b) => x * b).Sum() > 0 ? 1 : 0)];
            if (keepers.Distinct().Count() == 1)
                continue;
            Assert.Equal(SeparationKind.Complete, Separation.Of(Single(rows, keepers)).Kind);
            double[][] copied = [.. rows, .. rows];
            Assert.Equal(SeparationKind.None, Separation.Of(Single(copied, [.. keepers, .. keepers.Select(k => 1 - k)])).Kind);
        }
    }

    [Fact]
    public void The_likelihood_of_a_separated_table_is_refused_naming_the_columns()
    {
        var stopped = Assert.Throws<SolverException>(() =>
            BinomialSolver.Likelihood(Table("separated", "quasi-group.csv", ("bob", Is("photographer", "bob")), ("x", Log2Exposure)))
        );
        Assert.Contains("bob", stopped.Message, StringComparison.Ordinal);
        Assert.Equal(3, stopped.Report.Coefficients.Length);
    }

    private static BinomialProblem Single(double[][] rows, int[] keepers) =>
        new(
            [.. Enumerable.Range(0, rows[0].Length).Select(j => FormattableString.Invariant($"x{j}"))],
            rows.SelectMany(row => row).ToArray(),
            Enumerable.Repeat(1, rows.Length).ToArray(),
            keepers
        );

    // Seven speeds, three or five frames each, as single frames; slopes of both signs, so that every verdict comes up often.
    private static BinomialProblem Simulated(long world)
    {
        var luck = Seed.From(20250131).Stream(world);
        var slope = (luck.Uniform() < 0.5 ? -1 : 1) * (0.5 + 3 * luck.Uniform());
        var (centre, frames) = (6 * (luck.Uniform() - 0.5), luck.Uniform() < 0.5 ? 3 : 5);
        List<double> x = [];
        List<int> keepers = [];
        for (var speed = -3; speed <= 3; speed++)
        for (var frame = 0; frame < frames; frame++)
        {
            x.Add(speed / 3.0);
            keepers.Add(luck.Uniform() < 1 / (1 + Math.Exp(-slope * (speed - centre))) ? 1 : 0);
        }
        return Line([.. x], [.. x.Select(_ => 1)], [.. keepers]);
    }

    private static SeparationKind ByComparing(BinomialProblem problem)
    {
        int[] keepers = problem.Keepers.ToArray();
        var x = Enumerable.Range(0, problem.Rows).Select(i => problem.Design.Span[2 * i + 1]).ToArray();
        if (keepers.All(k => k == 1))
            return SeparationKind.AllKeepers;
        if (keepers.All(k => k == 0))
            return SeparationKind.NoKeepers;
        var kept = x.Where((_, i) => keepers[i] == 1).ToArray();
        var missed = x.Where((_, i) => keepers[i] == 0).ToArray();
        var gap = Math.Max(missed.Min() - kept.Max(), kept.Min() - missed.Max());
        return gap > 0 ? SeparationKind.Complete
            : gap == 0 ? SeparationKind.Quasi
            : SeparationKind.None;
    }

    private static BinomialProblem Mapped(BinomialProblem problem, Func<double, double> to) =>
        new(
            problem.Columns,
            problem.Design.ToArray().Select((x, place) => place % 2 == 1 ? to(x) : x).ToArray(),
            problem.Frames,
            problem.Keepers
        );

    private static BinomialProblem Take(BinomialProblem problem, int[] order) =>
        new(
            problem.Columns,
            order.SelectMany(i => problem.Design.Slice(i * problem.Columns.Length, problem.Columns.Length).ToArray()).ToArray(),
            order.Select(i => problem.Frames.Span[i]).ToArray(),
            order.Select(i => problem.Keepers.Span[i]).ToArray()
        );

    private static void AssertSame(Separation one, Separation other, long world, bool compareRows = true)
    {
        Assert.True(one.Kind == other.Kind, $"World {world}: {one.Kind} and {other.Kind}.");
        Assert.Equal(one.Columns.Select(c => (c.Index, c.Sign)), other.Columns.Select(c => (c.Index, c.Sign)));
        if (compareRows)
            Assert.Equal(one.Rows, other.Rows);
    }
}
