using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Measuring;

public sealed class EstimateBookTests
{
    [Fact]
    public void Three_readings_of_a_width_give_their_mean_and_a_full_budget()
    {
        var estimate = Read(LengthOf("width", 9m, 11m), b => b.Micrometer().Reads("gear", "width", "mic-1", 10.001m, 10.002m, 10.003m));

        Assert.Equal(new Exact(Length.Millimetres(10.002m)), estimate.Value);
        Assert.Equal(["repeatability", "resolution", "limit-of-error"], estimate.Budget.Select(l => l.Name));
        Assert.Equal(0.001e-3 / Math.Sqrt(3), estimate.Budget[0].StandardUncertainty, 1e-15);
        Assert.Equal(2, estimate.Budget[0].DegreesOfFreedom);
        Assert.Equal(0.001e-3 / Math.Sqrt(12), estimate.Budget[1].StandardUncertainty, 1e-15);
        Assert.Equal(0.004e-3 / Math.Sqrt(3), estimate.Budget[2].StandardUncertainty, 1e-15);
        Assert.Equal(1, estimate.Budget.Sum(l => l.Share), 1e-12);
    }

    [Fact]
    public void Order_of_readings_is_irrelevant() => Gen.Int[0, 2000].Array[2, 8].Sample(microns =>
    {
        var there = Of(microns);
        var back = Of([.. microns.Reverse()]);
        return there.Value == back.Value && there.StandardUncertainty.Equals(back.StandardUncertainty);

        static Estimate Of(int[] readings) => Read(
            LengthOf("width", 9m, 11m), b => b.Micrometer().Reads("gear", "width", "mic-1", [.. readings.Select(r => 10m + r / 1000m)]));
    }, iter: 200);

    [Fact]
    public void A_warm_part_is_brought_to_20_degrees_by_its_material()
    {
        var builder = FamilyBuilder.Named().Part("case", LengthOf("depth", 90m, 110m)).With("case", k => k with { Material = "aluminium" });
        var family = builder.Family with { Materials = [new Material("aluminium", Words("aluminium"), 23e-6, 1e-6, Invented)] };
        var reading = new Measurement("m", "case", 1, "depth", [SnapshotBuilder.Millimetres(100.023m)], SnapshotBuilder.Taken("mic-1") with { Temperature = 303.15 }, null);
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Snapshot with { Measurements = [reading] };

        var estimate = Of(family, snapshot, "case/depth");

        // 100.023 mm · 23e-6/K · 10 K = 23.005 µm comes off; 100.023 mm · 10 K · 1e-6/K/√3 = 0.577 µm is left in doubt.
        Assert.Equal(99_999_995, ((Exact)estimate.Value!).Value.Nanometres);
        Assert.Equal(0.57748e-6, estimate.Budget.Single(l => l.Name == "expansion").StandardUncertainty, 1e-11);
    }

    [Fact]
    public void A_go_and_a_no_go_gauge_bound_a_value_without_giving_one()
    {
        var estimate = Read(LengthOf("slot", 1m, 2m), b => b.Reads("gear", "slot", null, [AtLeast(1.20m), AtMost(1.25m)]));

        Assert.Null(estimate.Value);
        Assert.Equal((new Exact(Length.Millimetres(1.20m)), new Exact(Length.Millimetres(1.25m))), (estimate.Low, estimate.High));
        Assert.Equal(EstimateBasis.Measured, estimate.Basis);
    }

    [Fact]
    public void A_smallest_reading_that_another_plane_undercuts_is_no_value()
    {
        var readings = ImmutableArray.Create(SnapshotBuilder.Millimetres(24.98m), AtMost(24.90m) with { At = "middle" });

        var estimate = Read(LengthOf("journal", 24m, 25m, Statistic.Min), b => b.Reads("gear", "journal", null, readings));

        Assert.Null(estimate.Value);
        Assert.Equal(new Exact(Length.Millimetres(24.90m)), estimate.High);
    }

