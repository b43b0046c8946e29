namespace Brackenmere4;

/// <summary>The thicknesses that exist. A small-parts kit holds one size of each, and one size sets nothing.</summary>
internal static class SelectiveSeries
{
    public static ImmutableArray<Series> All =>
    [
        InchSeries("snap-ring-3-4", "snap-ring-3-4", 0.0005m, 0.087m, 0.090m, 0.093m, 0.096m, 0.099m),
        InchSeries("snap-ring-1-2", "snap-ring-1-2", 0.0005m, 0.084m, 0.087m, 0.090m, 0.093m, 0.096m),
        InchSeries("snap-ring-rear", "snap-ring-rear", 0.0005m, 0.087m, 0.089m, 0.091m, 0.093m, 0.095m),
        InchSeries("first-washer", "first-washer", 0.0005m, 0.118m, 0.121m, 0.124m, 0.127m, 0.130m),
        InchSeries("counter-washer", "counter-washer", 0.0005m, 0.059m, 0.062m, 0.065m, 0.068m, 0.071m),
        InchSeries("retainer-gasket", "retainer-gasket", 0.0005m, 0.010m, 0.012m, 0.014m, 0.016m, 0.018m),
        InchSeries("extension-gasket", "extension-gasket", 0.0005m, 0.010m, 0.012m, 0.014m, 0.016m, 0.018m),
    ];
}
