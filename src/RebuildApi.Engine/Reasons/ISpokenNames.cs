namespace RebuildApi.Engine.Reasons;

/// <summary>What a person calls the things that reasons speak of by their ids; null where nothing has that id.</summary>
public interface ISpokenNames
{
    /// <summary>A position: <c>Third gear</c>.</summary>
    string? OfPosition(string id);

    /// <summary>An attribute or a characteristic, on the part of a position where the reason tells one.</summary>
    string? OfTerm(string? position, string id);

    /// <summary>What an answer is about: a position, an address, a clearance or a pairing.</summary>
    string? OfSubject(string subject);

    /// <summary>A piece of work.</summary>
    string? OfOperation(string id);
}
