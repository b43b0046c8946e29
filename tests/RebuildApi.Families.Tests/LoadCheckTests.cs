using System.Text;
using FamilyFiles;
using RebuildApi.Engine.Families;

namespace RebuildApi.Families.Tests;

/// <summary>What is looked at when a family is taken up beyond whether it hangs together. Computed here, no source.</summary>
public class LoadCheckTests
{
    private static readonly string s_sound = File.ReadAllText(Repository.PathTo("src", "RebuildApi.Server", "Authoring", "Scaffold", "yaml", "ID-OF-FAMILY.yaml"))
        .Replace("ID-OF-FAMILY", "marsh-1", StringComparison.Ordinal);

    [Fact]
    public void The_file_to_start_from_has_nothing_wrong_and_every_rule_fired_both_ways() => Assert.Empty(Found("", "").Select(d => $"{d.Field}: {d.Message}"));

    [Theory]
    [InlineData("expect: {same-vintage: incompatible}", "expect: {shaft/seat: not-assessed}", "pairing-untested")]
    [InlineData("ring/thickness: 3 x 1.65 mm", "ring/thickness: 3 x 1.80 mm", "golden-differs")]
    [InlineData("4 x 57.80 mm", "4 x 57.95 mm", "golden-differs")]
    [InlineData("expect: {shaft/seat: nonconforming, gear/length: nonconforming}", "expect: {shaft/seat: nonconforming}", "limit-untested")]
    [InlineData("'195': 1.95 mm", "'195': 19.5 mm", "member-outside-limits")]
    [InlineData("'[shaft/seat] - [first/length] >= [least]'", "'[shaft/seat] - [first/lenght] >= [least]'", "expression-name")]
    [InlineData("'[shaft/seat] - [first/length] >= [least]'", "'System.Exit(1)'", "expression-form")]
    [InlineData("window: 0.10 to 0.30 mm, target 0.20", "window: 10 to 11 mm", "loop-not-closed")]
    public void A_slip_is_found(string right, string wrong, string code) => Assert.Contains(code, Found(right, wrong).Select(d => d.Code));

    [Fact]
    public void A_limit_in_another_unit_than_its_siblings_is_doubted()
    {
        var family = Shipped.Of("kestermere-6");
        var wrong = family with { Kinds = [.. family.Kinds.Select(k => k.Id == "third-gear" ? k with { Characteristics = [.. k.Characteristics.Select(InInches)] } : k)] };

        Assert.Contains("limit-unlike-siblings", FamilyCheck.Check(wrong).Select(d => d.Code));
    }

    private static Characteristic InInches(Characteristic c) => c.Id != "bore"
        ? c
        : c with { New = Limits.Between(Length.Inches(50.015m), Length.Inches(50.025m), FamilyBuilder.Invented), Service = null };

    private static ImmutableArray<Diagnostic> Found(string right, string wrong)
    {
        var read = new FamilyFilesPlugin().Read("marsh-1.yaml", Encoding.UTF8.GetBytes(right.Length == 0 ? s_sound : s_sound.Replace(right, wrong, StringComparison.Ordinal)));
        Assert.Empty(read.Diagnostics);
        return LoadCheck.Check(read.Family!);
    }
}
