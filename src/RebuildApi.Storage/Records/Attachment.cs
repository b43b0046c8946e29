namespace RebuildApi.Storage;

/// <summary>A photo or document of a unit. The file lies beside the database under the name of its hash; the record says what it is. Never edited.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Sha256">SHA-256 of the file as it was sent, in lower-case hexadecimal.</param>
/// <param name="MediaType">What its content is.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Finding">The finding that it shows, if one.</param>
/// <param name="Measurement">The measurement that it shows, if one.</param>
/// <param name="Note">What it shows, in words, if said.</param>
/// <param name="Person">Who sent it.</param>
/// <param name="Time">When, UTC.</param>
public sealed record Attachment(
    string Id,
    string Unit,
    string Sha256,
    string MediaType,
    long Bytes,
    string? Finding,
    string? Measurement,
    string? Note,
    string Person,
    DateTimeOffset Time) : IShopRecord<Attachment>
{
    /// <inheritdoc/>
    public static ShopTable<Attachment> Table { get; } = new("attachment", isEdited: false, StoreJson.Default.Attachment);

    string IShopRecord<Attachment>.OfUnit => Unit;

    string IShopRecord<Attachment>.About => Finding ?? Measurement ?? Unit;

    long IShopRecord<Attachment>.Version => 1;

    Attachment IShopRecord<Attachment>.At(long version) => this;
}
