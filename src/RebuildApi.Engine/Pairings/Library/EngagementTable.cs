using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>State of a gear's engagement teeth.</summary>
internal enum Teeth
{
    /// <summary>Straight and sound.</summary>
    Straight,

    /// <summary>Back-tapered and sound.</summary>
    BackTapered,

    /// <summary>Leaned over, with metal left.</summary>
    Leaned,

    /// <summary>Rounded, short or spent.</summary>
    Spent,
}

/// <summary>Everything the table looks at.</summary>
/// <param name="Teeth">The gear's engagement teeth.</param>
/// <param name="BackTaperedSleeve">Whether the sleeve is back-tapered, else straight.</param>
/// <param name="Stopped">Whether something stops or limits the sleeve's travel.</param>
/// <param name="AnglesAgree">Whether two back tapers agree within the tolerance.</param>
internal sealed record Engagement(Teeth Teeth, bool BackTaperedSleeve, bool Stopped, bool AnglesAgree);

/// <summary>
/// Which engagement teeth may run with which sleeve (common practice, no source). Rows are the gear's teeth; columns are a straight sleeve, a
/// back-tapered sleeve with a stop or limited travel, and a back-tapered sleeve without.
/// </summary>
internal static class EngagementTable
{
    /// <summary>The cell: its outcome and the code of its reason.</summary>
    public static (Compatibility Outcome, string Code) Cell(Engagement e, bool leanedWithoutStopAllowed) => e switch
    {
        { Teeth: Teeth.Spent } => (Compatibility.Incompatible, "engagement-teeth-spent"),
        { Teeth: Teeth.Straight, BackTaperedSleeve: false } => (Compatibility.Compatible, "engagement-straight-on-straight"),
        { Teeth: Teeth.Straight, Stopped: true } => (Compatibility.Conditional, "engagement-back-taper-on-straight-stopped"),
        { Teeth: Teeth.Straight } => (Compatibility.Incompatible, "engagement-back-taper-on-straight-unstopped"),
        { Teeth: Teeth.BackTapered, BackTaperedSleeve: false } => (Compatibility.Incompatible, "engagement-straight-on-back-taper"),
        { Teeth: Teeth.BackTapered, AnglesAgree: false } => (Compatibility.Incompatible, "engagement-tapers-differ"),
        { Teeth: Teeth.BackTapered, Stopped: true } => (Compatibility.Compatible, "engagement-back-taper-stopped"),
        { Teeth: Teeth.BackTapered } => (Compatibility.Compatible, "engagement-back-taper-seated"),
        { Teeth: Teeth.Leaned, BackTaperedSleeve: false } => (Compatibility.Incompatible, "engagement-leaned-pushed-out"),
        { Teeth: Teeth.Leaned, Stopped: true } => (Compatibility.Conditional, "engagement-leaned-rescue"),
        _ when leanedWithoutStopAllowed => (Compatibility.Conditional, "engagement-leaned-rescue-unstopped"),
        _ => (Compatibility.Incompatible, "engagement-leaned-unstopped"),
    };
}
