using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Composition;
using RebuildApi.Storage;

namespace RebuildApi.Server.Checks;

/// <summary>Makes ready what rows are judged by: the families as they are loaded, the shop's policy and its instruments as they stand now.</summary>
public sealed class CheckDesk(FamilyBook families, IStore store)
{
    private const int PageSize = 500;

    /// <summary>The tables.</summary>
    public async Task<CheckBook> Open(CancellationToken cancellation)
    {
        var policy = (await store.Policy(cancellation)).Policy;
        return new CheckBook(families.All, await Instruments(cancellation), policy.Of);
    }

    private async Task<ImmutableArray<InstrumentState>> Instruments(CancellationToken cancellation)
    {
        var all = ImmutableArray.CreateBuilder<InstrumentState>();
        string? after = null;
        do
        {
            var page = await store.Instruments(after, PageSize, cancellation);
            all.AddRange(page.Items.Select(i => i.State));
            after = page.Next;
        }
        while (after is not null);
        return all.ToImmutable();
    }
}
