using System.Text;
using Dapper;
using Npgsql;
using RebuildApi.TestKit;

namespace RebuildApi.Storage.Tests.Postgres;

/// <summary>What an operator must do so that what was erased is in no file of the tables any more, as README.md says it.</summary>
public class ErasedFilesTests
{
    private const string Name = "Mrs Invented";

    // Every file of a table, of its index and of what is stored apart, as it lies on the disk.
    private const string Holding =
        """
        SELECT c.relname::text FROM pg_class c WHERE pg_relation_filepath(c.oid) IS NOT NULL AND (relnamespace = current_schema()::regnamespace
            OR c.oid IN (SELECT reltoastrelid FROM pg_class WHERE relnamespace = current_schema()::regnamespace))
        AND position(@name::bytea IN pg_read_binary_file(pg_relation_filepath(c.oid))) > 0 ORDER BY 1
        """;

    private static string[] Found(NpgsqlConnection master)
    {
        master.Execute("CHECKPOINT;");
        return [.. master.Query<string>(Holding, new { name = Encoding.UTF8.GetBytes(Name) })];
    }

    [PostgresFact]
    public async Task After_that_no_file_of_a_table_holds_the_name()
    {
        await using var temp = new TempStore();
        await temp.Write(Requests.Keyed("k"), s => s.OpenWithPart());
        using var master = (NpgsqlConnection)temp.Open();
        Assert.Equal(["personal"], Found(master));

        await temp.Write(s => s.Erase(new ErasureOrder("e1", "u1", Name, "Ada", Files: false)));
        Assert.Equal(["personal"], Found(master));

        var told = (await File.ReadAllTextAsync(Repository.PathTo("README.md"))).Split("```sql")[1].Split("```")[0];
        foreach (var words in told.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            master.Execute(words + ";");

        Assert.Empty(Found(master));
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
    }
}
