using Handhold.Kernels;

namespace Handhold.Solvers;

internal readonly ref partial struct LogisticLine
{
    private LineDirection Direction(LinePoint at, bool penalised) => penalised ? Penalised(at) : Plain(at);

    private LineDirection Plain(LinePoint at)
    {
        var (r0, r1, w0, w1, w2) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < _frames.Length; i++)
        {
            var d = _design[2 * i + 1] - at.Centre;
            var (p, q) = Elementary.Logistic(at.Level + at.Slope * d);
            double kept = _keepers[i];
            double frames = _frames[i];
            var residual = kept * q - (frames - kept) * p;
            var weight = frames * p * q;
            r0 += residual;
            r1 += residual * d;
            w0 += weight;
            weight *= d;
            w1 += weight;
            w2 += weight * d;
        }
        var shift = w1 / w0;
        var spread = w2 - w1 * shift;
        var across = r1 - shift * r0;
        return new(w0, spread, shift, r0, across, r0 / w0, across / spread, true);
    }

    // With w the expected information of a row, u = 1 - 2p and y its coordinates in which Σ w y yᵀ = 1, the penalty adds ½ Σ h u y to the score, h = w |y|² the
    // leverage, and ½ T - ½ Σ h (1 - 6p(1-p)) y yᵀ to the curvature, T_ab = tr M_a M_b with M_a = Σ w u y_a y yᵀ. All are moments of d.
    private LineDirection Penalised(LinePoint at)
    {
        var (r0, r1, w0, w1, w2) = (0.0, 0.0, 0.0, 0.0, 0.0);
        var (u0, u1, u2, u3) = (0.0, 0.0, 0.0, 0.0);
        var (v0, v1, v2, v3, v4) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < _frames.Length; i++)
        {
            var d = _design[2 * i + 1] - at.Centre;
            var (p, q) = Elementary.Logistic(at.Level + at.Slope * d);
            double kept = _keepers[i];
            double frames = _frames[i];
            var residual = kept * q - (frames - kept) * p;
            var variance = p * q;
            var w = frames * variance;
            var u = w * (q - p);
            var v = w * (1 - 6 * variance);
            var d2 = d * d;
            r0 += residual;
            r1 += residual * d;
            w0 += w;
            w1 += w * d;
            w2 += w * d2;
            u0 += u;
            u1 += u * d;
            u2 += u * d2;
            u3 += u * d2 * d;
            v0 += v;
            v1 += v * d;
            v2 += v * d2;
            v3 += v * d2 * d;
            v4 += v * d2 * d2;
        }
        var s = w1 / w0;
        var spread = w2 - w1 * s;
        // About the weighted mean.
        u3 -= s * (3 * u2 - s * (3 * u1 - s * u0));
        u2 -= s * (2 * u1 - s * u0);
        u1 -= s * u0;
        v4 -= s * (4 * v3 - s * (6 * v2 - s * (4 * v1 - s * v0)));
        v3 -= s * (3 * v2 - s * (3 * v1 - s * v0));
        v2 -= s * (2 * v1 - s * v0);
        v1 -= s * v0;
        var (a, b) = (1 / Math.Sqrt(w0), 1 / Math.Sqrt(spread));
        var (aa, ab, bb) = (a * a, a * b, b * b);
        var (t0, t1, t2, t3) = (u0 * a * aa, u1 * aa * b, u2 * a * bb, u3 * b * bb);
        var z0 = a * r0 + 0.5 * (t0 + t2);
        var z1 = b * (r1 - s * r0) + 0.5 * (t1 + t3);
        var j00 = 1 + 0.5 * (t0 * t0 + 2 * t1 * t1 + t2 * t2 - aa * (aa * v0 + bb * v2));
        var j01 = 0.5 * (t0 * t1 + 2 * t1 * t2 + t2 * t3 - ab * (aa * v1 + bb * v3));
        var j11 = 1 + 0.5 * (t1 * t1 + 2 * t2 * t2 + t3 * t3 - bb * (aa * v2 + bb * v4));
        var determinant = j00 * j11 - j01 * j01;
        return j00 > 0 && determinant > 1e-8
            ? new(w0, spread, s, z0 / a, z1 / b, a * (j11 * z0 - j01 * z1) / determinant, b * (j00 * z1 - j01 * z0) / determinant, true)
            : new(w0, spread, s, z0 / a, z1 / b, a * z0, b * z1, false);
    }
}
