namespace RebuildApi.Storage;

/// <summary>What walking the chain found.</summary>
/// <param name="Entries">How many entries were walked.</param>
/// <param name="Head">Hash of the last; empty when there is none.</param>
/// <param name="FirstBroken">Sequence number of the first entry that does not follow from the one before, or that a table contradicts; or none.</param>
/// <param name="Why">What is wrong with it, in words, or none.</param>
public sealed record ChainReport(long Entries, string Head, long? FirstBroken, string? Why)
{
    /// <summary>Whether every entry follows from the one before and says what is stored.</summary>
    public bool Intact => FirstBroken is null;
}
