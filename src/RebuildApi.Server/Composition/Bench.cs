using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>What every change of something in a unit shares: the unit and its rules are looked up inside the change, and nothing is kept when anything is wrong.</summary>
public sealed class Bench(IStore store, FamilyBook families, IIdSource ids, TimeProvider time)
{
    /// <summary>The clock.</summary>
    public TimeProvider Time => time;

    /// <summary>New ids.</summary>
    public IIdSource Ids => ids;

    /// <summary>The records.</summary>
    public IStore Store => store;

    /// <summary>Runs one change inside a unit.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="request">Who asks.</param>
    /// <param name="work">The change; complaints that it notes undo it.</param>
    /// <param name="cancellation">Gives up before it has begun.</param>
    public Task<StoredAnswer> Change(string unit, WriteRequest request, Func<BenchWork, StoredAnswer> work, CancellationToken cancellation) =>
        store.Write(request, session =>
        {
            var file = session.File(unit) ?? throw Unknown();
            var complaints = new Complaints();
            var bench = new BenchWork(session, file, families.RequirePinned(file.Unit.Family), complaints, ids, time.GetUtcNow());
            var answer = work(bench);
            complaints.ThrowIfAny(Problems.InvalidContent);
            return answer;
        }, cancellation);

    /// <summary>Everything of a unit.</summary>
    /// <exception cref="ProblemException">There is no such unit.</exception>
    public async ValueTask<UnitFile> File(string unit, CancellationToken cancellation) => await store.File(unit, cancellation) ?? throw Unknown();

    /// <summary>The problem of a unit that is not there.</summary>
    public static ProblemException Unknown() => new(Problems.UnknownUnit, "No unit of this id was taken in.");
}

/// <summary>One change inside a unit.</summary>
/// <param name="Session">What may be done.</param>
/// <param name="File">The unit as it stood before.</param>
/// <param name="Family">Its rules.</param>
/// <param name="Complaints">What is wrong with the request.</param>
/// <param name="Ids">New ids.</param>
/// <param name="Now">The time of the change.</param>
public sealed record BenchWork(IWriteSession Session, UnitFile File, FamilyIndex Family, Complaints Complaints, IIdSource Ids, DateTimeOffset Now)
{
    /// <summary>Id of the unit.</summary>
    public string Unit => File.Unit.Id;

    /// <summary>The parts of the unit.</summary>
    public PartFinder Parts { get; } = new(Session, File, Family, Ids, Complaints);

    /// <summary>The unit's version after what was done so far.</summary>
    public long Version => Session.Unit(Unit)!.Version;

    /// <summary>Whether an instrument is registered.</summary>
    public bool KnowsInstrument(string id) => Session.Instrument(id) is not null;

    /// <summary>Ends the change when anything is wrong.</summary>
    public void StopIfWrong() => Complaints.ThrowIfAny(Problems.InvalidContent);
}
