using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.TestKit;
using static RebuildApi.Engine.Tests.Clearances.EndPlay;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Clearances;

/// <summary>Floats hot (+70 K) and cold (−40 K) over a span of 200 mm; computed here, no source. Coefficients from memory: steel 11.5, iron 10.5, aluminium 23.</summary>
public class ThermalGapTests
{
    private const double Hot = ThermalGap.Reference + 70;
    private const double Cold = ThermalGap.Reference - 40;

    [Theory]
    [InlineData("aluminium", 0.161, -0.092)]
    [InlineData("iron", -0.014, 0.008)]
    public void Float_between_case_faces_grows_hot_in_aluminium_and_falls_in_iron(string material, double hot, double cold)
    {
        var answer = Judge(Case(material, facesOpen: true), Read(200.00m, 200.00m), "float");

        Assert.Equal((cold, hot), (Rounded(answer.Thermal[0]), Rounded(answer.Thermal[1])));
        Assert.Equal(("cold", "hot"), (answer.Thermal[0].When, answer.Thermal[1].When));
    }

    [Fact] // O-mounting: the cups sit against a centre wall, which closes the float as it grows.
    public void Float_with_the_cups_against_a_centre_wall_has_the_other_sign()
    {
        var answer = Judge(Case("aluminium", facesOpen: false), Read(200.00m, 200.00m), "float");

        Assert.Equal((0.092, -0.161), (Rounded(answer.Thermal[0]), Rounded(answer.Thermal[1])));
    }

    [Fact]
    public void Aluminium_case_set_to_zero_has_preload_cold_and_float_hot_against_its_windows()
    {
        var family = Case("aluminium", facesOpen: true, new Thermal(Cold, Hot, Window(-0.05m, 0.05m), Window(0.10m, 0.20m)));

        var answer = Judge(family, Read(200.00m, 200.00m), "float");

        Assert.Equal((Outcome.Nonconforming, Outcome.Conforming), (answer.Thermal[0].Outcome, answer.Thermal[1].Outcome));
    }

    [Fact]
    public void Doubt_of_a_coefficient_is_taken_once_for_all_parts_of_one_material()
    {
        var family = Case("steel", facesOpen: true);

        var answer = Judge(family, Read(200.00m, 200.00m), "float");

        Assert.Equal(answer.Combined.StandardUncertainty, answer.Thermal[1].Gap.StandardUncertainty, 12);
    }

    [Fact]
    public void Kind_without_a_material_leaves_the_hot_gap_not_assessed_and_is_named()
    {
        var family = Case("aluminium", facesOpen: true).With("shaft", k => k with { Material = null });

        var answer = Judge(family, Read(200.00m, 200.00m), "float");

        Assert.Equal(Outcome.NotAssessed, answer.Thermal[1].Outcome);
        Assert.Contains(answer.Thermal[1].Reasons, r => r.Code == "thermal-needs-material-and-length" && r.Arguments["of"] == "shaft/span");
    }

    [Fact]
    public void Temperature_that_is_none_is_refused() => Assert.Throws<ArgumentException>(
        "kelvin", () => Judge(Case("iron", facesOpen: true, new Thermal(Cold, -1, null, null)), Read(200.00m, 200.00m), "float"));

    private static FamilyBuilder Case(string material, bool facesOpen, Thermal? thermal = null)
    {
        var family = Named().Part("case", LengthOf("span", 1, 900)).Part("shaft", LengthOf("span", 1, 900))
            .With("case", k => k with { Material = material }).With("shaft", k => k with { Material = "steel" });
        var terms = new[] { Opens("case", "span"), Closes("shaft", "span") }.Select(t => t with { Numerator = facesOpen ? t.Numerator : -t.Numerator });
        return new FamilyBuilder(family.Family with { Materials = [Of("steel", 11.5), Of("iron", 10.5), Of("aluminium", 23)] })
            .Loop(new ClearanceLoop(
                "float", Words("float"), "shaft", [.. terms], Window(-0.20m, 0.20m)!, thermal ?? new Thermal(Cold, Hot, null, null), TrialMethod.None, Criticality.Functional));
    }

    private static SnapshotBuilder Read(decimal span, decimal shaft) => SnapshotBuilder.Of(Case("iron", true).Family).Micrometer()
        .Found("case", "case").Found("shaft", "shaft").Reads("case", "span", "mic-1", span).Reads("shaft", "span", "mic-1", shaft);

    private static Material Of(string id, double expansion) => new(id, Words(id), expansion * 1e-6, 0.5e-6, Invented);

    private static double Rounded(ThermalGap gap) => Math.Round(gap.Gap.Value!.InSi * 1000, 3);
}
