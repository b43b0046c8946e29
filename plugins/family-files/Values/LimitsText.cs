namespace FamilyFiles.Values;

/// <summary>
/// Limits as one text: <c>0.010 to 0.020 in</c>, <c>at least 0.145 in</c>, <c>at most 0.05 mm</c>, <c>exactly 25 pcs</c>; a wanted value follows as
/// <c>, target 0.015</c> in the same unit. Ends are included.
/// </summary>
internal static class LimitsText
{
    public const string Wanted = "Limits such as 0.010 to 0.020 in, at least 0.145 in, at most 0.05 mm or exactly 25 pcs; with a wanted value, 0.010 to 0.020 in, target 0.015.";

    /// <summary>Reads the numbers; the order of the ends is for whoever makes limits of them.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static Window Read(string text)
    {
        var parts = text.Split(", target ", 2);
        var (low, high, unit) = Ends(parts[0].Trim());
        var target = parts.Length == 1 ? null : QuantityText.With(parts[1].Trim(), unit);
        return new Window(low is null ? null : QuantityText.With(low, unit), high is null ? null : QuantityText.With(high, unit), target);
    }

    private static (string? Low, string? High, string Unit) Ends(string text)
    {
        if (After(text, "at least ") is { } least)
            return (least.Number, null, least.Unit);
        if (After(text, "at most ") is { } most)
            return (null, most.Number, most.Unit);
        if (After(text, "exactly ") is { } exactly)
            return (exactly.Number, exactly.Number, exactly.Unit);
        if (text.Split(" to ") is not [var from, var to])
            throw new FormatException($"'{Forms.Plain.Short(text)}' does not say from where to where");
        var (high, unit) = QuantityText.Split(to);
        return (from.Trim(), high, unit);
    }

    private static (string Number, string Unit)? After(string text, string word) =>
        text.StartsWith(word, StringComparison.Ordinal) ? QuantityText.Split(text[word.Length..]) : null;
}

/// <summary>The numbers of limits, without their source.</summary>
internal sealed record Window(Quantity? Low, Quantity? High, Quantity? Target);
