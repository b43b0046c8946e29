using System.Globalization;

namespace RebuildApi.Storage.Sql;

/// <summary>Rows of what the shop knows of its instruments, of comebacks, and of its policy.</summary>
internal sealed class MetrologyRows(Statements statements, string shop)
{
    private const string TakenSql = "SELECT id FROM calibration WHERE shop = @shop AND id = @id UNION ALL SELECT id FROM study WHERE shop = @shop AND id = @id";

    /// <summary>Refuses the id of a calibration or a study that is taken by either.</summary>
    public void CheckNew(string kind, string id)
    {
        if (statements.Text(TakenSql, ("shop", shop), ("id", id)) is not null)
            throw new DuplicateIdException(kind, id);
    }

    public void Insert(Calibration c, long entry) => statements.Run(
        "INSERT INTO calibration (shop, id, instrument, entry) VALUES (@shop, @id, @instrument, @entry)",
        ("shop", shop), ("id", c.Id), ("instrument", c.Instrument), ("entry", entry));

    public void Insert(GaugeStudyKept s, long entry) => statements.Run(
        "INSERT INTO study (shop, id, instrument, entry) VALUES (@shop, @id, @instrument, @entry)",
        ("shop", shop), ("id", s.Id), ("instrument", s.Instrument), ("entry", entry));

    public void Insert(Comeback c, long entry) => statements.Run(
        "INSERT INTO comeback (shop, id, unit, supersedes, entry) VALUES (@shop, @id, @unit, @supersedes, @entry)",
        ("shop", shop), ("id", c.Id), ("unit", c.Unit), ("supersedes", c.Supersedes), ("entry", entry));

    public void Insert(PolicyEdition p, long entry) => statements.Run(
        "INSERT INTO policy (shop, number, entry) VALUES (@shop, @number, @entry)", ("shop", shop), ("number", p.Number), ("entry", entry));

    /// <summary>How an edition of the policy is named in the chain.</summary>
    public static string IdOf(PolicyEdition policy) => policy.Number.ToString(CultureInfo.InvariantCulture);
}
