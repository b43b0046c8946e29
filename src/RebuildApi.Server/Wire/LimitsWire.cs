using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;

namespace RebuildApi.Server.Wire;

/// <summary>A window, ends included.</summary>
/// <param name="Low">The lowest value allowed, if there is one.</param>
/// <param name="High">The highest value allowed, if there is one.</param>
/// <param name="Target">The value wanted, if one is.</param>
/// <param name="Source">Where the numbers come from.</param>
public sealed record LimitsWire(QuantityWire? Low, QuantityWire? High, QuantityWire? Target, SourceWire Source)
{
    /// <summary>From the contract.</summary>
    public static LimitsWire? From(Limits? limits, Display show) => limits is null
        ? null
        : new(show.OfMaybe(limits.Low), show.OfMaybe(limits.High), show.OfMaybe(limits.Target), SourceWire.From(limits.Source));

    /// <summary>From the contract, in one unit whatever was asked for. Not for lengths.</summary>
    public static LimitsWire? In(Limits? limits, string unit)
    {
        if (limits is null)
            return null;
        var of = (RealUnit)UnitCatalogue.Find(unit, (limits.Low ?? limits.High)!.Kind)!;
        return new(Of(limits.Low), Of(limits.High), Of(limits.Target), SourceWire.From(limits.Source));

        QuantityWire? Of(Quantity? end) => end is null ? null : Display.In(of.FromSi(end.InSi), of.Symbol);
    }
}

/// <summary>Where a number comes from.</summary>
/// <param name="Kind">How much weight it carries.</param>
/// <param name="Citation">Words a person can follow.</param>
public sealed record SourceWire(SourceKind Kind, string Citation)
{
    /// <summary>From the contract.</summary>
    public static SourceWire From(Source source) => new(source.Kind, source.Citation);
}

/// <summary>A family and the edition of its rules.</summary>
/// <param name="Id">The family.</param>
/// <param name="Version">The edition.</param>
public sealed record FamilyEditionWire(string Id, string Version)
{
    /// <summary>From the contract.</summary>
    public static FamilyEditionWire From(FamilyVersion version) => new(version.Id, version.SemVer);
}
