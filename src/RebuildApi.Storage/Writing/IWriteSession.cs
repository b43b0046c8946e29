using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>
/// What one change may do, inside one transaction. Every call also links an entry into the hash chain and raises the unit's row version.
/// Throwing undoes everything of this change and nothing of anybody else's. Naming a unit or component that is not there is an
/// <see cref="UnknownIdException"/>, taking an id twice a <see cref="DuplicateIdException"/>, and a correction of what is not there or was
/// corrected already a <see cref="SupersedesException"/>.
/// </summary>
public interface IWriteSession
{
    /// <summary>The unit as it stands inside this transaction, or null.</summary>
    Unit? Unit(string id);

    /// <summary>Everything of a unit as it stands inside this transaction, or null.</summary>
    UnitFile? File(string id);

    /// <summary>A component anywhere in the shop, or null.</summary>
    Component? Component(string id);

    /// <summary>An instrument, or null.</summary>
    Instrument? Instrument(string id);

    /// <summary>The calibrations of an instrument, in the order in which they were recorded.</summary>
    ImmutableArray<Calibration> Calibrations(string instrument);

    /// <summary>The gauge studies of an instrument, in the order in which they were recorded.</summary>
    ImmutableArray<GaugeStudyKept> Studies(string instrument);

    /// <summary>The edition of the shop's policy that is in force.</summary>
    PolicyEdition Policy();

    /// <summary>Takes a unit in. Its version becomes 1.</summary>
    /// <exception cref="DuplicateIdException">The id is taken.</exception>
    Unit Open(Unit unit);

    /// <summary>Changes what may be changed of a unit.</summary>
    /// <exception cref="VersionConflictException">It is no longer at <paramref name="expected"/>.</exception>
    Unit Change(Unit unit, long? expected);

    /// <summary>Records a component, or a new revision of one.</summary>
    /// <exception cref="DuplicateIdException">That revision is there.</exception>
    /// <exception cref="RevisionOutOfOrderException">It does not follow the last revision; the first is 1.</exception>
    void Add(string unit, Component component);

    /// <summary>Records where a component is. A later placement of the same place and role replaces the earlier one.</summary>
    /// <exception cref="ComponentPlacedElsewhereException">It is found or fitted in another unit and would be here too.</exception>
    void Place(string unit, Placement placement);

    /// <summary>The unit that a part was found or is fitted in; null when it is in none.</summary>
    string? UnitOf(string component);

    /// <summary>Takes back a placement, such as when a part leaves the unit. Nothing happens when there is none.</summary>
    void Vacate(string unit, string position, int index, PlacementRole role);

    /// <summary>Appends readings.</summary>
    void Add(string unit, Measurement measurement);

    /// <summary>Appends a trial assembly.</summary>
    void Add(string unit, TrialAssembly trial);

    /// <summary>Appends a finding.</summary>
    void Add(string unit, Finding finding);

    /// <summary>Appends a decision.</summary>
    void Add(string unit, Decision decision);

    /// <summary>Registers or changes an instrument. Its version grows by one.</summary>
    /// <exception cref="VersionConflictException">It is no longer at <paramref name="expected"/>.</exception>
    Instrument Put(Instrument instrument, long? expected);

    /// <summary>One of the shop's own records, or null.</summary>
    T? Find<T>(string id)
        where T : class, IShopRecord<T>;

    /// <summary>All of the shop's own records of one sort, in the order in which they were last written; of one unit, or about one thing, when that is said.</summary>
    ImmutableArray<T> All<T>(string? unit = null, string? about = null)
        where T : class, IShopRecord<T>;

    /// <summary>The one of the shop's own records that was written last, or null; of one unit, or about one thing, when that is said.</summary>
    T? Newest<T>(string? unit = null, string? about = null)
        where T : class, IShopRecord<T>;

    /// <summary>Adds one of the shop's own records, or changes one that is edited; its version grows by one. The unit's own version stays.</summary>
    /// <exception cref="DuplicateIdException">It is never edited, and its id is taken.</exception>
    /// <exception cref="VersionConflictException">It is no longer at <paramref name="expected"/>; 0 for one that must be new.</exception>
    T Put<T>(T value, long? expected)
        where T : class, IShopRecord<T>;

    /// <summary>Records what a calibration found. The instrument must be registered.</summary>
    /// <exception cref="DuplicateIdException">The id is taken.</exception>
    void Add(Calibration calibration);

    /// <summary>Records a gauge study with its readings. The instrument must be registered.</summary>
    /// <exception cref="DuplicateIdException">The id is taken.</exception>
    void Add(GaugeStudyKept study);

    /// <summary>Records that a unit came back.</summary>
    void Add(Comeback comeback);

    /// <summary>Puts another edition of the shop's policy in force. Its number becomes one more than that of the last.</summary>
    /// <exception cref="VersionConflictException">It is no longer at <paramref name="expected"/>.</exception>
    PolicyEdition Put(PolicyEdition policy, long? expected);

    /// <summary>Puts an act on record. What it speaks of takes effect only afterwards, so that nothing is in force that is not in the chain.</summary>
    /// <returns>Sequence number of its entry.</returns>
    long Record(Act act);

    /// <summary>
    /// Erases the texts of a unit that name a customer, for good: the chain stays and says that they were erased. What was answered with them goes too.
    /// Copies that were made before still hold them.
    /// </summary>
    ErasureDone Erase(ErasureOrder order);

    /// <summary>Keeps a judgement that someone relied on, with the snapshot it was made from. The unit's version stays: nothing of it changed.</summary>
    /// <returns>Its id.</returns>
    string KeepJudgement(string unit, string inputsSha256, string declarationSha256, string purpose, ReadOnlyMemory<byte> snapshot, ReadOnlyMemory<byte> judgement);

    /// <summary>The outboxes of receivers of webhooks.</summary>
    IOutboxSession Outboxes { get; }
}
