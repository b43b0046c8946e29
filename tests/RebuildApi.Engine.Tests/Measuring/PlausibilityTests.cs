using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Measuring;

public sealed class PlausibilityTests
{
    [Fact]
    public void A_width_in_inches_sent_as_millimetres_is_likely_in_inches()
    {
        var doubt = Assert.Single(Check(Window(9.8m, 10.1m), null, Sent("0.3935", "mm", Length.Millimetres(0.3935m))));

        Assert.Equal(("plausible-in-another-unit", "in"), (doubt.Code, doubt.Unit));
        Assert.Equal(new Exact(Length.Inches(0.3935m)), doubt.Alternative);
    }

    [Fact]
    public void Thou_sent_as_inches_are_likely_in_thou()
    {
        var doubt = Check(Window(0.25m, 0.38m), null, Sent("12", "in", Length.Inches(12))).Single(d => d.Code == "plausible-in-another-unit");

        Assert.Equal(("thou", new Exact(Length.Inches(0.012m))), (doubt.Unit, doubt.Alternative));
    }

    [Fact]
    public void A_bore_with_two_digits_changed_round_is_likely_the_other_way()
    {
        var doubt = Assert.Single(Check(Window(62.00m, 62.06m), null, Sent("62.50", "mm", Length.Millimetres(62.50m))));

        Assert.Equal(("digits-swapped", new Exact(Length.Millimetres(62.05m))), (doubt.Code, doubt.Alternative));
    }

    [Fact]
    public void A_slipped_decimal_is_likely_ten_times_larger()
    {
        var doubt = Assert.Single(Check(Window(24.9m, 25.1m), null, Sent("2.500", "mm", Length.Millimetres(2.5m))));

        Assert.Equal(("decimal-slipped", new Exact(Length.Millimetres(25m))), (doubt.Code, doubt.Alternative));
    }

    [Fact]
    public void A_reading_far_from_its_siblings_stands_out_even_without_limits()
    {
        var doubt = Assert.Single(
            Check(null, null, Mm(10.01m), Mm(10.02m), Mm(10.01m), Mm(13.77m)));

        Assert.Equal(("far-from-siblings", 3), (doubt.Code, doubt.Reading));
        Assert.Equal(new Exact(Length.Millimetres(10.01m)), doubt.Alternative);
    }

    [Fact]
    public void Digits_finer_than_the_instrument_shows_are_doubtful()
    {
        var doubt = Assert.Single(Check(Window(9m, 11m), Micrometer(0.01m), Mm(10.014m)));

        Assert.Equal(("finer-than-instrument", new Exact(Length.Millimetres(10.01m))), (doubt.Code, doubt.Alternative));
    }

    [Theory]
    [InlineData("10.010", 10.010)] // trailing zeros say nothing finer
    [InlineData("10.01", 10.01)]
    public void Digits_that_the_instrument_shows_are_not(string sent, double millimetres) =>
        Assert.Empty(Check(Window(9m, 11m), Micrometer(0.01m), Sent(sent, "mm", Length.Millimetres((decimal)millimetres))));

    [Fact]
    public void A_reading_beyond_the_instrument_s_range_was_taken_with_another_or_written_wrong()
    {
        var doubt = Assert.Single(Check(Window(9m, 45m), Micrometer(0.01m) with { RangeLow = new Exact(Length.Zero), RangeHigh = new Exact(Length.Millimetres(25m)) }, Mm(30.01m)));

        Assert.Equal(("outside-instrument-range", new Exact(Length.Millimetres(25m))), (doubt.Code, doubt.Alternative));
    }

    [Fact]
    public void A_reading_at_the_end_of_the_range_is_within_it() =>
        Assert.Empty(Check(Window(9m, 45m), Micrometer(0.01m) with { RangeLow = new Exact(Length.Millimetres(25m)), RangeHigh = new Exact(Length.Millimetres(50m)) }, Mm(25m)));

    [Fact]
    public void A_badly_worn_part_is_no_slip()
    {
        Assert.Empty(Check(Window(9.8m, 10.1m), Micrometer(0.01m), Mm(9.61m), Mm(9.63m)));
    }

    [Fact]
    public void A_reading_within_its_limits_is_never_doubted_for_its_unit() => Gen.Int[9800, 10100].Sample(microns =>
        Check(Window(9.8m, 10.1m), Micrometer(0.001m), Mm(microns / 1000m)).IsEmpty);

    private static ImmutableArray<Doubt> Check(Limits? service, InstrumentState? instrument, params Reading[] readings) => Plausibility.Check(
        new Measurement("m", "gear", 1, "width", [.. readings], SnapshotBuilder.Taken(null), null), LengthOf("width", null, null), null, service, instrument);

    private static Reading Mm(decimal value) => SnapshotBuilder.Millimetres(value);

    private static Reading Sent(string text, string unit, Length value) => Reading.Of(value, text, unit);

    private static InstrumentState Micrometer(decimal step) =>
        new("mic-1", "outside-micrometer", new Exact(Length.Millimetres(step)), null, ErrorModel.Rectangular, null);
}
