using System.Collections.Immutable;
using Handhold.Solvers;

namespace Handhold.Models;

/// <summary>The columns of a curve's linear predictor, and how frames fill them.</summary>
/// <remarks><c>intercept</c>, <c>log2Exposure</c> unless there is one exposure only, the terms' columns, then their products such as <c>log2Exposure×sex=M</c>, the exposure first.</remarks>
internal sealed class DesignLayout
{
    internal const string Intercept = "intercept";
    internal const string Exposure = "log2Exposure";
    private readonly ImmutableArray<(int First, int Second)> _products;
    private readonly int _plain;

    internal DesignLayout(bool hasExposure, ImmutableArray<DesignTerm> terms, ImmutableArray<TermProduct> products)
    {
        (HasExposure, Terms) = (hasExposure, terms);
        ImmutableArray<string> plain =
        [
            Intercept,
            .. hasExposure ? [Exposure] : Array.Empty<string>(),
            .. terms.SelectMany(t => t.Columns),
        ];
        _plain = plain.Length;
        _products =
        [
            .. products
                .Select(p => p.Second == KeeperModel.ExposureTerm ? new TermProduct(p.Second, p.First) : p)
                .SelectMany(p => from a in Places(p.First) from b in Places(p.Second) select (a, b)),
        ];
        Columns = [.. plain, .. _products.Select(p => $"{plain[p.First]}×{plain[p.Second]}")];
    }

    internal bool HasExposure { get; }

    internal ImmutableArray<DesignTerm> Terms { get; }

    /// <summary>Names of the coefficients.</summary>
    internal ImmutableArray<string> Columns { get; }

    /// <summary>The counts of a curve under these columns, equal rows pooled.</summary>
    internal BinomialProblem Problem(ImmutableArray<FrameCell> cells, KeeperModel model) => Rows(cells, model).Pooled();

    /// <summary>The same, a row a cell.</summary>
    internal BinomialProblem Rows(ImmutableArray<FrameCell> cells, KeeperModel model)
    {
        var design = new double[cells.Length * Columns.Length];
        for (var row = 0; row < cells.Length; row++)
            Fill(cells[row].Exposure.Log2Seconds, cells[row].Conditions, design.AsSpan(row * Columns.Length, Columns.Length));
        int[] frames = [.. cells.Select(c => c.Frames)];
        int[] keepers = [.. cells.Select(c => c.Keepers)];
        return new BinomialProblem(Columns, design, frames, keepers)
        {
            Link = model.Link,
            Ceiling = model.Ceiling.Value,
            Floor = model.Floor.Value,
        };
    }

    /// <summary>The row of the design that holds a cell.</summary>
    internal double[] Row(FrameCell cell)
    {
        var row = new double[Columns.Length];
        Fill(cell.Exposure.Log2Seconds, cell.Conditions, row);
        return row;
    }

    /// <summary>The linear predictor along exposures under some conditions, as weights of the coefficients: still + x moving.</summary>
    /// <exception cref="ConditionsException">The conditions lack a term, or have a level that no frame had.</exception>
    internal (ImmutableArray<double> Still, ImmutableArray<double> Moving) Line(Conditions conditions)
    {
        var (at0, at1) = (new double[Columns.Length], new double[Columns.Length]);
        Fill(0, conditions, at0);
        Fill(1, conditions, at1);
        return ([.. at0], [.. at1.Zip(at0, (one, zero) => one - zero)]);
    }

    /// <summary>The columns that a column is multiplied with.</summary>
    internal IEnumerable<(int Product, int Partner)> PartnersOf(int column) =>
        from product in _products.Select((p, i) => (p.First, p.Second, Place: _plain + i))
        where product.First == column || product.Second == column
        select (product.Place, product.First == column ? product.Second : product.First);

    internal bool IsPlain(int column) => column < _plain;

    private void Fill(double exposure, Conditions conditions, Span<double> row)
    {
        row[0] = 1;
        var place = 1;
        if (HasExposure)
            row[place++] = exposure;
        foreach (var term in Terms)
        {
            term.Read(conditions, row.Slice(place, term.Columns.Length));
            place += term.Columns.Length;
        }

        foreach (var (first, second) in _products)
            row[place++] = row[first] * row[second];
    }

    /// <summary>The columns of a term, or the one of this name; none where there is no such term.</summary>
    internal ImmutableArray<int> ColumnsOf(string term) =>
        Terms.Any(t => t.Columns.Contains(term)) ? [Columns.IndexOf(term)] : [.. Places(term)];

    private int[] Places(string part)
    {
        if (part == KeeperModel.ExposureTerm)
            return HasExposure ? [1] : [];
        var place = HasExposure ? 2 : 1;
        foreach (var term in Terms)
        {
            if (term.Name == part)
                return [.. Enumerable.Range(place, term.Columns.Length)];
            place += term.Columns.Length;
        }

        return [];
    }
}
