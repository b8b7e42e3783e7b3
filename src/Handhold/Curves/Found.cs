namespace Handhold.Curves;

/// <summary>What is found once, when first asked for. A search that was cancelled leaves nothing behind.</summary>
internal sealed class Found<T>(Func<CancellationToken, T> find)
{
    private readonly Lock _searching = new();
    private (bool Is, T Value) _found;

    internal T Value => Find(CancellationToken.None);

    internal T Find(CancellationToken cancellation)
    {
        lock (_searching)
        {
            if (!_found.Is)
                _found = (true, find(cancellation));
            return _found.Value;
        }
    }
}
