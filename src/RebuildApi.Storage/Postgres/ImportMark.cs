using Dapper;
using Npgsql;
using RebuildApi.Storage.Sql;
using RebuildApi.Storage.Transfer;

namespace RebuildApi.Storage.Postgres;

/// <summary>Says in the database that a shop is being taken over, from which file, and sees to it that two do not at once.</summary>
internal sealed class ImportMark(NpgsqlConnection connection, string shop, string file) : IDisposable
{
    private const string Locked = "SELECT pg_try_advisory_lock(@key)";
    private readonly long _key = new ShopLock(PostgresCatalogue.SchemaOf(connection), shop).Duty("import");

    /// <summary>Sets it. What an earlier one of another file left is taken out.</summary>
    /// <exception cref="IOException">There are records of the shop already, or another import runs.</exception>
    public void Set()
    {
        if (!connection.ExecuteScalar<bool>(Locked, new { key = _key }))
            throw new IOException($"The shop {shop} is being taken over by another program just now.");
        var stands = connection.ExecuteScalar<string?>("SELECT file FROM importing WHERE shop = @shop", new { shop });
        if (stands == file)
            return;
        if (stands is not null)
            Clear();
        if (ChainHead.Read(connection, shop) != ChainHead.Empty)
            throw new IOException($"There are records of the shop {shop} in that database already.");
        connection.Execute("INSERT INTO importing (shop, file) VALUES (@shop, @file)", new { shop, file });
    }

    /// <summary>Everything fits: the shop counts from now on.</summary>
    public void Done() => connection.Execute("DELETE FROM importing WHERE shop = @shop", new { shop });

    /// <summary>Takes out what was taken over so far. Only here may rows that are otherwise only added to be removed: they never counted.</summary>
    public void Clear()
    {
        using var transaction = connection.BeginTransaction();
        foreach (var table in PortableTables.Of(new PostgresCatalogue(connection)).Reverse())
        {
            connection.Execute($"ALTER TABLE {table.Name} DISABLE TRIGGER USER");
            connection.Execute($"DELETE FROM {table.Name} WHERE shop = @shop", new { shop });
            connection.Execute($"ALTER TABLE {table.Name} ENABLE TRIGGER USER");
        }

        Done();
        transaction.Commit();
    }

    public void Dispose() => connection.Execute("SELECT pg_advisory_unlock(@key)", new { key = _key });
}
