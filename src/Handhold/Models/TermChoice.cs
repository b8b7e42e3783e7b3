using System.Collections.Immutable;
using Handhold.Solvers;

namespace Handhold.Models;

/// <summary>Which terms a curve of a linear estimator has.</summary>
internal static class TermChoice
{
    private static TermProduct LosesOnCloseSubjects { get; } = new("stabiliser", "magnification");

    /// <summary>The terms that were named, or the built-in ones that vary.</summary>
    internal static ImmutableArray<TermSource> Of(KeeperModel model, IReadOnlyCollection<Conditions> frames) =>
        !model.Terms.IsEmpty ? [.. model.Terms.Select(TermSource.Of)]
        : model.PoolConditions ? []
        : [.. TermSource.BuiltIn.Where(term => Varies(term, frames))];

    /// <summary>Columns in which frames may differ, since terms account for it.</summary>
    internal static ImmutableHashSet<string> Explained(KeeperModel model, IReadOnlyCollection<Conditions> frames) =>
        [
            .. Of(model, frames).SelectMany(term => term.Columns),
            .. TermSource.BuiltIn.Where(term => frames.All(f => term.Text(f) is not null)).SelectMany(term => term.Columns),
        ];

    /// <summary>The columns of a curve.</summary>
    /// <exception cref="CellException">A term cannot be told from these frames.</exception>
    internal static DesignLayout Layout(KeeperModel model, ImmutableArray<FrameCell> cells, string place)
    {
        var sources = Of(model, [.. cells.Select(c => c.Conditions).Distinct()]);
        ImmutableArray<DesignTerm> terms = [.. sources.Select(source => DesignTerm.Of(source, cells, place))];
        foreach (var part in model.Products.SelectMany(p => new[] { p.First, p.Second }))
            if (part != KeeperModel.ExposureTerm && terms.All(t => t.Name != part))
                throw new CellException(
                    place,
                    $"a product names {part}, which is no term of it.",
                    $"Name {part} among the terms as well (--term {part})."
                );
        var hasExposure = cells.Any(c => c.Exposure != cells[0].Exposure);
        DesignLayout layout = new(hasExposure, terms, model.Products);
        if (!model.Terms.IsEmpty || terms.Count(t => t.Name is "stabiliser" or "magnification") < 2)
            return layout;
        DesignLayout closer = new(hasExposure, terms, model.Products.Add(LosesOnCloseSubjects));
        return AliasedColumn.In(closer.Problem(cells, model)).IsEmpty ? closer : layout;
    }

    /// <summary>A place in the burst varies only where every frame has one.</summary>
    private static bool Varies(TermSource term, IReadOnlyCollection<Conditions> frames)
    {
        if (frames.Count == 1)
            return false;
        var values = frames.Select(term.Text).Distinct().ToArray();
        return values.Length > 1 && (term.Name != "firstFrame" || !values.Contains(null));
    }
}
