using System.Collections.Immutable;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage.Backups;

/// <summary>What is known of a database that is about to be replaced by a copy.</summary>
/// <param name="Head">Where its chain ends; <c>nothing</c> when there is none, or why it can't be read.</param>
/// <param name="GoesOn">Whether it can be read, its chain is whole, and it goes on from the copy: then it knows what was done since.</param>
/// <param name="Revoked">Names of the tokens that are revoked in it.</param>
/// <param name="Sharings">What it opens to other shops.</param>
/// <param name="Erasures">What was erased in it.</param>
internal sealed record Replaced(string Head, bool GoesOn, ImmutableHashSet<string> Revoked, ImmutableArray<Sharing> Sharings, ImmutableArray<Erasure> Erasures)
{
    /// <summary>Reads it; nothing is known of one that can't be read, since that may be why one restores.</summary>
    public static async Task<Replaced> Read(StoreOptions options, string headOfCopy)
    {
        if (!File.Exists(options.Path))
            return Unknown("nothing");
        try
        {
            await using var store = SqliteStore.Open(options with { ReadOnly = true });
            var chain = await store.VerifyChain(new ChainQuestion(headOfCopy), default);
            var revoked = (await store.All<AccessToken>(ShopFilter.Every, default)).Where(t => t.Revoked is not null).Select(t => t.Name);
            return new(
                chain.Head, chain is { Intact: true, Noted: not null }, [.. revoked],
                await store.All<Sharing>(ShopFilter.Every, default), await store.All<Erasure>(ShopFilter.Every, default));
        }
        catch (StorageUnavailableException e)
        {
            return Unknown(e.Code);
        }
    }

    /// <summary>Whether a token of the copy is to be taken back: one that was revoked since, or any when that is not known.</summary>
    public bool TakesBack(AccessToken token) => token.Revoked is null && (!GoesOn || Revoked.Contains(token.Name));

    /// <summary>What of a sharing of the copy goes on: what was not taken back since, or nothing when that is not known.</summary>
    public ImmutableArray<Opening> Leaves(Sharing sharing) =>
        GoesOn && Sharings.FirstOrDefault(s => s.Shop == sharing.Shop) is { } stands ? [.. sharing.Opens.Intersect(stands.Opens)] : [];

    private static Replaced Unknown(string head) => new(head, GoesOn: false, [], [], []);
}
