using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Snapshots;

/// <summary>Reasons in words, with everything called by the names that the family gives it. The sentences are English, and so are the names in them.</summary>
public static class FamilySpeech
{
    private const string Language = "en";

    /// <summary>A reason as a sentence: <c>Third gear, bore, in 3 planes: …</c>, not <c>third-gear/bore: …</c>.</summary>
    public static string Say(this FamilyIndex family, Reason reason) => ReasonText.Words(reason, new Names(family));

    private sealed class Names(FamilyIndex family) : ISpokenNames
    {
        private readonly Spoken _spoken = new(family, Language);

        public string? OfPosition(string id) => family.Positions.GetValueOrDefault(id)?.Name.In(Language);

        public string? OfTerm(string? position, string id) => family.TermAt(position, id);

        public string? OfSubject(string subject) => Other(_spoken.InSentence(subject), subject);

        public string? OfOperation(string id) => Other(_spoken.Operation(id), id);

        private static string? Other(string name, string id) => name == id ? null : name;
    }
}
