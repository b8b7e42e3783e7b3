using Handhold.Models;
using Handhold.Solvers;
using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

/// <summary>What Laplace's method leaves out, against quadrature.</summary>
public class RemainderFacts
{
    [Theory]
    [InlineData("grouped-bacteria")]
    [InlineData("grouped-litters")]
    public void Its_gradient_says_how_far_quadrature_moves_the_estimates(string table)
    {
        var (laplace, fine) = (Fit(table, 1), Fit(table, 100));
        foreach (var (j, shift) in laplace.Shifts!.Index())
        {
            var moved = (fine.Top[j] - laplace.Top[j]) / Math.Sqrt(laplace.Covariance[j * laplace.Top.Length + j]);
            Assert.Equal(moved, shift, 0.02);
        }

        Assert.InRange(laplace.Shifts![^1], 0.1, 0.2);
        Assert.All(fine.Shifts!, shift => Assert.Equal(0, shift));
    }

    [Fact]
    public void Levels_of_few_frames_are_said_to_be_approximate_by_laplaces_method_alone()
    {
        Assert.Contains(
            Curve(1).Statuses,
            s => s.Code == StatusCode.Approximate && s.Message.Contains("Laplace", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(Curve(null).Statuses, s => s.Code == StatusCode.Approximate);
        Assert.DoesNotContain(Groups.Curve("nestedBoth").Statuses, s => s.Code == StatusCode.Approximate);

        static KeeperCurve Curve(int? nodes) =>
            (Model with { Nodes = nodes }).Fit(PublishedTables.Table("grouped-bacteria", "cells.csv")).Only;
    }

    private static KeeperModel Model => PublishedTables.Likelihood with { Each = [], Varies = [new("photographer")] };

    private static GroupedFit Fit(string table, int nodes)
    {
        FrameCell[] cells = [.. PublishedTables.Table(table, "cells.csv")];
        var layout = TermChoice.Layout(Model, [.. cells], table);
        return new(GroupLayout.Of(Model, layout, [.. cells], table).Problem([.. cells], Model), nodes);
    }
}
