using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>A photo or document of a unit.</summary>
/// <param name="Id">Its id.</param>
/// <param name="MediaType">What its content is.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Sha256">SHA-256 of the file as it was sent.</param>
/// <param name="Finding">The finding that it shows.</param>
/// <param name="Measurement">The measurement that it shows.</param>
/// <param name="Note">What it shows, in words.</param>
/// <param name="Person">Who sent it.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="There">Whether a file of this size lies behind the record; its content is checked when it is fetched.</param>
/// <param name="Href">Where to fetch it.</param>
public sealed record AttachmentWire(
    string Id,
    string MediaType,
    long Bytes,
    string Sha256,
    string? Finding,
    string? Measurement,
    string? Note,
    string Person,
    DateTimeOffset Time,
    bool There,
    string Href)
{
    /// <summary>From the store.</summary>
    public static AttachmentWire From(Attachment a, AttachmentFolder folder) => new(
        a.Id, a.MediaType, a.Bytes, a.Sha256, a.Finding, a.Measurement, a.Note, a.Person, a.Time, folder.Has(a.Sha256, a.Bytes), $"/v1/units/{a.Unit}/attachments/{a.Id}");
}
