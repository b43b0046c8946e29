using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>When a symptom comes, beside the gear it comes in.</summary>
internal sealed class ContextForm : ObjectForm<SymptomContext>
{
    private readonly Field<SymptomLoad?> _load;
    private readonly Field<SymptomClutch?> _clutch;
    private readonly Field<SymptomTemperature?> _temperature;
    private readonly Field<SymptomRoad?> _road;

    public ContextForm()
        : base("when", "When a symptom comes. What is not said is left open.")
    {
        _load = May("load", new ChoiceIfAnyForm<SymptomLoad>(), null, "On the drive or on the coast.");
        _clutch = May("clutch", new ChoiceIfAnyForm<SymptomClutch>(), null, "With the clutch pressed or released.");
        _temperature = May("temperature", new ChoiceIfAnyForm<SymptomTemperature>(), null, "Cold or hot.");
        _road = May("road", new ChoiceIfAnyForm<SymptomRoad>(), null, "On smooth or on rough road.");
    }

    protected override SymptomContext Make(Got got, Node node, Place place, FileReading reading) =>
        new(got.Of(_load), got.Of(_clutch), got.Of(_temperature), got.Of(_road));
}
