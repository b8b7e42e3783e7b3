using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>A design's orthonormal columns, turned so that the first coefficient stands for a contrast.</summary>
internal sealed class TurnedDesign
{
    private readonly double[] _basis;
    private readonly double[] _mirror;

    /// <param name="design">The design.</param>
    /// <param name="contrast">A contrast of the columns' coefficients that the first θ is to stand for; empty for none.</param>
    internal TurnedDesign(OrthonormalDesign design, ReadOnlySpan<double> contrast)
    {
        (Columns, _basis, _mirror) = (design.Columns, new double[design.Rows * design.Columns], contrast.ToArray());
        if (_mirror.Length > 0)
        {
            design.ToContrast(_mirror);
            Length = Math.Sqrt(Orthonormal.Dot(_mirror, _mirror)) * (_mirror[0] < 0 ? 1 : -1);
            _mirror[0] -= Length;
            var norm = Math.Sqrt(Orthonormal.Dot(_mirror, _mirror) / 2);
            for (var j = 0; j < Columns; j++)
                _mirror[j] /= norm;
        }
        for (var i = 0; i < design.Rows; i++)
        {
            var row = _basis.AsSpan(i * Columns, Columns);
            for (var j = 0; j < Columns; j++)
                row[j] = design.Q[j * design.Rows + i];
            Turn(row);
        }
    }

    internal int Columns { get; }

    /// <summary>The contrast is so much times the first θ.</summary>
    internal double Length { get; }

    internal ReadOnlySpan<double> Row(int row) => _basis.AsSpan(row * Columns, Columns);

    /// <summary>To and from the coordinates of the design's own orthonormal columns.</summary>
    internal void Turn(Span<double> theta)
    {
        if (_mirror.Length == 0)
            return;
        var along = Orthonormal.Dot(_mirror, theta);
        for (var j = 0; j < Columns; j++)
            theta[j] -= along * _mirror[j];
    }
}
