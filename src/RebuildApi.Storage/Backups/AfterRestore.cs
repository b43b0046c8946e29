using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Backups;

/// <summary>
/// Sees to it, in the one change that puts a restore on record, that a copy revives nothing: tokens that were revoked since are revoked again, what was
/// opened to other shops and taken back since is taken back again, and texts that were erased since are erased again. Where what stood there does not tell, every
/// token of the copy is revoked and nothing is opened.
/// </summary>
internal sealed class AfterRestore(IWriteSession session, Replaced replaced, DateTimeOffset now)
{
    private const string By = "restore";

    /// <summary>Does it.</summary>
    public Restored Run(CheckedBackup from, string person)
    {
        var revoked = session.All<AccessToken>().Where(replaced.TakesBack).Select(Revoke).ToImmutableArray();
        foreach (var sharing in session.All<Sharing>())
            Narrow(sharing);
        var erased = replaced.GoesOn ? replaced.Erasures.Sum(((WriteSession)session).EraseAgain) : 0;
        var details = ImmutableSortedDictionary<string, string>.Empty
            .Add("head", from.Report.Chain.Head).Add("replacedHead", replaced.Head)
            .Add("tokensRevoked", replaced.GoesOn ? "those revoked since" : "all")
            .Add("textsErasedAgain", erased.ToString(CultureInfo.InvariantCulture));
        session.Record(new Act(Acts.Restore, from.Backup.Name, person, details));
        return new Restored(replaced.GoesOn, revoked, erased);
    }

    private void Narrow(Sharing sharing)
    {
        var left = replaced.Leaves(sharing);
        if (left.Length < sharing.Opens.Length)
            session.Put(sharing with { Opens = left, Person = By, Time = now }, sharing.Version);
    }

    private string Revoke(AccessToken token) => session.Put(token with { Revoked = now, RevokedBy = By }, token.Version).Name;
}
