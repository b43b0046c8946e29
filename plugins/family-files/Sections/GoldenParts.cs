using FamilyFiles.Forms;
using FamilyFiles.Values;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Damage that was seen in a worked case.</summary>
internal sealed class DamageSeenForm : ObjectForm<(string At, DamageSeen Damage)>
{
    private readonly Field<string> _at;
    private readonly Field<string> _class;
    private readonly Field<string> _extent;
    private readonly Field<string?> _where;

    public DamageSeenForm()
        : base("damage-seen", "Damage that was seen.")
    {
        _at = Need("at", Plain.Name, "The position.");
        _class = Need("class", Plain.Name, "The standard's class.");
        _extent = Need("extent", Plain.Name, "slight, moderate or severe.");
        _where = MayBe("where", Plain.Name, "The feature or side.");
    }

    protected override (string At, DamageSeen Damage) Make(Got got, Node node, Place place, FileReading reading) =>
        (got.Of(_at), new DamageSeen(got.Of(_class), got.Of(_extent), got.Of(_where)));
}

/// <summary>A trial assembly of a worked case.</summary>
internal sealed class TriedForm : ObjectForm<TrialAssembly>
{
    private readonly Field<string> _clearance;
    private readonly Field<ImmutableArray<string>> _fitted;
    private readonly Field<ImmutableArray<FittedPiece>> _pieces;
    private readonly Field<ImmutableArray<Reading>> _gap;

    public TriedForm()
        : base("tried", "A trial assembly: a gap read with exactly these parts and pieces fitted.")
    {
        _clearance = Need("clearance", Plain.Name, "The clearance.");
        _fitted = Some("fitted", Plain.Names, "The positions whose parts were fitted.");
        _pieces = Some("pieces", new ListForm<FittedPiece>(new PieceForm()), "The pieces that were fitted.");
        _gap = Need("gap", new ScalarForm<ImmutableArray<Reading>>("readings-form", ReadingsText.Wanted, ["string", "number"], ReadingsText.Read), "The gap that was read, or tight.");
    }

    protected override TrialAssembly Make(Got got, Node node, Place place, FileReading reading) => new(
        "", got.Of(_clearance), [.. got.Of(_fitted).Select(Fitted)], got.Of(_pieces), null, got.Of(_gap), WorkedCase.Read, null);

    private static FittedPart Fitted(string text) => WorkedCase.Place(text) is var (position, index) ? new FittedPart(position, WorkedCase.Part(position, index), 1) : new FittedPart(text, text, 1);

    private sealed class PieceForm : ObjectForm<FittedPiece>
    {
        private readonly Field<string> _series;
        private readonly Field<string?> _position;
        private readonly Field<string> _member;
        private readonly Field<Length> _thickness;

        public PieceForm()
            : base("piece-fitted", "A piece that was fitted.")
        {
            _series = Need("series", Plain.Name, "Its series.");
            _position = MayBe("position", Plain.Name, "Where it sat; the position of its series' name when not said.");
            _member = Need("member", Plain.Name, "Which member it is sold as.");
            _thickness = Need("thickness", Plain.Length, "Its thickness.");
        }

        protected override FittedPiece Make(Got got, Node node, Place place, FileReading reading) =>
            new(got.Of(_position) ?? got.Of(_series), got.Of(_series), got.Of(_member), got.Of(_thickness));
    }
}
