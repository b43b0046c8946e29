namespace RebuildApi.Storage.Sql;

/// <summary>
/// What belongs to a unit's file. A part belongs when it was recorded in the unit or is placed in it; with it come its readings and findings,
/// in whichever unit they were taken. Superseded rows are left out. Everything in the order in which it was recorded.
/// </summary>
internal static class FileSql
{
    // UNION alone would read both tables through in the order of ids, to merge them. CROSS JOIN below says which table comes first:
    // the few parts of the unit, and not all readings of the shop.
    private const string Parts =
        """
        WITH part AS (
            SELECT DISTINCT id FROM (
                SELECT id FROM component WHERE shop = @shop AND unit = @id
                UNION ALL SELECT component FROM placement WHERE shop = @shop AND unit = @id) every)

        """;

    public const string Components = Parts +
        """
        SELECT e.body FROM part p CROSS JOIN component c LEFT JOIN entry e ON e.shop = c.shop AND e.sequence = c.entry
        WHERE c.shop = @shop AND c.id = p.id
            AND c.revision = (SELECT MAX(n.revision) FROM component n WHERE n.shop = c.shop AND n.id = c.id) ORDER BY c.id
        """;

    public const string Placements =
        """
        SELECT e.body FROM placement p LEFT JOIN entry e ON e.shop = p.shop AND e.sequence = p.entry
        WHERE p.shop = @shop AND p.unit = @id ORDER BY p.entry
        """;

    public const string Measurements = Parts +
        """
        SELECT e.body FROM part p CROSS JOIN measurement m LEFT JOIN entry e ON e.shop = m.shop AND e.sequence = m.entry
        WHERE m.shop = @shop AND m.component = p.id
            AND NOT EXISTS (SELECT 1 FROM measurement s WHERE s.shop = m.shop AND s.supersedes = m.id) ORDER BY m.entry
        """;

    public const string Findings = Parts +
        """
        SELECT e.body FROM part p CROSS JOIN finding f LEFT JOIN entry e ON e.shop = f.shop AND e.sequence = f.entry
        WHERE f.shop = @shop AND f.component = p.id
            AND NOT EXISTS (SELECT 1 FROM finding s WHERE s.shop = f.shop AND s.supersedes = f.id) ORDER BY f.entry
        """;

    public const string Trials =
        """
        SELECT e.body FROM trial t LEFT JOIN entry e ON e.shop = t.shop AND e.sequence = t.entry
        WHERE t.shop = @shop AND t.unit = @id
            AND NOT EXISTS (SELECT 1 FROM trial s WHERE s.shop = t.shop AND s.supersedes = t.id) ORDER BY t.entry
        """;

    public const string Decisions =
        """
        SELECT e.body, x.body AS personal FROM decision d LEFT JOIN entry e ON e.shop = d.shop AND e.sequence = d.entry
        LEFT JOIN personal x ON x.shop = e.shop AND x.sequence = e.sequence
        WHERE d.shop = @shop AND d.unit = @id
            AND NOT EXISTS (SELECT 1 FROM decision s WHERE s.shop = d.shop AND s.supersedes = d.id) ORDER BY d.entry
        """;
}
