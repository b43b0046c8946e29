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

    // DIN 861 / ISO 3650, limits of gauge blocks in µm to 10, 25, 50, 75 and 100 mm, for grades 0, 1 and 2; rectangular, a/√3.
    [Theory]
    [InlineData(new[] { 0.12, 0.14, 0.20, 0.25, 0.30 }, new[] { 69.282, 80.829, 115.470, 144.338, 173.205 })]
    [InlineData(new[] { 0.20, 0.30, 0.40, 0.50, 0.60 }, new[] { 115.470, 173.205, 230.940, 288.675, 346.410 })]
    [InlineData(new[] { 0.45, 0.60, 0.80, 1.00, 1.20 }, new[] { 259.808, 346.410, 461.880, 577.350, 692.820 })]
    public void A_gauge_block_s_limit_is_kept_to_ten_nanometres_and_spread_evenly(double[] limitsUm, double[] expectedNm) => Assert.All(
        limitsUm.Zip(expectedNm),
        block => Assert.Equal(block.Second * 1e-9, Line(Read(0.001m, (decimal)block.First / 1000, ErrorModel.Rectangular), "limit-of-error"), 5e-13));

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
