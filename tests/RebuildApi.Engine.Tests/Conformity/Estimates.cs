using RebuildApi.Contracts;

namespace RebuildApi.Engine.Tests.Conformity;

/// <summary>Estimates for tests that start after measuring.</summary>
internal static class Estimates
{
    public static readonly Source Invented = new(SourceKind.Invented, "a test");

    public static Estimate Of(Quantity value, double uncertainty = 0, double? freedom = null) =>
        new(value, uncertainty, freedom, null, null, EstimateBasis.Measured, []);

    public static Estimate Nanometres(long value, double uncertainty = 0, double? freedom = null) =>
        Of(new Exact(new Length(value)), uncertainty, freedom);

    public static Estimate Between(Length? low, Length? high) => new(
        null, 0, null, low is { } l ? new Exact(l) : null, high is { } h ? new Exact(h) : null, EstimateBasis.Measured, []);

    public static Limits Window(long? low, long? high) => new(
        low is { } l ? new Exact(new Length(l)) : null, high is { } h ? new Exact(new Length(h)) : null, null, Invented);
}
