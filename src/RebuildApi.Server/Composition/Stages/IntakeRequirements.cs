using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>What must be taken down while the gearbox is whole: afterwards it can't be had any more.</summary>
public static class IntakeRequirements
{
    /// <summary>What the owner says is wrong.</summary>
    public static readonly Requirement Complaint = new("complaint", "The complaint is taken down", Leave.NotAvailable, f =>
        f.File.Unit.Complaint.IsEmpty && f.File.Unit.Words is null
            ? [new(null, "Neither a symptom nor the owner's own words are taken down.", "PATCH the unit with complaint or words, or say why there is none.")]
            : []);

    /// <summary>What was read or tried on the whole gearbox. Where the family does not say what, any one reading, trial or test will do.</summary>
    public static readonly Requirement PreStripReadings = new("pre-strip-readings", "Readings are taken before it is stripped", Leave.NotAvailable, f =>
        HasReading(f)
            ? []
            : [new(null, "Nothing was read or tried on the whole gearbox.",
                "Turn it, shift it, read end play and backlash: POST to /tests, /trials or /measurements of the unit; or say why it can't be had, such as that it came in a box.")]);

    private static bool HasReading(GateFacts facts) => !facts.Tests.IsEmpty || !facts.File.Trials.IsEmpty || !facts.File.Measurements.IsEmpty;
}
