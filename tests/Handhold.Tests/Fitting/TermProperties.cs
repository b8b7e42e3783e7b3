using Handhold.Fitting;
using Handhold.Models;
using Handhold.Randomness;

namespace Handhold.Tests.Fitting;

/// <summary>What is true of any table with terms, from few points of the posterior each.</summary>
public sealed class TermProperties
{
    private const int Size = 256;
    private static readonly string[] Modes = ["off", "lens", "body"];
    private static readonly string[] Motions = ["still", "slight", "brisk", "galloping"];
    private static readonly string[] Grips = ["one hand", "two hands", "strap"];

    [Fact]
    public void Any_table_with_terms_gets_numbers_or_a_reason()
    {
        var (fitted, refused) = (0, 0);
        for (var i = 0; i < 300; i++)
        {
            var (model, table) = Draw(Seed.From(20250131).Stream(i));
            try
            {
                foreach (var curve in Fit(model, table))
                    Sound(curve, FormattableString.Invariant($"table {i}, curve {curve.Key}"));
                fitted++;
            }
            catch (CellException reason) // a term that no frame varies in, most often
            {
                Assert.NotEmpty(reason.Message);
                refused++;
            }
        }

        Assert.True(fitted > 200, FormattableString.Invariant($"{fitted} fitted, {refused} refused"));
    }

    [Fact]
    public void Neither_the_order_of_rows_nor_their_pooling_nor_the_schedule_of_threads_changes_a_bit()
    {
        for (var i = 0; i < 40; i++)
        {
            var stream = Seed.From(20250131).Stream(1000 + i);
            var (model, table) = Draw(stream);
            FrameTable shuffled = [.. table.OrderBy(_ => stream.Bits())];
            FrameTable apart = [.. table.SelectMany(Frames)];
            try
            {
                var numbers = Fit(model, table).SelectMany(Numbers).ToArray();
                Assert.Equal(numbers, Fit(model, table).SelectMany(Numbers));
                Assert.Equal(numbers, Fit(model, shuffled).SelectMany(Numbers));
                Assert.Equal(numbers, Fit(model, apart).SelectMany(Numbers));
            }
            catch (CellException)
            {
                Assert.Throws<CellException>(() => Fit(model, shuffled).ToArray());
            }
        }
    }

    private static void Sound(KeeperCurve curve, string place)
    {
        foreach (var p in curve.Parameters)
        {
            Assert.True(double.IsFinite(p.Mean) && p.StandardDeviation >= 0 && double.IsFinite(p.StandardDeviation), $"{place}, {p.Name}");
            Assert.True(p.Interval.Lower <= p.Median && p.Median <= p.Interval.Upper, $"{place}, {p.Name}");
        }

        Assert.All(
            curve.InStops,
            e => Assert.True(e.Lower <= e.Stops!.Value.Value && e.Stops!.Value.Value <= e.Upper, $"{place}, {e.Term}")
        );
        Assert.True(double.IsFinite(curve.LogLikelihood) && curve.Deviance >= -1e-9, place);
        var law = curve.Posterior.AnotherDay;
        foreach (var exposure in new[] { curve.Data.Fastest, curve.Data.Slowest })
        {
            var (x, before) = (exposure.Log2Seconds, 0.0);
            Assert.InRange(law.MeanRate(x), 0, 1);
            foreach (var p in new[] { 0.025, 0.5, 0.975 })
            {
                var rate = law.RateQuantile(x, p);
                Assert.InRange(rate, before, 1);
                before = rate;
            }
        }

        Assert.All(curve.Statuses, s => Assert.NotEmpty(s.Message));
    }

    private static IEnumerable<KeeperCurve> Fit(KeeperModel model, FrameTable table) =>
        CurveRows
            .Split(model, table)
            .Where(rows => WhatMoved.IsCalledFor(model, [.. rows.Data.Cells.Select(c => c.Conditions).Distinct()]))
            .Select(rows => TermAssembly.Make(model, rows, TermSample.Of(model, rows, Size, default), _ => default));

    private static IEnumerable<double> Numbers(KeeperCurve curve) =>
        curve
            .Parameters.SelectMany(p => new[] { p.Mean, p.StandardDeviation, p.Interval.Lower, p.Interval.Upper })
            .Concat(curve.InStops.SelectMany(e => new[] { e.Lower!.Value, e.Upper!.Value }))
            .Append(curve.Posterior.AnotherDay.MeanRate(curve.Data.Slowest.Log2Seconds));

    private static IEnumerable<FrameCell> Frames(FrameCell cell) =>
        Enumerable
            .Range(0, cell.Frames)
            .Select(i => new FrameCell(cell.Exposure, 1, i < cell.Keepers ? 1 : 0) { Conditions = cell.Conditions });

    private static (KeeperModel Model, FrameTable Table) Draw(RandomStream stream)
    {
        bool Has() => stream.Happens(0.4);
        var (modes, motions, focal, close, speeds, places, own) = (Has(), Has(), Has(), Has(), Has(), Has(), stream.Happens(0.3));
        var (sessions, bursts, rated) = (1 + Below(3), Has(), Has());
        var table = new List<FrameCell>();
        for (var i = 3 + Below(12); i > 0; i--)
        {
            var mode = Modes[Below(3)];
            var conditions = new Conditions
            {
                Criterion = stream.Happens(0.999) ? Criterion.Print : Criterion.Pixel,
                Session = FormattableString.Invariant($"day {Below(sessions)}"),
                Burst = bursts ? FormattableString.Invariant($"{Below(4)}") : null,
                BurstPosition = places ? 1 + Below(3) : null,
                StabiliserMode = modes ? mode : null,
                StabiliserStops =
                    modes && rated ? (mode == "off" ? 0 : 4)
                    : rated ? 5 * Below(2)
                    : null,
                EquivalentFocalLength = focal ? 25 * Math.Pow(2, Below(5)) : 50,
                Magnification = close || speeds ? new[] { 0, 0.02, 0.5, 1 }[Below(4)] : null,
                SubjectSpeed = speeds ? new[] { 0.0, 20, 4000 }[Below(3)] : null,
                SubjectMotion = motions ? Motions[Below(4)] : null,
            };
            if (own)
                conditions = conditions.With("grip", Grips[Below(3)]).With("wind", FormattableString.Invariant($"{Below(9)}"));
            var frames = 1 + Below(8);
            table.Add(
                new(ShutterSpeed.FromLog2Seconds(-12 + 12 * stream.Uniform()), frames, Below(frames + 1)) { Conditions = conditions }
            );
        }

        var model = KeeperModel.Default with { Seed = Below(100) };
        if (own)
            model = model with
            {
                Terms = ["grip", "wind"],
                Products = stream.Happens(0.5) ? [new("exposure", "wind")] : [new("grip", "wind")],
            };
        if (Has())
            model = model with { Luck = LuckKind.None };
        if (Has())
            model = model with { Ceiling = Ceiling.One, Floor = Floor.Estimated };
        return (model, [.. table]);

        int Below(int n) => (int)(n * stream.Uniform());
    }
}
