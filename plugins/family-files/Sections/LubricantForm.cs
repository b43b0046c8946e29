using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>What is filled in or put on.</summary>
internal sealed class LubricantForm : ObjectForm<Lubricant>
{
    private readonly Field<Wording> _name;
    private readonly Field<Wording> _grade;
    private readonly Field<ImmutableArray<string>> _positions;
    private readonly Field<Limits> _quantity;
    private readonly Field<Wording> _level;
    private readonly Field<Limits?> _temperature;
    private readonly Field<Wording?> _linings;

    public LubricantForm()
        : base("lubricant", "What is filled in or put on, how much, and how the level is read.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _grade = Need("grade", WordsForm.All, "What sort, by an open classification and in plain words; never a product.");
        _positions = Need("positions", Plain.Names, "The positions that it stands for.");
        _quantity = Need("quantity", LimitsForm.All, "How much, such as 1.7 to 1.9 L.");
        _level = Need("level", WordsForm.All, "How one sees that it is enough.");
        _temperature = MayBe("at", LimitsForm.All, "At which temperature the level is read, such as 15 to 30 degC.", "temperature");
        _linings = MayBe("linings", WordsForm.All, "What it must not do to the linings of the synchronizer rings.");
    }

    protected override Lubricant Make(Got got, Node node, Place place, FileReading reading) => new(
        place.Id, got.Of(_name).Keyed("lubricant." + place.Id), got.Of(_grade).Keyed($"lubricant.{place.Id}.grade"), got.Of(_positions), got.Of(_quantity),
        got.Of(_level).Keyed($"lubricant.{place.Id}.level"))
    {
        Temperature = got.Of(_temperature),
        Linings = got.Of(_linings)?.Keyed($"lubricant.{place.Id}.linings"),
    };
}
