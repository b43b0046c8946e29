using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Measuring;

public sealed class InstrumentTableTests
{
    // Resolution: r/√12 (JCGM 100:2008, F.2.2.1). 0.01 and 0.001 mm are usual shop resolutions; uncertainties computed here.
    [Theory]
    [InlineData(0.01, 2.886751e-6)]
    [InlineData(0.001, 0.288675e-6)]
    public void A_step_brings_its_standard_uncertainty(double stepMm, double expected) =>
        Assert.Equal(expected, Read((decimal)stepMm, null, ErrorModel.Rectangular).StandardUncertainty, 5e-13);

    // DIN 863, accuracy limit of outside micrometers: 4 µm to 50 mm, 5 to 100, 6 to 150, 7 to 200, 8 to 250; rectangular, a/√3.
    [Theory]
    [InlineData(0.004, 2.3094e-6)]
    [InlineData(0.005, 2.8868e-6)]
    [InlineData(0.006, 3.4641e-6)]
    [InlineData(0.007, 4.0415e-6)]
    [InlineData(0.008, 4.6188e-6)]
    public void A_micrometer_s_accuracy_limit_is_spread_evenly(double limitMm, double expected) =>
        Assert.Equal(expected, Line(Read(0.001m, (decimal)limitMm, ErrorModel.Rectangular), "limit-of-error"), 5e-11);

    // A stated expanded uncertainty with k = 2 is halved (JCGM 100:2008, 4.3.3).
    [Fact]
    public void A_stated_expanded_uncertainty_is_halved() =>
        Assert.Equal(2e-6, Line(Read(0.001m, 0.004m, ErrorModel.ExpandedK2), "limit-of-error"), 1e-15);

    private static double Line(Estimate estimate, string name) => estimate.Budget.Single(l => l.Name == name).StandardUncertainty;

    private static Estimate Read(decimal stepMm, decimal? limitMm, ErrorModel model)
    {
        var family = FamilyBuilder.Named().Part("gear", LengthOf("width", null, null)).Family;
        var instrument = new InstrumentState(
            "mic-1", "outside-micrometer", new Exact(Length.Millimetres(stepMm)), limitMm is { } l ? new Exact(Length.Millimetres(l)) : null, model, null);
        var snapshot = SnapshotBuilder.Complete(family).Instrument(instrument).Reads("gear", "width", "mic-1", 10m).Snapshot;
        return new EstimateBook(new UnitView(snapshot, new FamilyIndex(family))).Of(new Address("gear", "width"));
    }
}
