using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.Storage.Tests;

public class MetrologyTests
{
    [Fact]
    public async Task Everything_an_instrument_read_is_found_in_each_unit_that_shows_it()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart("u1", "c1");
            s.OpenWithPart("u2", "c2");
            s.OpenWithPart("u3", "c3");
            s.OpenWithPart("u4", "c4");
            s.Add("u1", Some.Measurement("m1", "c1"));
            s.Place("u2", Some.Placement("c1", "fourth-gear", PlacementRole.Chosen));
            s.Add("u3", Some.Trial() with { Taken = SnapshotBuilder.Taken("mic-1") });
            s.Add("u4", Some.Measurement("m4", "c4") with { Taken = SnapshotBuilder.Taken("mic-2") });
        });

        Assert.Equal<string>(["u1", "u2", "u3"], [.. await temp.Store.UnitsReadWith("mic-1", default)]);
        Assert.Equal<string>(["u4"], [.. await temp.Store.UnitsReadWith("mic-2", default)]);
        Assert.Empty(await temp.Store.UnitsReadWith("mic-9", default));
    }

    [Fact]
    public async Task An_older_file_learns_which_instrument_took_each_reading()
    {
        await using var temp = new TempStore();
        await using (temp.OpenOlder(upTo: 1))
        {
        }

        temp.Meddle("""
            PRAGMA foreign_keys = OFF;
            INSERT INTO entry VALUES ('main', 1, 't', 'a', 'o', 'measurement', 'u1', 'm1', '{"taken":{"instrument":"mic-1"}}', '', 'h');
            INSERT INTO measurement (shop, id, unit, component, revision, characteristic, supersedes, entry) VALUES ('main', 'm1', 'u1', 'c1', 1, 'width', NULL, 1);
            """);

        Assert.Equal<string>(["u1"], [.. await temp.Store.UnitsReadWith("mic-1", default)]);
    }

    [Fact]
    public async Task Measurements_over_all_units_come_in_pages_without_what_was_superseded()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart("u1", "c1");
            s.OpenWithPart("u2", "c2");
            s.Add("u1", Some.Measurement("m1", "c1"));
            s.Add("u1", Some.Measurement("m2", "c1", supersedes: "m1"));
            s.Add("u2", Some.Measurement("m3", "c2"));
        });

        var page = await temp.Store.Measurements(null, null, 1, default);
        var rest = await temp.Store.Measurements(null, page.Next, 10, default);

        Assert.Equal(["m2", "m3"], page.Items.Concat(rest.Items).Select(m => m.Id));
        Assert.Equal(["m3"], (await temp.Store.Measurements("c2", null, 10, default)).Items.Select(m => m.Id));
    }

    [Fact]
    public async Task The_policy_is_the_usual_one_until_the_shop_signs_another()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        Assert.Equal(PolicyEdition.First, await temp.Store.Policy(default));

        await temp.Write(s => s.Put(Edition(0.9), 0));
        await temp.Write(s => s.Put(Edition(0.99), 1));

        var stands = await temp.Store.Policy(default);
        Assert.Equal((2L, "2", 0.99), (stands.Number, stands.Policy.Version, stands.Policy.Probability));
        Assert.Equal([0.9, 0.99], (await temp.Store.Policies(null, 10, default)).Items.Select(p => p.Policy.Probability));
        Assert.Equal(2, (await temp.Store.File("u1", default))!.Policy.Number);
        await Assert.ThrowsAsync<VersionConflictException>(() => temp.Write(s => s.Put(Edition(0.8), 1)));
    }

    [Fact]
    public async Task Calibrations_studies_and_comebacks_stand_in_the_chain_and_can_not_be_hidden()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.Put(Some.Instrument(), null);
            s.Add(new Calibration("k1", "mic-1", SnapshotBuilder.Noon, [Point], Point.Error, true, "17", "Ada"));
            s.Add(new GaugeStudyKept("g1", "mic-1", [new StudyReading("Ada", "1", "30.01", "mm")], 0.25, new GaugeCapability("gear", "width", 1e-6, 2e-6, 9), "Ada", SnapshotBuilder.Noon));
            s.Add(Comeback("b1"));
            s.Add(Comeback("b2") with { Supersedes = "b1" });
        });

        Assert.Equal("17", (await temp.Store.Calibrations("mic-1", default)).Single().Certificate);
        Assert.Equal("30.01", (await temp.Store.Studies("mic-1", default)).Single().Readings.Single().AsSent);
        Assert.Equal(["b2"], (await temp.Store.Comebacks("u1", null, 10, default)).Items.Select(c => c.Id));
        Assert.Equal(["b2"], (await temp.Store.Comebacks(null, null, 10, default)).Items.Select(c => c.Id));
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
        await temp.Close();
        temp.Meddle("DROP TRIGGER comeback_is_not_removed; DELETE FROM comeback WHERE id = 'b2'");
        Assert.Equal(8, (await temp.Store.VerifyChain(default)).FirstBroken);
    }

    [Fact]
    public async Task A_reading_moved_to_another_instrument_shows_in_the_chain()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.Add("u1", Some.Measurement());
        });
        await temp.Close();
        temp.Meddle("DROP TRIGGER measurement_is_not_changed; UPDATE measurement SET instrument = 'mic-9'");

        Assert.Equal(4, (await temp.Store.VerifyChain(default)).FirstBroken);
    }

    [Fact]
    public async Task What_is_known_of_an_instrument_needs_the_instrument()
    {
        await using var temp = new TempStore();
        await Assert.ThrowsAsync<UnknownIdException>(() => temp.Write(s => s.Add(new Calibration("k1", "mic-1", SnapshotBuilder.Noon, [Point], null, null, null, "Ada"))));
        await temp.Write(s =>
        {
            s.Put(Some.Instrument(), null);
            s.Add(new Calibration("k1", "mic-1", SnapshotBuilder.Noon, [Point], null, null, null, "Ada"));
        });
        await Assert.ThrowsAsync<DuplicateIdException>(() => temp.Write(s => s.Add(new Calibration("k1", "mic-1", SnapshotBuilder.Noon, [Point], null, null, null, "Ada"))));
    }

    private static CalibrationPoint Point { get; } = new(new Exact(Length.Millimetres(25m)), new Exact(Length.Millimetres(-0.002m)));

    private static PolicyEdition Edition(double probability) => new(0, Policy.Default with { Probability = probability }, "Ada", "as agreed", SnapshotBuilder.Noon);

    private static Comeback Comeback(string id) => new(
        id, "u1", null, SnapshotBuilder.Noon, [], "it whines", [new ConfirmedCause("third-gear/width", null, null)],
        new ComebackBasis(new FamilyVersion("brackenmere-4", "1.0.0"), "default", null, ["m1"], [], ["mic-1"]), "Ada", null);
}
