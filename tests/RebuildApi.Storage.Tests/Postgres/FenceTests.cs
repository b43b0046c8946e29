using Npgsql;

namespace RebuildApi.Storage.Tests.Postgres;

/// <summary>Two shops in one database, and questions that forget to say whose rows they want.</summary>
public class FenceTests
{
    private static async Task<TempStore> TwoShops()
    {
        var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await using var branch = Stores.Open(temp.Options with { Shop = "branch" });
        await branch.Write(Requests.Plain, s => { s.OpenWithPart("b1", "bc1"); return Requests.Ok(""); }, default);
        return temp;
    }

    [PostgresFact]
    public async Task A_question_without_a_shop_finds_only_the_own_rows()
    {
        await using var temp = await TwoShops();

        Assert.Equal(["u1"], temp.AskAsService("SELECT id FROM unit"));
        Assert.Equal(["main"], temp.AskAsService("SELECT DISTINCT shop FROM entry"));
        Assert.Equal(["branch", "main"], temp.Ask("SELECT DISTINCT shop FROM entry ORDER BY 1"));
    }

    [PostgresFact]
    public async Task A_question_for_another_shop_finds_nothing()
    {
        await using var temp = await TwoShops();

        Assert.Empty(temp.AskAsService("SELECT body FROM entry WHERE shop = 'branch'"));
    }

    [PostgresFact]
    public async Task A_change_without_a_shop_touches_only_the_own_rows()
    {
        await using var temp = await TwoShops();

        temp.AskAsService("UPDATE unit SET stage = 'stolen'", "DELETE FROM placement");

        Assert.Equal(["branch intake", "main stolen"], temp.Ask("SELECT shop || ' ' || stage FROM unit ORDER BY 1"));
        Assert.Equal(["branch"], temp.Ask("SELECT shop FROM placement"));
    }

    [PostgresFact]
    public async Task A_row_can_be_neither_put_into_another_shop_nor_moved_there()
    {
        await using var temp = await TwoShops();

        Refused(() => temp.AskAsService("INSERT INTO probe (shop, body) VALUES ('branch', '')"));
        Refused(() => temp.AskAsService("INSERT INTO unit SELECT 'branch', id || 'x', stage, version, entry FROM unit"));
        Refused(() => temp.AskAsService("UPDATE idempotency SET shop = 'branch'", "UPDATE unit SET shop = 'branch'"));
    }

    [PostgresFact]
    public async Task A_connection_that_names_no_shop_sees_nothing()
    {
        await using var temp = await TwoShops();

        Assert.Equal(["0"], temp.AskAsService("RESET rebuild.shop", "SET rebuild.shop = ''", "SELECT COUNT(*)::text FROM entry"));
    }

    [PostgresFact]
    public async Task A_role_that_no_fence_holds_is_refused()
    {
        await using var temp = new TempStore();
        var strong = new NpgsqlConnectionStringBuilder(temp.Options.Database) { Username = "postgres" };

        Assert.Equal("role-too-strong", Assert.Throws<StorageUnavailableException>(() => Stores.Open(temp.Options with { Database = strong.ToString() })).Code);
    }

    private static void Refused(Action work) =>
        Assert.Contains("row-level security", Assert.Throws<PostgresException>(work).Message, StringComparison.Ordinal);
}
