using RebuildApi.Contracts;

namespace RebuildApi.Storage.Sql;

/// <summary>Rows of parts and of where they are.</summary>
internal sealed class PartRows(Statements statements, string shop)
{
    private const string Elsewhere =
        """
        SELECT unit FROM placement
        WHERE shop = @shop AND component = @component AND unit <> @unit AND role IN ('found', 'fitted') LIMIT 1
        """;

    private const string Twice =
        """
        SELECT unit || '/' || position || '#' || place FROM placement
        WHERE shop = @shop AND component = @component AND unit = @unit AND role = @role AND (position <> @position OR place <> @index) LIMIT 1
        """;

    private const string Others =
        """
        SELECT unit FROM component WHERE shop = @shop AND id = @component AND unit <> @unit
        UNION SELECT unit FROM placement WHERE shop = @shop AND component = @component AND unit <> @unit
        """;

    /// <summary>The role as it is stored.</summary>
    public static string Word(PlacementRole role) => role switch
    {
        PlacementRole.Found => "found",
        PlacementRole.Chosen => "chosen",
        PlacementRole.Fitted => "fitted",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, null),
    };

    /// <summary>The other units whose file shows this part.</summary>
    public List<string> OtherUnits(string unit, string component) =>
        statements.Texts(Others, ("shop", shop), ("unit", unit), ("component", component));

    /// <summary>The unit that a part was found or is fitted in, if any.</summary>
    public string? UnitOf(string component) => statements.Text(Elsewhere, ("shop", shop), ("unit", ""), ("component", component));

    public void CheckKnown(string component, int revision)
    {
        var known = statements.Number(
            "SELECT COUNT(*) FROM component WHERE shop = @shop AND id = @component AND revision = @revision",
            ("shop", shop), ("component", component), ("revision", revision));
        if (known == 0)
            throw new UnknownIdException("component", FormattableString.Invariant($"{component} revision {revision}"));
    }

    public void CheckRevision(Component component)
    {
        var last = LastRevision(component.Id);
        if (component.Revision >= 1 && component.Revision <= last)
            throw new DuplicateIdException("component", FormattableString.Invariant($"{component.Id} revision {component.Revision}"));
        if (component.Revision != last + 1)
            throw new RevisionOutOfOrderException(component.Id, last + 1, component.Revision);
    }

    public void CheckPlace(string unit, Placement placement)
    {
        if (LastRevision(placement.Component) == 0)
            throw new UnknownIdException("component", placement.Component);
        var twice = statements.Text(Twice, ("shop", shop), ("component", placement.Component), ("unit", unit), ("role", Word(placement.Role)),
            ("position", placement.Position), ("index", placement.Index));
        if (twice is not null)
            throw new ComponentPlacedElsewhereException(placement.Component, unit, twice);
        if (placement.Role == PlacementRole.Chosen)
            return;
        var elsewhere = statements.Text(Elsewhere, ("shop", shop), ("unit", unit), ("component", placement.Component));
        if (elsewhere is not null)
            throw new ComponentPlacedElsewhereException(placement.Component, unit, elsewhere);
    }

    public void Insert(string unit, Component component, long entry) => statements.Run(
        "INSERT INTO component (shop, id, revision, unit, entry) VALUES (@shop, @id, @revision, @unit, @entry)",
        ("shop", shop), ("id", component.Id), ("revision", component.Revision), ("unit", unit), ("entry", entry));

    public void Upsert(string unit, Placement placement, long entry) => statements.Run(
        """
        INSERT INTO placement (shop, unit, position, place, role, component, entry)
        VALUES (@shop, @unit, @position, @place, @role, @component, @entry)
        ON CONFLICT (shop, unit, position, place, role) DO UPDATE SET component = @component, entry = @entry
        """,
        ("shop", shop), ("unit", unit), ("position", placement.Position), ("place", placement.Index), ("role", Word(placement.Role)),
        ("component", placement.Component), ("entry", entry));

    /// <returns>Whether there was one.</returns>
    public bool Delete(string unit, string position, int index, PlacementRole role) => statements.Run(
        "DELETE FROM placement WHERE shop = @shop AND unit = @unit AND position = @position AND place = @index AND role = @role",
        ("shop", shop), ("unit", unit), ("position", position), ("index", index), ("role", Word(role))) > 0;

    private int LastRevision(string component) => (int)statements.Number(
        "SELECT MAX(revision) FROM component WHERE shop = @shop AND id = @component", ("shop", shop), ("component", component));
}
