using System.Collections.Concurrent;
using RebuildApi.PluginHost;
using RebuildApi.Storage;

namespace RebuildApi.Server.Results;

/// <summary>
/// The latest answers by address. One is given again only while not a single entry was added to the chain of records and the loaded rules are the very
/// same, so it can never be older than what a bench just sent.
/// </summary>
public sealed class AnswerShelf(IStore store, IPluginCatalog catalog)
{
    // Benches and pages ask for a few dozen addresses at a time; larger answers are worth their time.
    private const int Most = 64;
    private const int Largest = 1 << 20;
    private readonly ConcurrentDictionary<string, KeptAnswer> _kept = new(StringComparer.Ordinal);

    /// <summary>What records and rules are now.</summary>
    public async ValueTask<Moment> Now(CancellationToken cancellation) => new(await store.Head(cancellation), catalog.Families);

    /// <summary>The answer of an address, if nothing has changed since.</summary>
    public KeptAnswer? Find(string address, Moment now) => _kept.TryGetValue(address, out var kept) && kept.From.IsStill(now) ? kept : null;

    /// <summary>Keeps an answer that was worked out from a moment.</summary>
    public void Keep(string address, KeptAnswer answer)
    {
        if (answer.Body.Length > Largest)
            return;
        if (_kept.Count >= Most)
            _kept.Clear();
        _kept[address] = answer;
    }
}
