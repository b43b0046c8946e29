namespace RebuildApi.Storage.Sql;

/// <summary>A kind of row that is never edited, only superseded, and how its table is asked.</summary>
/// <param name="Kind">Its word.</param>
/// <param name="UnitOf">The unit that holds <c>@id</c>.</param>
/// <param name="Superseder">What supersedes <c>@id</c>.</param>
internal sealed record AppendOnly(string Kind, string UnitOf, string Superseder)
{
    public static readonly AppendOnly Measurement = new(
        "measurement",
        "SELECT unit FROM measurement WHERE shop = @shop AND id = @id",
        "SELECT id FROM measurement WHERE shop = @shop AND supersedes = @id");

    public static readonly AppendOnly Finding = new(
        "finding",
        "SELECT unit FROM finding WHERE shop = @shop AND id = @id",
        "SELECT id FROM finding WHERE shop = @shop AND supersedes = @id");

    public static readonly AppendOnly Trial = new(
        "trial",
        "SELECT unit FROM trial WHERE shop = @shop AND id = @id",
        "SELECT id FROM trial WHERE shop = @shop AND supersedes = @id");

    public static readonly AppendOnly Comeback = new(
        "comeback",
        "SELECT unit FROM comeback WHERE shop = @shop AND id = @id",
        "SELECT id FROM comeback WHERE shop = @shop AND supersedes = @id");

    public static readonly AppendOnly Decision = new(
        "decision",
        "SELECT unit FROM decision WHERE shop = @shop AND id = @id",
        "SELECT id FROM decision WHERE shop = @shop AND supersedes = @id");
}
