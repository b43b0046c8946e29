namespace RebuildApi.Engine.Planning.Solving;

/// <summary>The options that are still open for each choice; what was removed comes back in the reverse order.</summary>
internal sealed class Domains
{
    private readonly int[][] _values;
    private readonly int[][] _places;
    private readonly int[] _sizes;
    private readonly Stack<int> _trail = new();

    public Domains(IEnumerable<int> sizes)
    {
        _sizes = [.. sizes];
        _values = [.. _sizes.Select(s => Enumerable.Range(0, s).ToArray())];
        _places = [.. _sizes.Select(s => Enumerable.Range(0, s).ToArray())];
    }

    public int Count => _sizes.Length;

    /// <summary>What may be taken back to.</summary>
    public int Mark => _trail.Count;

    public int Size(int choice) => _sizes[choice];

    public ReadOnlySpan<int> Of(int choice) => _values[choice].AsSpan(0, _sizes[choice]);

    public bool Contains(int choice, int option) => _places[choice][option] < _sizes[choice];

    public void Remove(int choice, int option)
    {
        var (values, places) = (_values[choice], _places[choice]);
        var (place, last) = (places[option], --_sizes[choice]);
        var moved = values[last];
        (values[place], values[last]) = (moved, option);
        (places[moved], places[option]) = (place, last);
        _trail.Push(choice);
    }

    public void Assign(int choice, int option)
    {
        for (var i = _sizes[choice] - 1; i >= 0; i--)
        {
            if (_values[choice][i] != option)
                Remove(choice, _values[choice][i]);
        }
    }

    public void BackTo(int mark)
    {
        while (_trail.Count > mark)
            _sizes[_trail.Pop()]++;
    }
}
