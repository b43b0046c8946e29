using System.Data.Common;
using Dapper;
using RebuildApi.Contracts;

namespace RebuildApi.Storage.Sql;

/// <summary>Rows of what was read, seen, tried and decided.</summary>
internal sealed class AppendOnlyRows(DbConnection connection, string shop)
{
    /// <summary>Refuses an id that is taken, and a correction that can't stand.</summary>
    public void CheckNew(AppendOnly kind, string unit, string id, string? supersedes)
    {
        if (UnitOf(kind, id) is not null)
            throw new DuplicateIdException(kind.Kind, id);
        if (supersedes is not null && WhyNot(kind, unit, supersedes) is { } code)
            throw new SupersedesException(kind.Kind, id, supersedes, code);
    }

    public void Insert(string unit, Measurement m, long entry) => connection.Execute(
        """
        INSERT INTO measurement (shop, id, unit, component, revision, characteristic, supersedes, entry)
        VALUES (@shop, @Id, @unit, @Component, @Revision, @Characteristic, @Supersedes, @entry)
        """,
        new { shop, m.Id, unit, m.Component, m.Revision, m.Characteristic, m.Supersedes, entry });

    public void Insert(string unit, Finding f, long entry) => connection.Execute(
        """
        INSERT INTO finding (shop, id, unit, component, revision, supersedes, entry)
        VALUES (@shop, @Id, @unit, @Component, @Revision, @Supersedes, @entry)
        """,
        new { shop, f.Id, unit, f.Component, f.Revision, f.Supersedes, entry });

    public void Insert(string unit, TrialAssembly t, long entry) => connection.Execute(
        "INSERT INTO trial (shop, id, unit, clearance, supersedes, entry) VALUES (@shop, @Id, @unit, @Loop, @Supersedes, @entry)",
        new { shop, t.Id, unit, t.Loop, t.Supersedes, entry });

    public void Insert(string unit, Decision d, long entry) => connection.Execute(
        "INSERT INTO decision (shop, id, unit, subject, supersedes, entry) VALUES (@shop, @Id, @unit, @Subject, @Supersedes, @entry)",
        new { shop, d.Id, unit, d.Subject, d.Supersedes, entry });

    private string? WhyNot(AppendOnly kind, string unit, string supersedes)
    {
        var holder = UnitOf(kind, supersedes);
        if (holder is null)
            return "unknown";
        if (holder != unit)
            return "other-unit";
        return connection.QuerySingleOrDefault<string>(kind.Superseder, new { shop, id = supersedes }) is null ? null : "already-superseded";
    }

    private string? UnitOf(AppendOnly kind, string id) => connection.QuerySingleOrDefault<string>(kind.UnitOf, new { shop, id });
}