    [Fact]
    public void A_reading_without_an_instrument_is_trusted_no_further_than_its_last_digit()
    {
        var estimate = Read(LengthOf("width", 9m, 11m), b => b.Reads("gear", "width", null, 10.02m));

        Assert.Equal(0.01e-3 / Math.Sqrt(12), estimate.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void Runout_read_twice_on_one_dial_does_not_carry_the_dial_s_limit_of_error()
    {
        var estimate = Read(LengthOf("runout", null, 0.05m, Statistic.Spread), b => b.Micrometer().Reads("gear", "runout", "mic-1", 0.10m, 0.13m));

        Assert.Equal(new Exact(Length.Millimetres(0.03m)), estimate.Value);
        Assert.Equal(["resolution"], estimate.Budget.Select(l => l.Name));
        Assert.Equal(0.001e-3 / Math.Sqrt(6), estimate.StandardUncertainty, 1e-15);
    }

    [Fact]
    public void A_derived_length_sums_its_terms_exactly_and_their_uncertainties_in_square()
    {
        var derived = LengthOf("recess", 0m, 5m) with
        {
            DerivedFrom = new Linear([new Term(new OfPart(new Address("", "total")), 1), new Term(new OfPart(new Address("", "step")), -1)]),
        };
        var family = FamilyBuilder.Named().Part("gear", LengthOf("total", null, null), LengthOf("step", null, null), derived).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer(resolutionMm: 0.001m, limitOfErrorMm: null)
            .Reads("gear", "total", "mic-1", 30.003m).Reads("gear", "step", "mic-1", 27.001m).Snapshot;

        var estimate = Of(family, snapshot, "gear/recess");

        Assert.Equal(new Exact(Length.Millimetres(3.002m)), estimate.Value);
        Assert.Equal(EstimateBasis.Derived, estimate.Basis);
        Assert.Equal(0.001e-3 / Math.Sqrt(6), estimate.StandardUncertainty, 1e-15);
    }

    [Fact]
    public void A_flank_angle_follows_from_two_depths()
    {
        var angle = new Characteristic(
            "taper",
            Words("taper"),
            Dimension.Angle,
            Statistic.Mean,
            1,
            null,
            null,
            Distribution.None,
            Criticality.Functional,
            new Named("flank-angle-from-two-depths", ImmutableSortedDictionary<string, Address>.Empty
                .Add("offset-shallow", new Address("", "a")).Add("offset-deep", new Address("", "b"))
                .Add("depth-shallow", new Address("", "c")).Add("depth-deep", new Address("", "d"))),
            []);
        var family = FamilyBuilder.Named()
            .Part("gear", LengthOf("a", null, null), LengthOf("b", null, null), LengthOf("c", null, null), LengthOf("d", null, null), angle).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer(limitOfErrorMm: null)
            .Reads("gear", "a", "mic-1", 1.000m).Reads("gear", "b", "mic-1", 1.210m).Reads("gear", "c", "mic-1", 1.000m).Reads("gear", "d", "mic-1", 4.000m).Snapshot;

        var estimate = Of(family, snapshot, "gear/taper");

        // tan θ = 0.21/3: 4.004 degrees. First order: u_θ = cos²θ/3 · √(2u² + 2(0.07u)²).
        Assert.Equal(Math.Atan(0.07), estimate.Value!.InSi, 1e-12);
        var u = 0.001 / Math.Sqrt(12);
        Assert.Equal(Math.Sqrt(2 * u * u * (1 + 0.0049)) / 3 / 1.0049, estimate.StandardUncertainty, 1e-12);
        Assert.Equal(4, estimate.Budget.Length);
    }

    [Theory]
    [InlineData(Distribution.Rectangular, 1.7320508075688772)]
    [InlineData(Distribution.Triangular, 2.449489742783178)]
    [InlineData(Distribution.Normal, 3)]
    public void A_part_that_is_not_measured_is_the_middle_of_its_drawing(Distribution spread, double divisor)
    {
        var estimate = Read(LengthOf("width", 9m, 11m) with { New = Window(9.95m, 10.05m), Unmeasured = spread }, b => b);

        Assert.Equal(EstimateBasis.Drawing, estimate.Basis);
        Assert.Equal(new Exact(Length.Millimetres(10m)), estimate.Value);
        Assert.Equal(0.05e-3 / divisor, estimate.StandardUncertainty, 1e-15);
    }

    [Fact]
    public void Where_the_family_lets_nothing_be_assumed_nothing_is_known()
    {
        var estimate = Read(LengthOf("width", 9m, 11m) with { New = Window(9.95m, 10.05m) }, b => b);

        Assert.Equal((EstimateBasis.None, null), (estimate.Basis, estimate.Value));
    }

    [Fact]
    public void A_characteristic_derived_from_itself_stays_unknown()
    {
        var circular = LengthOf("width", 9m, 11m) with { DerivedFrom = new Linear([new Term(new OfPart(new Address("", "width")), 1)]) };

        Assert.Equal(EstimateBasis.None, Read(circular, b => b).Basis);
    }

    private static Reading AtLeast(decimal mm) => new(Length.Millimetres(mm), null, null, ">", "mm", null);

    private static Reading AtMost(decimal mm) => new(null, Length.Millimetres(mm), null, "<", "mm", null);

    private static Estimate Read(Characteristic characteristic, Func<SnapshotBuilder, SnapshotBuilder> read)
    {
        var family = FamilyBuilder.Named().Part("gear", characteristic).Family;
        return Of(family, read(SnapshotBuilder.Complete(family)).Snapshot, "gear/" + characteristic.Id);
    }

    private static Estimate Of(Family family, UnitSnapshot snapshot, string address) =>
        new EstimateBook(new UnitView(snapshot, new FamilyIndex(family))).Of(Address.TryParse(address)!);
}
