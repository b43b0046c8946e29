using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>The difference of two readings within a window.</summary>
internal sealed class CharacteristicsDifference : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "characteristics-difference",
        "Difference within a window",
        """
        Judges the first part's characteristic less the second's: it must lie between low and high, ends included. The option characteristic
        names it; options first.characteristic and second.characteristic where the two are called otherwise.
        """,
        [Role("first", "what is subtracted from"), Role("second", "what is subtracted")],
        [],
        [],
        [
            Number("low", Dimension.Length, "least difference, of the dimension of the characteristics"),
            Number("high", Dimension.Length, "most difference"),
        ],
        [Word("characteristic", "id of the characteristic on both"), Word("first.characteristic", "id on the first"), Word("second.characteristic", "id on the second")]);

    public override Assessment Judge(PairingCase parts)
    {
        var (low, high) = (parts.Parameter("low"), parts.Parameter("high"));
        var name = parts.Option("characteristic");
        var named = name is not null || (parts.Option("first.characteristic") is not null && parts.Option("second.characteristic") is not null);
        if ((low ?? high) is null || !named)
            return Assessment.Worst([]);
        var code = (low ?? high) is Exact ? "difference" : "difference-of-values";
        return parts.DifferenceWithin(code, ("first", NameFor(parts, "first", name)), ("second", NameFor(parts, "second", name)), low, high);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        var (first, second) = (("first", NameFor(parts, "first", parts.Option("characteristic"))), ("second", NameFor(parts, "second", parts.Option("characteristic"))));
        var (low, high) = (parts.Parameter("low"), parts.Parameter("high"));
        yield return new Exchange(
            "fit-first-that-suits", $"Change the {parts.Called("first")} for what suits the {parts.Called("second")}.", [.. parts.FitFirst(first, second, low, high)]);
        yield return new Exchange(
            "fit-second-that-suits", $"Change the {parts.Called("second")} for what suits the {parts.Called("first")}.", [.. parts.FitSecond(first, second, low, high)]);
    }

    /// <summary>An option of the role's own is found by the plain name, else the common name is used.</summary>
    private static string NameFor(PairingCase parts, string role, string? name) =>
        parts.Option(role + ".characteristic") is null && name is not null ? name : "characteristic";
}
