using FamilyFiles.Forms;
using FamilyFiles.Values;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A closed loop of dimensions.</summary>
internal sealed class ClearanceForm : ObjectForm<ClearanceLoop>
{
    private readonly Field<Wording> _name;
    private readonly Field<string> _group;
    private readonly Field<ImmutableArray<Term>> _gap;
    private readonly Field<Limits> _window;
    private readonly Field<TrialMethod> _read;
    private readonly Field<Criticality> _matters;
    private readonly Field<Thermal?> _between;
    private readonly Field<Wording?> _below;
    private readonly Field<Wording?> _above;

    public ClearanceForm()
        : base("clearance", "A closed loop of dimensions. A negative gap is a tight fit or a preload.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _group = Need("group", Plain.Name, "The assembly it belongs to, for reading and printing.");
        _gap = Need("gap", new ScalarForm<ImmutableArray<Term>>("gap-form", GapText.Wanted, ["string"], GapText.Read), "The sum that makes the gap: what opens it less what closes it.", "terms");
        _window = Need("window", LimitsForm.All, "Where the gap must lie, ends included.");
        _read = May("trial", new ChoiceForm<TrialMethod>(), TrialMethod.None, "How it is read directly on the assembly: gap-with-pieces, under-load, or none.");
        _matters = May("matters", new ChoiceForm<Criticality>(), Criticality.Ordinary, "What hangs on it; safety-critical asks for a signature.", "criticality");
        _between = MayBe("between", new BetweenForm(), "The temperatures at which it matters too.", "thermal");
        _below = MayBe("below", WordsForm.All, "What happens when the gap is below its window.", "whenBelow");
        _above = MayBe("above", WordsForm.All, "What happens when the gap is above its window.", "whenAbove");
    }

    protected override ClearanceLoop Make(Got got, Node node, Place place, FileReading reading) => new(
        place.Id, got.Of(_name).Keyed("clearance." + place.Id), got.Of(_group), got.Of(_gap), got.Of(_window), got.Of(_between), got.Of(_read), got.Of(_matters),
        got.Of(_below)?.Keyed($"clearance.{place.Id}.below"), got.Of(_above)?.Keyed($"clearance.{place.Id}.above"));

    private sealed class BetweenForm : ObjectForm<Thermal>
    {
        private readonly Field<double> _cold;
        private readonly Field<double> _hot;
        private readonly Field<Limits?> _coldWindow;
        private readonly Field<Limits?> _hotWindow;

        public BetweenForm()
            : base("between", "Temperatures, of all parts alike, at which a clearance matters.")
        {
            _cold = Need("cold", Plain.Kelvin, "The coldest, such as -20 degC.");
            _hot = Need("hot", Plain.Kelvin, "The hottest, such as 90 degC.");
            _coldWindow = MayBe("cold-window", LimitsForm.All, "Window when cold; only the value is told without one.", "coldWindow");
            _hotWindow = MayBe("hot-window", LimitsForm.All, "Window when hot; only the value is told without one.", "hotWindow");
        }

        protected override Thermal Make(Got got, Node node, Place place, FileReading reading) => new(got.Of(_cold), got.Of(_hot), got.Of(_coldWindow), got.Of(_hotWindow));
    }
}
