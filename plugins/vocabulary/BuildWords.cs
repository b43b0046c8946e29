namespace FamilyWords;

/// <summary>Words for what is tightened and filled in, and for what a family wants done before a gearbox goes on.</summary>
internal static class BuildWords
{
    public static Fastener Tightened(string id, string name, int quantity, Limits torque, params string[] positions) =>
        new(id, Text.English($"fastener.{id}", name), [.. positions], quantity, torque, Criticality.Functional);

    /// <summary>Turned on by an angle once the torque is reached.</summary>
    public static Fastener ThenTurned(this Fastener fastener, Limits angle) => fastener with { Angle = angle };

    public static Fastener OnTheThread(this Fastener fastener, string words) => fastener with { Thread = Text.English($"fastener.{fastener.Id}.thread", words) };

    public static Fastener Renewed(this Fastener fastener, string words) => fastener with { Renewal = Text.English($"fastener.{fastener.Id}.renewal", words) };

    public static Fastener InOrder(this Fastener fastener, string words) => fastener with { Sequence = Text.English($"fastener.{fastener.Id}.sequence", words) };

    public static Fastener SafetyCritical(this Fastener fastener) => fastener with { Criticality = Criticality.SafetyCritical };

    public static Lubricant Filled(string id, string name, string grade, Limits quantity, string level, params string[] positions) =>
        new(id, Text.English($"lubricant.{id}", name), Text.English($"lubricant.{id}.grade", grade), [.. positions], quantity, Text.English($"lubricant.{id}.level", level));

    /// <summary>The level is read between these temperatures, in degrees Celsius.</summary>
    public static Lubricant ReadAt(this Lubricant lubricant, Limits temperature) => lubricant with { Temperature = temperature };

    public static Lubricant ForLinings(this Lubricant lubricant, string words) => lubricant with { Linings = Text.English($"lubricant.{lubricant.Id}.linings", words) };

    public static FamilyGate WantsRead(string loop, GateStage stage, string name, string reason) =>
        Gate(loop + "-read", stage, name, new LoopRead(loop), reason);

    public static FamilyGate WantsTried(string test, GateStage stage, string name, string reason) =>
        Gate(test + "-tried", stage, name, new TestTried(test), reason);

    public static FamilyGate WantsSigned(string id, GateStage stage, string name, string how, string reason) =>
        Gate(id, stage, name, new CheckSigned(Text.English($"gate.{id}.how", how)), reason);

    /// <summary>It may be left out over a signature, where the shop's policy allows that too.</summary>
    public static FamilyGate UnlessExcepted(this FamilyGate gate) => gate with { MayExcept = true };

    public static FamilyGate SafetyCritical(this FamilyGate gate) => gate with { Criticality = Criticality.SafetyCritical };

    private static FamilyGate Gate(string id, GateStage stage, string name, GateDemand demand, string reason) =>
        new(id, Text.English($"gate.{id}", name), stage, demand, Text.English($"gate.{id}.reason", reason), Criticality.Functional, false);
}
