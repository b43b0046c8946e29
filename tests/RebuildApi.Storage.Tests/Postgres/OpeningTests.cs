using System.Collections.Immutable;
using Dapper;
using Npgsql;
using RebuildApi.Contracts;
using RebuildApi.Storage.Postgres;
using RebuildApi.TestKit;

namespace RebuildApi.Storage.Tests.Postgres;

/// <summary>What another shop opened, attacked in SQL over a connection as the service of a branch has it: the fence must hold by itself.</summary>
public class OpeningTests
{
    private const string Want = "SET rebuild.reading = 'main'";

    // What each table shows of rows that are not the branch's own, as text, over whatever tables there are.
    private const string Tables =
        "SELECT quote_ident(relname) FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid WHERE relnamespace = current_schema()::regnamespace AND relkind = 'r' AND attname = 'shop' ORDER BY 1";

    private static async Task<TempStore> Shop(params ImmutableArray<Opening> opens)
    {
        var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.Add("u1", Some.Measurement());
            s.Add("u1", Some.Decision());
            s.Put(Some.Instrument(), null);
            s.Put(Stock("s1"), 0);
            s.Put(new Reservation("r1", "u1", "s1", 1, "Ada", SnapshotBuilder.Noon.AddDays(1), false, 0), 0);
            s.Put(new AccessToken("bench-9", "bench", new string('a', 64), SnapshotBuilder.Noon, "console", null, null, null, 0), 0);
            s.Put(new Webhook("w1", "Invoices", "http://127.0.0.1:9/", [], "Ada", SnapshotBuilder.Noon, false, false, 0), 0);
            s.Outboxes.Open("w1", new WebhookSecret("sealed secret", SnapshotBuilder.Noon, null));
            s.KeepJudgement("u1", "aa", "bb", "gate", "the snapshot"u8.ToArray(), "the judgement"u8.ToArray());
            s.Put(new Sharing("harbour", [Opening.Stock, Opening.Units], "Ada", SnapshotBuilder.Noon, 0), 0);
            if (!opens.IsEmpty)
                s.Put(new Sharing("branch", opens, "Ada", SnapshotBuilder.Noon, 0), 0);
        });
        await using var branch = Stores.Open(temp.Options with { Shop = "branch" });
        await branch.Write(Requests.Plain, s => { s.OpenWithPart("b1", "bc1"); s.Put(Stock("b-s1"), 0); return Requests.Ok(""); }, default);
        return temp;
    }

    private static StockItem Stock(string id) => new(
        id, "brackenmere-4", "third-gear", Origin.Shelf, 2, 45_00, null, null, null, null, null, ImmutableSortedDictionary<string, string>.Empty, [], true, "Ada",
        SnapshotBuilder.Noon, 0);

    private static NpgsqlConnection OfBranch(TempStore temp)
    {
        var connection = PostgresAddress.Own(temp.Options with { Shop = "branch" });
        connection.Open();
        return connection;
    }

    private static Dictionary<string, string[]> Seen(TempStore temp, string how = Want)
    {
        using var connection = OfBranch(temp);
        connection.Execute(how);
        return connection.Query<string>(Tables).ToDictionary(
            table => table, table => connection.Query<string>($"SELECT t::text FROM {table} t WHERE shop IS DISTINCT FROM 'branch'").ToArray());
    }

    private static IEnumerable<string> Showing(Dictionary<string, string[]> seen) => seen.Where(t => t.Value.Length > 0).Select(t => t.Key);

    [PostgresFact]
    public async Task Without_being_opened_to_nothing_is_seen_whatever_is_said()
    {
        await using var temp = await Shop();

        foreach (var how in new[] { Want, "SET rebuild.reading = '%'", "SET rebuild.reading = 'main,branch'", "SET rebuild.reading = ''", "RESET rebuild.reading", "SET rebuild.reading = 'harbour'" })
            Assert.Empty(Showing(Seen(temp, how)));
    }

    [PostgresFact]
    public async Task Until_it_is_said_whose_rows_are_wanted_only_what_is_opened_is_told()
    {
        await using var temp = await Shop(Opening.Stock, Opening.Units);

        foreach (var how in new[] { "RESET rebuild.reading", "SET rebuild.reading = 'branch'", "SET rebuild.reading = 'harbour'", "SET rebuild.reading = ''" })
            Assert.Equal(["sharing"], Showing(Seen(temp, how)));
    }

    [PostgresFact]
    public async Task The_shelf_shows_the_shelf_and_no_more()
    {
        await using var temp = await Shop(Opening.Stock);

        var seen = Seen(temp);

        Assert.Equal(["entry", "reservation", "sharing", "stock"], Showing(seen));
        Assert.Equal(2, seen["entry"].Length);
        Assert.All(seen["entry"], e => Assert.Matches("^\\(main,[^,]*,[^,]*,[^,]*,[^,]*,(stock|reservation),", e));
        Assert.Single(seen["sharing"], s => s.StartsWith("(main,branch,", StringComparison.Ordinal));
    }

    [PostgresFact]
    public async Task Units_show_their_judgements_and_nothing_that_names_a_customer()
    {
        await using var temp = await Shop(Opening.Units);

        var seen = Seen(temp);

        Assert.Equal(["content", "entry", "judgement", "sharing", "unit"], Showing(seen));
        Assert.Equal(2, seen["entry"].Length);
        Assert.Contains(Convert.ToHexStringLower("the judgement"u8), Assert.Single(seen["content"]), StringComparison.Ordinal);
        Assert.DoesNotContain(seen.SelectMany(t => t.Value), row => row.Contains("Mrs Invented", StringComparison.Ordinal) || row.Contains("it jumps out", StringComparison.Ordinal));
    }

    [PostgresFact]
    public async Task Entries_with_their_texts_in_the_body_are_not_shown()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.KeepJudgement("u1", "aa", "bb", "gate", "the snapshot"u8.ToArray(), "the judgement"u8.ToArray());
        });
        OldEntries.Make(temp);
        await temp.Write(s => s.Put(new Sharing("branch", [Opening.Stock, Opening.Units], "Ada", SnapshotBuilder.Noon, 0), 0));

        Assert.Equal(["judgement", "sharing", "unit"], Showing(Seen(temp)));
    }

    [PostgresFact]
    public async Task Nothing_of_it_can_be_written()
    {
        await using var temp = await Shop(Opening.Stock, Opening.Units);
        var before = temp.Ask("SELECT t::text FROM stock t WHERE shop = 'main' UNION ALL SELECT t::text FROM unit t WHERE shop = 'main' ORDER BY 1");
        using var connection = OfBranch(temp);
        connection.Execute(Want);

        Assert.Equal(0, connection.Execute("UPDATE stock SET version = 99 WHERE shop = 'main'"));
        Assert.Equal(0, connection.Execute("DELETE FROM stock WHERE shop = 'main'"));
        Assert.Equal(0, connection.Execute("UPDATE unit SET stage = 'stolen' WHERE shop = 'main'"));
        Assert.Empty(connection.Query<string>("SELECT id FROM stock WHERE shop = 'main' FOR UPDATE"));
        Refused(connection, "INSERT INTO stock (shop, id, version, entry) VALUES ('main', 'x', 1, 1)");
        Refused(connection, "INSERT INTO stock SELECT shop, id || 'x', unit, about, version, entry FROM stock WHERE shop = 'main'");
        Refused(connection, "INSERT INTO stock (shop, id, version, entry) VALUES ('main', 's1', 1, 1) ON CONFLICT (shop, id) DO UPDATE SET version = 99");
        Refused(connection, "INSERT INTO entry SELECT 'main', sequence + 100, at, actor, operation, kind, unit, id, body, previous, hash, form FROM entry WHERE shop = 'main'");

        Assert.Equal(before, temp.Ask("SELECT t::text FROM stock t WHERE shop = 'main' UNION ALL SELECT t::text FROM unit t WHERE shop = 'main' ORDER BY 1"));
    }

    [PostgresFact]
    public async Task Nobody_opens_anything_to_himself()
    {
        await using var temp = await Shop(Opening.Stock);
        using var connection = OfBranch(temp);
        connection.Execute(Want);

        Assert.Equal(0, connection.Execute("UPDATE sharing SET about = 'stock units' WHERE shop = 'main'"));
        Assert.Equal(0, connection.Execute("UPDATE sharing SET id = 'branch' WHERE shop = 'main' AND id = 'harbour'"));
        Refused(connection, "INSERT INTO sharing (shop, id, about, version, entry) VALUES ('main', 'branch', 'stock units', 1, 1)");
        Refused(connection, "INSERT INTO sharing (shop, id, about, version, entry) VALUES ('main', 'branch', 'units', 1, 1) ON CONFLICT (shop, id) DO UPDATE SET about = 'units'");
        connection.Execute("INSERT INTO sharing (shop, id, about, version, entry) VALUES ('branch', 'branch', 'stock units', 1, 1), ('branch', 'main', 'stock units', 1, 1)");
        Refused(connection, "UPDATE sharing SET shop = 'main' WHERE shop = 'branch'");

        Assert.Equal(["entry", "reservation", "sharing", "stock"], Showing(Seen(temp)));
    }

    [PostgresFact]
    public async Task The_policies_are_of_reading_alone()
    {
        await using var temp = await Shop();

        Assert.Equal(
            ["content r", "entry r", "judgement r", "reservation r", "sharing r", "stock r", "unit r"],
            temp.Ask("SELECT relname || ' ' || polcmd::text FROM pg_policy p JOIN pg_class c ON c.oid = p.polrelid WHERE polname <> 'own_shop' AND relnamespace = current_schema()::regnamespace ORDER BY 1"));
    }

    /// <summary>The role of a branch that is not trusted with the owner's, made as DEVELOPERS.md says.</summary>
    [PostgresFact]
    public async Task A_role_of_its_own_can_be_no_other_shop_and_still_reads_what_is_opened_to_it()
    {
        await using var temp = await Shop(Opening.Stock);
        var schema = new NpgsqlConnectionStringBuilder(temp.Options.Database).SearchPath!;
        var role = "role_" + schema;
        var page = await File.ReadAllTextAsync(Repository.PathTo("DEVELOPERS.md"));
        var words = page.Split("```sql")[1].Split("```")[0];
        temp.Meddle(words.Replace("''harbour''", "''branch''", StringComparison.Ordinal).Replace("harbour", role, StringComparison.Ordinal).Replace("public", schema, StringComparison.Ordinal));
        var options = temp.Options with { Shop = "branch", Database = new NpgsqlConnectionStringBuilder(temp.Options.Database) { Username = role }.ToString() };
        try
        {
            await using (var branch = Stores.Open(options))
            {
                await branch.Write(Requests.Plain, s => { s.Add("b1", Some.Finding("f1", "bc1")); return Requests.Ok(""); }, default);
                Assert.Equal("s1", Assert.Single((await branch.StockOf("main", null, null, 10, default)).Items.Items).Id);
                Assert.Equal(TimeSpan.Zero, await branch.CountTry("10.0.0.7", new TryLimit(2, TimeSpan.FromSeconds(5)), default));
                Assert.True((await branch.VerifyChain(default)).Intact);
            }

            using var connection = PostgresAddress.Own(options);
            connection.Open();
            foreach (var how in new[] { "SET rebuild.shop = 'main'", "RESET rebuild.shop; SET rebuild.reading = 'main'; SET rebuild.shop = 'harbour'" })
            {
                connection.Execute(how);
                Assert.All(connection.Query<string>(Tables).ToArray(), table => Assert.Equal(0, connection.ExecuteScalar<long>($"SELECT COUNT(*) FROM {table}")));
                Refused(connection, "INSERT INTO probe (shop, body) VALUES ('main', '')");
            }

            Assert.Throws<PostgresException>(() => connection.Execute("ALTER TABLE stock DISABLE ROW LEVEL SECURITY"));
            Assert.Throws<PostgresException>(() => connection.Execute("DROP POLICY only_" + role + " ON stock"));
            Assert.Throws<PostgresException>(() => connection.Execute("TRUNCATE stock"));
        }
        finally
        {
            temp.Meddle($"DROP OWNED BY {role}; DROP ROLE {role}");
        }
    }

    private static void Refused(NpgsqlConnection connection, string sql) =>
        Assert.Contains("row-level security", Assert.Throws<PostgresException>(() => connection.Execute(sql)).Message, StringComparison.Ordinal);
}
