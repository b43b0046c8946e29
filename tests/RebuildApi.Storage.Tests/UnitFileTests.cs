using RebuildApi.Contracts;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Tests;

public class UnitFileTests
{
    [Fact]
    public async Task Everything_recorded_of_a_unit_comes_back_as_it_was_sent()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.Put(Some.Instrument(), null);
            s.OpenWithPart();
            s.Add("u1", Some.Measurement());
            s.Add("u1", Some.Trial());
            s.Add("u1", Some.Finding());
            s.Add("u1", Some.Decision());
        });

        var file = await temp.Store.File("u1", default);

        Assert.NotNull(file);
        Assert.Equal("30.012", file.Measurements.Single().Readings.Single().AsSent);
        Assert.Equal(Length.Zero, file.Trials.Single().Gap.Single().High);
        Assert.Equal(Some.Finding(), file.Findings.Single());
        Assert.Equal(Some.Decision(), file.Decisions.Single());
        Assert.Equal(Some.Placement(), file.Placements.Single());
        Assert.Equal("straight", file.Components.Single().Attributes["teeth"]);
        Assert.Equal("the old one", file.Instruments.Single().Name);
        Assert.Equal("it jumps out", file.Unit.Words);
    }

    [Fact]
    public async Task A_corrected_reading_leaves_the_file_and_its_correction_stands()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.Add("u1", Some.Measurement("m1"));
            s.Add("u1", Some.Finding("f1"));
            s.Add("u1", Some.Trial("t1"));
            s.Add("u1", Some.Decision("d1"));
        });

        await temp.Write(s =>
        {
            s.Add("u1", Some.Measurement("m2", millimetres: 30.02m, supersedes: "m1"));
            s.Add("u1", Some.Finding("f2", supersedes: "f1"));
            s.Add("u1", Some.Trial("t2", supersedes: "t1"));
            s.Add("u1", Some.Decision("d2", supersedes: "d1"));
        });

        var file = await temp.Store.File("u1", default);
        Assert.Equal("m2", file!.Measurements.Single().Id);
        Assert.Equal("f2", file.Findings.Single().Id);
        Assert.Equal("t2", file.Trials.Single().Id);
        Assert.Equal("d2", file.Decisions.Single().Id);
    }

    [Fact]
    public async Task Only_the_newest_revision_of_a_part_is_in_the_file()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.Add("u1", Some.Component("c1", 2));
        });

        var file = await temp.Store.File("u1", default);

        Assert.Equal(2, file!.Components.Single().Revision);
    }

    [Fact]
    public async Task A_part_taken_from_another_unit_brings_its_readings_along()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart("donor", "c1");
            s.Add("donor", Some.Measurement("m1"));
            s.Vacate("donor", "third-gear", 1, PlacementRole.Found);
            s.Open(Some.Unit("u1"));
            s.Place("u1", Some.Placement("c1", role: PlacementRole.Fitted));
        });

        var file = await temp.Store.File("u1", default);

        Assert.Equal("c1", file!.Components.Single().Id);
        Assert.Equal("m1", file.Measurements.Single().Id);
    }

    [Fact]
    public async Task An_unknown_unit_has_no_file()
    {
        await using var temp = new TempStore();

        Assert.Null(await temp.Store.File("nobody", default));
        Assert.Null(await temp.Store.Unit("nobody", default));
    }

    public static TheoryData<string> FileQuestions() =>
        [FileSql.Components, FileSql.Placements, FileSql.Measurements, FileSql.Findings, FileSql.Trials, FileSql.Decisions];

    [FileTheory]
    [MemberData(nameof(FileQuestions))]
    public async Task A_file_is_looked_up_and_no_table_is_read_through_for_it(string sql)
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());

        var plan = temp.Plan(sql.Replace("@shop", "'main'", StringComparison.Ordinal).Replace("@id", "'u1'", StringComparison.Ordinal));

        // "p" and "every" are the short list of the unit's own parts.
        Assert.Empty(plan.Where(step => step.StartsWith("SCAN", StringComparison.Ordinal)).Except(["SCAN p", "SCAN every"]));
        Assert.DoesNotContain(plan, step => step.EndsWith("(shop=?)", StringComparison.Ordinal));
    }
}
