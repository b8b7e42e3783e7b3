using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

public sealed partial class ProfileSet
{
    /// <summary>The search along the circle of angles φ, t = centre + scale tan φ, on which infinity is a point like others.</summary>
    private sealed class Search(IProfile profile, ImmutableArray<double> still, ImmutableArray<double> moving, double value)
    {
        // Points looked at on the circle for a stretch that is rejected, or for one that is not.
        private const int Points = 64;
        private const double Farthest = 1e6;

        private static readonly double s_far = Math.Atan(1e4);

        private double _centre;
        private double _scale = 1;

        internal (double? Lower, double? Upper, bool Outside) Run()
        {
            Aim();
            if (Excess(0) > 0)
                _centre = At(Circle().MinBy(Excess));
            var (down, up) = (Endless(-1), Endless(1));
            if (down != up)
                return (down ? null : At(Crossing(0, -s_far)), up ? null : At(Crossing(0, s_far)), false);
            if (!down && Excess(Math.PI / 2) > 0)
                return (At(Crossing(0, -Math.PI / 2)), At(Crossing(0, Math.PI / 2)), false);
            var worst = Circle().MaxBy(Excess);
            if (Excess(worst) <= 0)
                return (null, null, false);
            return (At(Crossing(Math.PI / 2, worst)), At(Crossing(-Math.PI / 2, worst)), true);
        }

        // Where keepers and rejects separate, a line may lose nothing however far away it crosses, and yet be rejected level.
        private bool Endless(int sign) => profile.Cone is not null && Excess(sign * s_far) <= 0;

        // At the crossing of the estimate, in steps of its standard error; a level line crosses nowhere, and infinity lies inside.
        private void Aim()
        {
            var estimate = profile.Estimate;
            var b = estimate.Coefficients.AsSpan();
            var slope = Orthonormal.Dot(moving.AsSpan(), b);
            var centre = (value - Orthonormal.Dot(still.AsSpan(), b)) / slope;
            if (!(Math.Abs(centre) < Farthest))
                return;
            var error = estimate.StandardError(Contrast(1, centre)) / Math.Abs(slope);
            if (error is > 0 and < Farthest)
                (_centre, _scale) = (centre, error);
        }

        private double Excess(double angle)
        {
            var (sin, cos) = Math.SinCos(angle);
            cos = Math.Abs(angle) >= Math.PI / 2 ? 0 : cos;
            return profile.Excess(Contrast(cos, cos * _centre + sin * _scale), cos * value);
        }

        private double At(double angle) => _centre + _scale * Math.Tan(angle);

        private ImmutableArray<double> Contrast(double ofStill, double ofMoving) =>
            [.. still.Zip(moving, (s, m) => ofStill * s + ofMoving * m)];

        private static IEnumerable<double> Circle() => Enumerable.Range(1, Points - 1).Select(k => Math.PI * (k / (double)Points - 0.5));

        private double Crossing(double inside, double outside) => Root.Of(Excess, inside, outside, 1e-13);
    }
}
