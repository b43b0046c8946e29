using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A place in the build. Places are numbered as they are listed: in the order in which they come apart.</summary>
internal sealed class PositionForm : ObjectForm<Position>
{
    private readonly Field<Wording> _name;
    private readonly Field<string?> _kind;
    private readonly Field<string> _group;
    private readonly Field<int> _quantity;
    private readonly Field<int?> _fewest;
    private readonly Field<int?> _order;
    private readonly Field<ImmutableArray<LimitOverride>> _limits;

    public PositionForm()
        : base("position", "A place in the build that a part fills. Listed in the order in which the gearbox comes apart.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _kind = MayBe("kind", Plain.Name, "The kind of part that belongs there; the one of the same name when not said.");
        _group = Need("group", Plain.Name, "The assembly it belongs to, for reading and printing.");
        _quantity = May("quantity", Plain.Whole, 1, "How many like parts fill it; 1 when not said.");
        _fewest = May("fewest", Plain.WholeIfAny, null, "How few will do, for a pack of shims; all of them when not said.");
        _order = May("order", Plain.WholeIfAny, null, "Its number in taking the gearbox apart, when it is not the one of its line.", "stripOrder");
        _limits = Some("limits", new MapForm<LimitOverride>(new OverrideForm(), "names of characteristics of the kind"), "Limits that differ here from the kind's own.", "overrides");
    }

    protected override Position Make(Got got, Node node, Place place, FileReading reading)
    {
        var kind = got.Of(_kind) ?? place.Id;
        reading.KindAt[place.Id] = kind;
        return new Position(place.Id, got.Of(_name).Keyed("position." + place.Id), kind, got.Of(_group), got.Of(_quantity), got.Of(_order) ?? 0, got.Of(_limits), got.Of(_fewest));
    }

    private sealed class OverrideForm : ObjectForm<LimitOverride>
    {
        private readonly Field<Limits?> _new;
        private readonly Field<Limits?> _service;

        public OverrideForm()
            : base("limits-here", "Limits of one characteristic that differ at this position.")
        {
            _new = MayBe("new", LimitsForm.All, "Limits when new, here.");
            _service = MayBe("service", LimitsForm.All, "Limits to go back into service, here.");
        }

        protected override LimitOverride Make(Got got, Node node, Place place, FileReading reading) => new(place.Id, got.Of(_new), got.Of(_service));
    }
}
