using System.Collections.Immutable;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>The checks of the whole gearbox that a person signs for.</summary>
public static class SignedChecks
{
    /// <summary>Only one rail moves at a time.</summary>
    public const string Interlock = "interlock";

    /// <summary>It turns and shifts as it should.</summary>
    public const string FunctionTest = "function-test";

    /// <summary>Both.</summary>
    public static ImmutableArray<string> All { get; } = [Interlock, FunctionTest];
}
