using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Access;

/// <summary>
/// The tokens of the shop at hand. They are read anew after two seconds at most, so that one revoked by the command of the executable, in another process,
/// ends then.
/// </summary>
public sealed class TokenBook(Func<IStore> store, TimeProvider time)
{
    private static readonly TimeSpan Fresh = TimeSpan.FromSeconds(2);
    private volatile Leaf? _leaf;

    /// <summary>The token whose secret was sent, whether it still counts or not; null when there is none.</summary>
    public async ValueTask<AccessToken?> Find(string secret, CancellationToken cancellation)
    {
        var leaf = await Current(cancellation);
        var at = Secret.Find(leaf.Hashes, secret);
        return at < 0 ? null : leaf.Tokens[at];
    }

    /// <summary>Reads anew at the next question; called when a token was issued or revoked here.</summary>
    public void Forget() => _leaf = null;

    private async ValueTask<Leaf> Current(CancellationToken cancellation)
    {
        var now = time.GetUtcNow();
        if (_leaf is { } leaf && now - leaf.Read < Fresh)
            return leaf;
        var tokens = await store().All<AccessToken>(ShopFilter.Every, cancellation);
        return _leaf = new Leaf(now, tokens, [.. tokens.Select(t => Convert.FromHexString(t.SecretSha256))]);
    }

    private sealed record Leaf(DateTimeOffset Read, ImmutableArray<AccessToken> Tokens, byte[][] Hashes);
}
