namespace Handhold.Kernels;

/// <summary>Remembers what was computed for the keys that were new last.</summary>
/// <param name="most">Keys that are remembered.</param>
/// <param name="compute">The same for a key at every call; two threads that ask at once may both compute it.</param>
internal sealed class Recent<TKey, TValue>(int most, Func<TKey, TValue> compute)
    where TKey : notnull
{
    private readonly Dictionary<TKey, TValue> _known = [];
    private readonly Queue<TKey> _order = [];
    private readonly Lock _lock = new();

    internal TValue this[TKey key]
    {
        get
        {
            lock (_lock)
                if (_known.TryGetValue(key, out var known))
                    return known;
            var value = compute(key);
            lock (_lock)
            {
                if (!_known.TryAdd(key, value))
                    return _known[key];
                _order.Enqueue(key);
                if (_order.Count > most)
                    _known.Remove(_order.Dequeue());
            }

            return value;
        }
    }
}
