using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

internal sealed class MaterialForm : ObjectForm<Material>
{
    private readonly Field<Wording> _name;
    private readonly Field<double> _expansion;
    private readonly Field<double> _within;
    private readonly Field<Source?> _source;

    public MaterialForm()
        : base("material", "What parts are made of, for expansion with temperature.")
    {
        var perKelvin = new ScalarForm<double>("quantity-form", "Millionths per kelvin, such as 11.5 ppm/K.", ["string"], PerKelvin);
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _expansion = Need("expansion", perKelvin, "Linear expansion: so many millionths of its length for each kelvin.", "expansionPerKelvin");
        _within = Need("within", perKelvin, "How far the true figure may lie from it, either way.", "expansionHalfWidth");
        _source = MayBe("source", new SourceNameForm(), "Name of the source, when it is not the usual one for materials.");
    }

    protected override Material? Make(Got got, Node node, Place place, FileReading reading) =>
        (got.Of(_source) ?? reading.Usual("materials", node, place)) is { } source
            ? new Material(place.Id, got.Of(_name).Keyed("material." + place.Id), got.Of(_expansion), got.Of(_within), source)
            : null;

    /// <summary>The digits are kept and the point is moved, so that 11.5 ppm/K is the very number 11.5e-6.</summary>
    private static double PerKelvin(string text)
    {
        const string Unit = "ppm/K";
        return text.EndsWith(Unit, StringComparison.Ordinal) && Values.QuantityText.Decimal(text[..^Unit.Length].Trim()) is var number
            ? Values.QuantityText.Number(number.ToString(CultureInfo.InvariantCulture) + "e-6")
            : throw new FormatException($"'{Plain.Short(text)}' has no unit {Unit}");
    }
}
