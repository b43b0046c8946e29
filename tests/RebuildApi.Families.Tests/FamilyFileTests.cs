using System.Globalization;
using System.Text.Json;
using FamilyFiles;
using RebuildApi.Engine.Identity;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>
/// A family written as a file is the same family as the one written as code. Computed here, no source. After a change of the code, RB_ACCEPT=1 writes the
/// shipped file anew, as the command <c>family export brackenmere-4</c> does.
/// </summary>
public class FamilyFileTests
{
    /// <summary>How many random units the soak asks for.</summary>
    private static readonly int s_units = int.Parse(Environment.GetEnvironmentVariable("REBUILD_SOAK_UNITS") ?? "200", CultureInfo.InvariantCulture);

    private static readonly string s_file = Repository.PathTo("plugins", "family-files", "examples", "brackenmere-4.yaml");

    public static TheoryData<string> Ids => Shipped.Ids;

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_family_written_as_a_file_reads_back_with_the_same_canonical_hash(string id)
    {
        var plugin = new FamilyFilesPlugin();

        var read = plugin.Read(id + ".yaml", plugin.Write(Shipped.Of(id)));

        Assert.Empty(read.Diagnostics);
        Assert.Equal(Canonical.Sha256(Shipped.Of(id)), Canonical.Sha256(read.Family!));
    }

    [Fact]
    public void The_shipped_file_of_brackenmere_4_is_the_family_of_the_plug_in()
    {
        if (Environment.GetEnvironmentVariable("RB_ACCEPT") == "1")
            File.WriteAllBytes(s_file, new FamilyFilesPlugin().Write(Shipped.Of("brackenmere-4")));
        var read = Read();

        Assert.Empty(read.Diagnostics);
        Assert.Equal(Canonical.Sha256(Shipped.Of("brackenmere-4")), Canonical.Sha256(read.Family!));
    }

    [Fact]
    public void Random_units_are_judged_alike_under_the_file_and_under_the_plug_in()
    {
        var (code, file) = (new FamilyIndex(Shipped.Of("brackenmere-4")), new FamilyIndex(Read().Family!));

        var different = Enumerable.Range(0, s_units).AsParallel().Where(n =>
        {
            var unit = RandomUnit.Of(code.Family, n);
            return Judged(unit, code) != Judged(unit, file);
        });

        Assert.Empty(different);
    }

    [Fact]
    public void Random_units_meet_every_outcome()
    {
        var index = new FamilyIndex(Shipped.Of("brackenmere-4"));

        var outcomes = Enumerable.Range(0, 10).Select(n => UnitJudge.Judge(new UnitView(RandomUnit.Of(index.Family, n), index), new NoHooks()))
            .SelectMany(j => j.Parts.SelectMany(p => p.Verdicts).Select(v => v.Outcome)).ToHashSet();

        Assert.Superset(new HashSet<Outcome> { Outcome.Conforming, Outcome.Nonconforming, Outcome.NotAssessed }, outcomes);
    }

    private static ReadResult Read() =>
        new FamilyFilesPlugin().Read("brackenmere-4.yaml", File.ReadAllBytes(s_file));

    /// <summary>Everything that is said of a unit, letter for letter.</summary>
    private static string Judged(UnitSnapshot unit, FamilyIndex family) =>
        JsonSerializer.Serialize(UnitJudge.Judge(new UnitView(unit, family), new NoHooks()));
}
