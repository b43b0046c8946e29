using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>One row of running gear teeth.</summary>
internal sealed class TeethForm : ObjectForm<ToothSet>
{
    private readonly Field<string> _row;
    private readonly Field<int> _count;
    private readonly Field<Hand> _hand;
    private readonly Field<Length> _module;
    private readonly Field<double> _helix;
    private readonly Field<double> _pressure;
    private readonly Field<double> _shift;
    private readonly Field<Source?> _source;

    public TeethForm()
        : base("teeth", "One row of running gear teeth, in the normal section.")
    {
        _row = May("row", Plain.Name, "", "Its name, where the part has several rows.", "id");
        _count = Need("count", Plain.Whole, "Number of teeth.", "teeth");
        _module = Need("module", Plain.Length, "Normal module; 0.1 in is a diametral pitch of 10.", "normalModule");
        _hand = Need("hand", new ChoiceForm<Hand>(), "Hand of the helix, or spur.");
        _helix = May("helix", Plain.Angle, 0.0, "Helix angle at the reference cylinder; none for spur teeth.", "helixAngle");
        _pressure = Need("pressure", Plain.Angle, "Pressure angle in the normal section.", "normalPressureAngle");
        _shift = May("shift", Plain.Number, 0.0, "Profile shift coefficient.", "profileShift");
        _source = MayBe("source", new SourceNameForm(), "Name of the source, when it is not the usual one for numbers.");
    }

    protected override ToothSet? Make(Got got, Node node, Place place, FileReading reading) => (got.Of(_source) ?? reading.Usual("numbers", node, place)) is { } source
        ? new ToothSet(got.Of(_row), got.Of(_count), got.Of(_module), got.Of(_helix), got.Of(_hand), got.Of(_pressure), got.Of(_shift), source)
        : null;
}
