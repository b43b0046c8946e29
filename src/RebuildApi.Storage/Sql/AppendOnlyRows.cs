using RebuildApi.Contracts;

namespace RebuildApi.Storage.Sql;

/// <summary>Rows of what was read, seen, tried and decided.</summary>
internal sealed class AppendOnlyRows(Statements statements, string shop)
{
    /// <summary>Refuses an id that is taken, and a correction that can't stand.</summary>
    public void CheckNew(AppendOnly kind, string unit, string id, string? supersedes)
    {
        if (UnitOf(kind, id) is not null)
            throw new DuplicateIdException(kind.Kind, id);
        if (supersedes is not null && WhyNot(kind, unit, supersedes) is { } code)
            throw new SupersedesException(kind.Kind, id, supersedes, code);
    }

    public void Insert(string unit, Measurement m, long entry) => statements.Run(
        """
        INSERT INTO measurement (shop, id, unit, component, revision, characteristic, supersedes, entry, instrument)
        VALUES (@shop, @id, @unit, @component, @revision, @characteristic, @supersedes, @entry, @instrument)
        """,
        ("shop", shop), ("id", m.Id), ("unit", unit), ("component", m.Component), ("revision", m.Revision),
        ("characteristic", m.Characteristic), ("supersedes", m.Supersedes), ("entry", entry), ("instrument", m.Taken.Instrument));

    public void Insert(string unit, Finding f, long entry) => statements.Run(
        """
        INSERT INTO finding (shop, id, unit, component, revision, supersedes, entry)
        VALUES (@shop, @id, @unit, @component, @revision, @supersedes, @entry)
        """,
        ("shop", shop), ("id", f.Id), ("unit", unit), ("component", f.Component), ("revision", f.Revision),
        ("supersedes", f.Supersedes), ("entry", entry));

    public void Insert(string unit, TrialAssembly t, long entry) => statements.Run(
        """
        INSERT INTO trial (shop, id, unit, clearance, supersedes, entry, instrument)
        VALUES (@shop, @id, @unit, @clearance, @supersedes, @entry, @instrument)
        """,
        ("shop", shop), ("id", t.Id), ("unit", unit), ("clearance", t.Loop), ("supersedes", t.Supersedes), ("entry", entry),
        ("instrument", t.Taken.Instrument));

    public void Insert(string unit, Decision d, long entry) => statements.Run(
        "INSERT INTO decision (shop, id, unit, subject, supersedes, entry) VALUES (@shop, @id, @unit, @subject, @supersedes, @entry)",
        ("shop", shop), ("id", d.Id), ("unit", unit), ("subject", d.Subject), ("supersedes", d.Supersedes), ("entry", entry));

    private string? WhyNot(AppendOnly kind, string unit, string supersedes)
    {
        var holder = UnitOf(kind, supersedes);
        if (holder is null)
            return "unknown";
        if (holder != unit)
            return "other-unit";
        return statements.Text(kind.Superseder, ("shop", shop), ("id", supersedes)) is null ? null : "already-superseded";
    }

    private string? UnitOf(AppendOnly kind, string id) => statements.Text(kind.UnitOf, ("shop", shop), ("id", id));
}
