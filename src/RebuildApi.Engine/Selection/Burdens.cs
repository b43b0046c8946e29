namespace RebuildApi.Engine.Selection;

/// <summary>
/// Distance, pieces, cost and metal removed as one whole number that orders as they do one after another: each is a digit of a number whose base is
/// larger than any sum of that digit. 128 bits hold distances of kilometres with millions of pieces and billions of minor units.
/// </summary>
internal sealed class Burdens
{
    private readonly Int128 _distance;
    private readonly Int128 _pieces;
    private readonly Int128 _cost;

    public Burdens(CompiledOption[][] options)
    {
        _cost = 1 + options.Sum(choice => choice.Max(o => o.Side.Removed));
        _pieces = _cost * (1 + options.Sum(choice => choice.Max(o => o.Side.Cost)));
        _distance = _pieces * (1 + options.Sum(choice => choice.Max(o => o.Side.Pieces)));
    }

    public Int128 Of(long distance, Side side) => (distance * _distance) + Of(side);

    public Int128 Of(Side side) => (side.Pieces * _pieces) + (side.Cost * _cost) + side.Removed;
}
