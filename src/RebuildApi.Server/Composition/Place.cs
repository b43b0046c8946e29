using System.Globalization;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Composition;

/// <summary>A place as a client writes it: <c>third-gear</c>, or <c>keys-3-4#2</c> for the second of several like parts.</summary>
/// <param name="Position">The position.</param>
/// <param name="Index">1 to the position's quantity.</param>
public readonly record struct Place(string Position, int Index)
{
    /// <summary>Reads a place; an index that is no number gives 0, which no position has.</summary>
    public static Place Parse(string text)
    {
        var mark = text.IndexOf('#', StringComparison.Ordinal);
        if (mark < 0)
            return new Place(text, 1);
        return int.TryParse(text.AsSpan(mark + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var index)
            ? new Place(text[..mark], index)
            : new Place(text[..mark], 0);
    }

    /// <inheritdoc/>
    public override string ToString() => Subjects.Of(Position, Index);
}
