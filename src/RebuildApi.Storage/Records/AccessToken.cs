namespace RebuildApi.Storage;

/// <summary>What one bench, program or person shows to be let in. Only the hash of its secret is kept; the name stands in the chain as the one who asked.</summary>
/// <param name="Name">Its name and id; never given twice, so that a name in the chain means one token.</param>
/// <param name="Scope">What it may do.</param>
/// <param name="SecretSha256">Hash of the secret, lower-case hex.</param>
/// <param name="Issued">When it was issued, UTC.</param>
/// <param name="IssuedBy">Name of the token that asked for it, or <c>console</c>.</param>
/// <param name="Expires">From when it no longer counts; null for never.</param>
/// <param name="Revoked">From when it was taken back; null while it stands.</param>
/// <param name="RevokedBy">Who took it back.</param>
/// <param name="Version">Row version.</param>
public sealed record AccessToken(
    string Name,
    string Scope,
    string SecretSha256,
    DateTimeOffset Issued,
    string IssuedBy,
    DateTimeOffset? Expires,
    DateTimeOffset? Revoked,
    string? RevokedBy,
    long Version) : IShopRecord<AccessToken>
{
    /// <inheritdoc/>
    public static ShopTable<AccessToken> Table { get; } = new("token", isEdited: true, StoreJson.Default.AccessToken, isOfUnit: false);

    /// <summary>Whether it counts at a time.</summary>
    public bool CountsAt(DateTimeOffset time) => Revoked is null && (Expires is null || time < Expires);

    string IShopRecord<AccessToken>.Id => Name;

    string? IShopRecord<AccessToken>.OfUnit => null;

    string? IShopRecord<AccessToken>.About => null;

    AccessToken IShopRecord<AccessToken>.At(long version) => this with { Version = version };
}
