using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>That texts which name a customer were erased from what is kept of a unit. It says which entries, never what stood there.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Person">Who of the shop signs for it.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Entries">The entries whose texts went.</param>
/// <param name="Files">SHA-256 of the photos and documents whose files went.</param>
public sealed record Erasure(
    string Id, string Unit, string Person, DateTimeOffset Time, ImmutableArray<ErasedEntry> Entries, ImmutableArray<string> Files) : IShopRecord<Erasure>
{
    /// <summary>What is shown in the place of a text that was erased.</summary>
    public const string Text = "(erased)";

    /// <inheritdoc/>
    public static ShopTable<Erasure> Table { get; } = new("erasure", isEdited: false, StoreJson.Default.Erasure);

    string IShopRecord<Erasure>.OfUnit => Unit;

    string? IShopRecord<Erasure>.About => null;

    long IShopRecord<Erasure>.Version => 1;

    Erasure IShopRecord<Erasure>.At(long version) => this;
}

/// <summary>An entry of the chain whose texts were erased.</summary>
/// <param name="Sequence">Its number.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Fields">The fields that went.</param>
/// <param name="BodySha256">SHA-256 of the body that stands since, where the text stood in the body itself; none where it stood apart, since the body then stays.</param>
public sealed record ErasedEntry(long Sequence, string Kind, ImmutableArray<string> Fields, string? BodySha256);

/// <summary>What is to be erased from a unit.</summary>
/// <param name="Id">Id that the erasure gets.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Customer">The name, letter for letter.</param>
/// <param name="Person">Who of the shop signs for it.</param>
/// <param name="Files">Whether photos and documents go too.</param>
public sealed record ErasureOrder(string Id, string Unit, string Customer, string Person, bool Files);

/// <summary>What erasing did to a unit.</summary>
/// <param name="Done">The erasure; none when nothing was left to erase.</param>
/// <param name="Mentions">Entries in whose technical texts the name still stands.</param>
public sealed record ErasureDone(Erasure? Done, ImmutableArray<StoreEvent> Mentions);
