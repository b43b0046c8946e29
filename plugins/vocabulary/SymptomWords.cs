namespace FamilyWords;

/// <summary>Words for complaints and what lies behind them.</summary>
internal static class SymptomWords
{
    public static Symptom Complaint(string id, string name, params string[] gears) => new(id, Text.English($"symptom.{id}", name), [.. gears]);

    /// <summary>How likely it comes with none of the declared causes behind it.</summary>
    public static Symptom ByItself(this Symptom symptom, double low, double best, double high) => symptom with { Leak = new(low, best, high) };

    /// <summary>How likely an owner words it wider or narrower than it comes.</summary>
    public static Symptom WordedLoosely(this Symptom symptom, double low, double best, double high) => symptom with { Loosely = new(low, best, high) };

    public static Cause Because(string id, string name, double prior) => new(id, Text.English($"cause.{id}", name), prior, [], [], Judged) { PriorStrength = 20 };

    /// <summary>Not in the gearbox: ruled out before it comes out.</summary>
    public static Cause OutsideTheGearbox(this Cause cause) => cause with { Outside = true };

    /// <summary>The complaint it brings, with the range that can be defended.</summary>
    public static Cause Brings(this Cause cause, string symptom, double low, double best, double high, string? gear = null, SymptomContext? when = null) =>
        cause with { Explains = cause.Explains.Add(new SymptomLink(symptom, low, best, high, gear) { When = when }) };

    public static Cause Shown(this Cause cause, string position, string attribute, params string[] values) =>
        cause.Add(new AttributeSign(position, attribute, [.. values]) { Minutes = 2 });

    public static Cause Damaged(this Cause cause, string position, string place, params string[] damage) =>
        cause.Add(new DamageSign(position, [.. damage], place) { Minutes = 3 });

    /// <summary>A characteristic or clearance out of its limits; with a side, beyond that limit only.</summary>
    public static Cause OutOfLimits(this Cause cause, string subject, LimitSide? side = null) => cause.Add(new VerdictSign(subject) { Side = side, Minutes = 6 });

    /// <summary>How likely the sign named last is found when the cause is there, and when none of its causes is.</summary>
    public static Cause Found(this Cause cause, double low, double best, double high, double otherwise = 0.03) =>
        cause with { Signs = cause.Signs.SetItem(cause.Signs.Length - 1, cause.Signs[^1] with { Found = new(low, best, high), Otherwise = Rare(otherwise) }) };

    /// <summary>A test while the gearbox is whole.</summary>
    public static DiagnosticTest TryWhole(string id, string name, decimal minutes) => Try(id, name, TestStage.BeforeStripDown, minutes);

    /// <summary>A test on the bench, while it is apart or going together.</summary>
    public static DiagnosticTest TryApart(string id, string name, decimal minutes) => Try(id, name, TestStage.Teardown, minutes);

    /// <summary>A cause that the test shows.</summary>
    public static DiagnosticTest Tells(this DiagnosticTest test, string cause, double low, double best, double high) =>
        test with { Shows = test.Shows.Add(new TestLink(cause, new(low, best, high))) };

    /// <summary>How likely it shows with none of its causes there.</summary>
    public static DiagnosticTest FalseAlarm(this DiagnosticTest test, double low, double best, double high) => test with { Otherwise = new(low, best, high) };

    public static SymptomContext Hot { get; } = new(Temperature: SymptomTemperature.Hot);

    public static SymptomContext Cold { get; } = new(Temperature: SymptomTemperature.Cold);

    public static SymptomContext RoughRoad { get; } = new(Road: SymptomRoad.Rough);

    public static SymptomContext OnCoast { get; } = new(Load: SymptomLoad.Coast);

    private static DiagnosticTest Try(string id, string name, TestStage stage, decimal minutes) =>
        new(id, Text.English($"test.{id}", name), stage, minutes, [], new(0.02, 0.05, 0.10), Judged);

    // Any one sign of several need not show, and is seldom there for nothing: as likely as not unless said otherwise.
    private static Cause Add(this Cause cause, Sign sign) => cause with { Signs = cause.Signs.Add(sign with { Found = new(0.35, 0.55, 0.8), Otherwise = Rare(0.03) }) };

    private static Likelihood Rare(double best) => new(best / 3, best, Math.Min(3 * best, 1));
}
