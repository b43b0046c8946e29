using FamilyFiles.Forms;
using FamilyFiles.Values;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A worked case: a few parts, what was read and seen on them, and what must come out.</summary>
internal sealed class GoldenForm : ObjectForm<GoldenCase>
{
    private readonly Field<ImmutableArray<string>> _found;
    private readonly Field<ImmutableArray<string>> _chosen;
    private readonly Field<ImmutableArray<KeyValuePair<string, string>>> _facing;
    private readonly Field<ImmutableArray<KeyValuePair<string, string>>> _marks;
    private readonly Field<ImmutableArray<(string At, ImmutableArray<Reading> Readings)>> _read;
    private readonly Field<ImmutableArray<KeyValuePair<string, string>>> _seen;
    private readonly Field<ImmutableArray<(string At, DamageSeen Damage)>> _damage;
    private readonly Field<ImmutableArray<string>> _sound;
    private readonly Field<ImmutableArray<TrialAssembly>> _tried;
    private readonly Field<ImmutableArray<KeyValuePair<string, string>>> _expect;

    public GoldenForm()
        : base("golden-case", "A worked case that the rules must reproduce. A case on each side of a limit proves that the limit is the one that was meant.")
    {
        _found = Some("found", Plain.Names, "Positions whose parts came with the gearbox; keys-3-4#2 is the second of several.", "");
        _chosen = Some("chosen", Plain.Names, "Positions that a new part is to go to.", "");
        _facing = Some("facing", new MapForm<KeyValuePair<string, string>>(new PairForm(), "positions"), "Which way the marked faces point: position to input or output.", "");
        _marks = Some("marks", new MapForm<KeyValuePair<string, string>>(new PairForm(), "positions"), "Marks by which parts stand to each other: position to mark.", "");
        _read = Some("read", new MapForm<(string, ImmutableArray<Reading>)>(new ReadForm(), "addresses such as third-gear/length"), "What was read: 4 x 1.500 in.", "");
        _seen = Some("seen", new MapForm<KeyValuePair<string, string>>(new PairForm(), "position/attribute"), "What was seen: position/attribute to its value.", "");
        _damage = Some("damage", new ListForm<(string, DamageSeen)>(new DamageSeenForm()), "Damage that was seen.", "");
        _sound = Some("sound", Plain.Names, "Positions whose parts were inspected and are sound.", "");
        _tried = Some("tried", new ListForm<TrialAssembly>(new TriedForm()), "Trial assemblies.", "");
        _expect = Need("expect", new MapForm<KeyValuePair<string, string>>(new PairForm(), "position/characteristic, or a clearance or pairing by its id"), "What must come out: subject to outcome.", "expected");
    }

    protected override GoldenCase? Make(Got got, Node node, Place place, FileReading reading)
    {
        try
        {
            return new GoldenCase(place.Id, Snapshot(got, reading), [.. got.Of(_expect).Select(e => new Expectation(e.Key, e.Value))]);
        }
        catch (FormatException e)
        {
            reading.Error(node, place, "golden-form", e.Message + ".");
            return null;
        }
    }

    private UnitSnapshot Snapshot(Got got, FileReading reading)
    {
        var facing = got.Of(_facing).ToDictionary(f => f.Key, f => FacingOf(f.Value), StringComparer.Ordinal);
        var marks = got.Of(_marks).ToDictionary(StringComparer.Ordinal);
        var placed = got.Of(_found).Select(f => Placed(f, Origin.Unit, PlacementRole.Found, reading))
            .Concat(got.Of(_chosen).Select(c => Placed(c, Origin.New, PlacementRole.Chosen, reading)))
            .Select(p => (p.Part, Placement: p.Placement with { Facing = facing.GetValueOrDefault(p.Place), IndexMark = marks.GetValueOrDefault(p.Place) })).ToList();
        var observations = got.Of(_seen).Select(s => (WorkedCase.At(s.Key), Seen: (Observation)new AttributeSeen(WorkedCase.At(s.Key).What, s.Value)))
            .Select(s => (WorkedCase.Part(s.Item1.Position, s.Item1.Index), s.Seen))
            .Concat(got.Of(_damage).Select(d => (PartAt(d.At), (Observation)d.Damage)))
            .Concat(got.Of(_sound).Select(s => (PartAt(s), (Observation)new Sound())));
        return new UnitSnapshot(
            WorkedCase.Unit, new FamilyVersion("", ""), [], [.. placed.Select(p => p.Part)], [.. placed.Select(p => p.Placement)],
            [.. got.Of(_read).Select((r, i) => Measured(r.At, r.Readings, i))], [.. got.Of(_tried).Select((t, i) => t with { Id = Number("t", i) })],
            [.. observations.Select((o, i) => new Finding(Number("f", i), o.Item1, 1, o.Item2, null, WorkedCase.Seen, null))],
            [WorkedCase.Instrument], Policy.Default);
    }

    private static Facing FacingOf(string word) => word switch
    {
        "input" => Facing.Input,
        "output" => Facing.Output,
        _ => throw new FormatException($"'{Plain.Short(word)}' is neither input nor output"),
    };

    private static (string Place, Component Part, Placement Placement) Placed(string text, Origin origin, PlacementRole role, FileReading reading)
    {
        var (position, index) = WorkedCase.Place(text);
        var kind = reading.KindAt.GetValueOrDefault(position) ?? throw new FormatException($"There is no position '{Plain.Short(position)}'");
        var part = new Component(WorkedCase.Part(position, index), 1, kind, origin, ImmutableSortedDictionary<string, string>.Empty, null);
        return (text, part, new Placement(position, index, part.Id, role, Facing.Unspecified, null));
    }

    private static Measurement Measured(string at, ImmutableArray<Reading> readings, int i)
    {
        var (position, index, characteristic) = WorkedCase.At(at);
        return new Measurement(Number("m", i), WorkedCase.Part(position, index), 1, characteristic, readings, WorkedCase.Read, null);
    }

    private static string PartAt(string place) => WorkedCase.Place(place) is var (position, index) ? WorkedCase.Part(position, index) : place;

    private static string Number(string letter, int i) => letter + (i + 1).ToString(CultureInfo.InvariantCulture);

    private sealed class ReadForm : Form<(string At, ImmutableArray<Reading> Readings)>
    {
        private readonly Form<ImmutableArray<Reading>> _readings =
            new ScalarForm<ImmutableArray<Reading>>("readings-form", ReadingsText.Wanted, ["string", "number"], ReadingsText.Read);

        public override (string At, ImmutableArray<Reading> Readings) Read(Node node, Place place, FileReading reading) => (place.Id, _readings.Read(node, place, reading));

        public override JsonObject Schema(SchemaBook book) => _readings.Schema(book);
    }
}
