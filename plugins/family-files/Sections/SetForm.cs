using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Parts that stay together.</summary>
internal sealed class SetForm : ObjectForm<MatchedSet>
{
    private readonly Field<ImmutableArray<string>> _positions;
    private readonly Field<SetBond> _bond;

    public SetForm()
        : base("set", "Parts that stay together.")
    {
        _positions = Need("positions", Plain.Names, "The positions in the set.");
        _bond = Need("bond", new ChoiceForm<SetBond>(), "How strictly they stay together.");
    }

    protected override MatchedSet Make(Got got, Node node, Place place, FileReading reading) => new(place.Id, got.Of(_positions), got.Of(_bond));
}

/// <summary>Two rows of teeth that run together.</summary>
internal sealed class MeshForm : ObjectForm<GearMesh>
{
    private readonly Field<string> _driver;
    private readonly Field<string> _driven;
    private readonly Field<Address> _centres;
    private readonly Field<ImmutableArray<string>> _gears;

    public MeshForm()
        : base("mesh", "Two rows of teeth that run together.")
    {
        var address = new ScalarForm<Address>("address-form", "An address such as case/centre-distance.", ["string"], t => Address.TryParse(t) ?? throw new FormatException($"'{Plain.Short(t)}' is not position/characteristic"));
        _driver = Need("driver", Plain.Name, "The driving row on the drive side: position, or position/row.");
        _driven = Need("driven", Plain.Name, "The driven row.");
        _centres = Need("centres", address, "The characteristic of the case that sets the distance of the axes.", "centreDistance");
        _gears = Need("gears", Plain.Names, "The gears in which the mesh carries the load.");
    }

    protected override GearMesh Make(Got got, Node node, Place place, FileReading reading) => new(place.Id, got.Of(_driver), got.Of(_driven), got.Of(_centres), got.Of(_gears));
}
