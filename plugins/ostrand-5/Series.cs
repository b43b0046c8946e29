namespace Ostrand5;

/// <summary>The thicknesses that exist. Shims are packed, up to three together; rings and washers go in singly.</summary>
internal static class SelectiveSeries
{
    public static ImmutableArray<Series> All =>
    [
        MmSeries("input-shim", "input-shim", 0.005m, 0.10m, 0.13m, 0.16m, 0.19m, 0.22m, 0.25m, 0.28m, 0.31m, 0.50m, 1.00m),
        MmSeries("output-shim", "output-shim", 0.005m, 0.10m, 0.13m, 0.16m, 0.19m, 0.22m, 0.25m, 0.28m, 0.31m, 0.50m, 1.00m),
        MmSeries("snap-ring-3-4", "snap-ring-3-4", 0.010m, 1.65m, 1.70m, 1.75m, 1.80m, 1.85m),
        MmSeries("snap-ring-1-2", "snap-ring-1-2", 0.010m, 1.65m, 1.70m, 1.75m, 1.80m, 1.85m),
        MmSeries("snap-ring-5", "snap-ring-5", 0.010m, 1.90m, 1.95m, 2.00m, 2.05m, 2.10m),
        MmSeries("first-washer", "first-washer", 0.010m, 2.90m, 2.95m, 3.00m, 3.05m, 3.10m),
        MmSeries("fourth-washer", "fourth-washer", 0.010m, 3.90m, 3.95m, 4.00m, 4.05m, 4.10m),
    ];
}
