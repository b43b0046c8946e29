using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Something that is wanted done before a gearbox leaves a stage.</summary>
internal sealed class GateForm : ObjectForm<FamilyGate>
{
    private readonly Field<Wording> _name;
    private readonly Field<GateStage> _stage;
    private readonly Field<string?> _read;
    private readonly Field<string?> _tried;
    private readonly Field<Wording?> _signed;
    private readonly Field<Wording> _reason;
    private readonly Field<Criticality> _matters;
    private readonly Field<bool> _except;

    public GateForm()
        : base("gate", "Something that the family wants done before a gearbox leaves a stage: one of read, tried and signed.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _stage = Need("before-leaving", new ChoiceForm<GateStage>(), "The stage that is not left without it.", "stage");
        _read = MayBe("read", Plain.Name, "A clearance that is read on the assembly.", "demand");
        _tried = MayBe("tried", Plain.Name, "A test of the family that is tried.", "demand");
        _signed = MayBe("signed", WordsForm.All, "How a check is tried that a person signs for, and what shows that it passed.", "demand");
        _reason = Need("reason", WordsForm.All, "Why.");
        _matters = May("matters", new ChoiceForm<Criticality>(), Criticality.Ordinary, "What hangs on it; what is safety-critical is never left out.", "criticality");
        _except = May("exception", Plain.YesNo, false, "Whether it may be left out over a signature, where the shop's policy allows that too.", "mayExcept");
    }

    protected override FamilyGate? Make(Got got, Node node, Place place, FileReading reading)
    {
        GateDemand?[] wanted =
        [
            got.Of(_read) is { } loop ? new LoopRead(loop) : null,
            got.Of(_tried) is { } test ? new TestTried(test) : null,
            got.Of(_signed) is { } how ? new CheckSigned(how.Keyed($"gate.{place.Id}.how")) : null,
        ];
        if (wanted.OfType<GateDemand>().ToArray() is [var demand])
        {
            return new FamilyGate(
                place.Id, got.Of(_name).Keyed("gate." + place.Id), got.Of(_stage), demand, got.Of(_reason).Keyed($"gate.{place.Id}.reason"), got.Of(_matters), got.Of(_except));
        }

        reading.Error(node, place, "demand-form", "A gate wants one thing done: say one of read, tried and signed.");
        return null;
    }
}
