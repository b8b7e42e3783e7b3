namespace Handhold.Kernels;

/// <summary>The least value of a function that falls and then rises between two points.</summary>
/// <remarks>Golden section: Kiefer (1953), Proceedings of the American Mathematical Society 4, 502-506.</remarks>
internal static class Valley
{
    private const double Golden = 0.618033988749894848;

    /// <param name="f">The function.</param>
    /// <param name="low">Left end.</param>
    /// <param name="high">Right end.</param>
    /// <param name="close">Width at which the search ends.</param>
    internal static double Least(Func<double, double> f, double low, double high, double close)
    {
        var (left, right) = (high - Golden * (high - low), low + Golden * (high - low));
        var (atLeft, atRight) = (f(left), f(right));
        while (high - low > close)
        {
            if (atLeft < atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - Golden * (high - low);
                atLeft = f(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + Golden * (high - low);
                atRight = f(right);
            }
        }

        return Math.Min(atLeft, atRight);
    }
}
