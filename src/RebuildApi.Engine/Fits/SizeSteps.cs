using RebuildApi.Contracts;

namespace RebuildApi.Engine.Fits;

/// <summary>The steps of nominal size of ISO 286-1, over and up to and including, 0 to 500 mm.</summary>
internal static class SizeSteps
{
    private static readonly int[] MainEnds = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];

    private static readonly int[] FineEnds = [3, 6, 10, 18, 30, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500];

    /// <summary>Index of the main step: 30 mm exactly belongs to the step over 18 up to and including 30.</summary>
    /// <exception cref="ArgumentException">Not over 0 up to 500 mm.</exception>
    public static int Main(Length nominal) => IndexIn(MainEnds, nominal);

    /// <summary>Index of the intermediate step, in which r and s are tabulated.</summary>
    /// <inheritdoc cref="Main"/>
    public static int Fine(Length nominal) => IndexIn(FineEnds, nominal);

    private static int IndexIn(int[] ends, Length nominal)
    {
        if (nominal <= Length.Zero || nominal > Length.Millimetres(ends[^1]))
            throw new ArgumentException($"{nominal} is not over 0 up to and including 500 mm.", nameof(nominal));
        return Array.FindIndex(ends, end => nominal <= Length.Millimetres(end));
    }
}
