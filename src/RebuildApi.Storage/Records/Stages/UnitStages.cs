using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>Where a unit may be between intake and hand-over: a closed list in the order of the work.</summary>
public static class UnitStages
{
    /// <summary>It came in: whose it is and what is wrong with it is taken down.</summary>
    public const string Intake = "intake";

    /// <summary>It is read and tried while it is still whole: what is not taken now is lost.</summary>
    public const string PreStrip = "pre-strip";

    /// <summary>It is taken apart, marked, cleaned, looked at and read.</summary>
    public const string Teardown = "teardown";

    /// <summary>It is decided what becomes of each part, and the customer is asked.</summary>
    public const string Decision = "decision";

    /// <summary>It goes together.</summary>
    public const string Assembly = "assembly";

    /// <summary>It is whole again and is tried.</summary>
    public const string FinalTest = "final-test";

    /// <summary>It went out.</summary>
    public const string HandedOver = "handed-over";

    /// <summary>It went back to its owner unrepaired, or was given up.</summary>
    public const string Returned = "returned-unrepaired";

    // Earlier editions told looking and reading apart from taking apart.
    private const string Inspection = "inspection";

    /// <summary>The way of a unit that is rebuilt, in order.</summary>
    public static ImmutableArray<string> Way { get; } = [Intake, PreStrip, Teardown, Decision, Assembly, FinalTest, HandedOver];

    /// <summary>Every stage.</summary>
    public static ImmutableArray<string> All { get; } = [.. Way, Returned];

    /// <summary>Whether a unit at this stage is no longer in the shop.</summary>
    public static bool IsGone(string stage) => stage is HandedOver or Returned;

    /// <summary>Whether a unit at this stage is still whole, or whole again.</summary>
    public static bool IsWhole(string stage) => stage is Intake or PreStrip or FinalTest or HandedOver;

    /// <summary>The stage that follows on the way; null at its end and off it.</summary>
    public static string? After(string stage)
    {
        var at = Way.IndexOf(stage);
        return at < 0 || at == Way.Length - 1 ? null : Way[at + 1];
    }

    /// <summary>Whether one stage comes before another on the way; one that is off it comes before none.</summary>
    public static bool IsBefore(string stage, string other) => Way.IndexOf(stage) is >= 0 and var at && at < Way.IndexOf(other);

    /// <summary>The word of today for what an earlier edition wrote.</summary>
    internal static string Today(string written) => written == Inspection ? Teardown : written;
}
