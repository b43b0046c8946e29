using System.Data.Common;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.InteropServices;

namespace RebuildApi.Storage.Sql;

/// <summary>
/// The writer's statements, each prepared once for as long as its connection lives: the same few are run for every reading, and preparing one
/// costs more than running it. A statement must always be given its values in the same order.
/// </summary>
internal sealed class Statements(DbConnection connection) : IDisposable
{
    private readonly Dictionary<string, DbCommand> _prepared = new(StringComparer.Ordinal);

    /// <summary>The connection, for what is asked rarely.</summary>
    public DbConnection Connection => connection;

    /// <summary>Whether something was erased since this was last set to false: then the log must not keep it either.</summary>
    public bool HasErased { get; set; }

    /// <returns>How many rows it touched.</returns>
    public int Run(string sql, params ReadOnlySpan<(string Name, object? Value)> values) => Prepared(sql, values).ExecuteNonQuery();

    /// <summary>The first column of the first row as text; null when there is no row.</summary>
    public string? Text(string sql, params ReadOnlySpan<(string Name, object? Value)> values) => Prepared(sql, values).ExecuteScalar() as string;

    /// <summary>The first column of the first row as a whole number; 0 when there is no row.</summary>
    public long Number(string sql, params ReadOnlySpan<(string Name, object? Value)> values) => Prepared(sql, values).ExecuteScalar() is long n ? n : 0;

    /// <summary>The first column of every row as text.</summary>
    public List<string> Texts(string sql, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        using var reader = Prepared(sql, values).ExecuteReader();
        var texts = new List<string>();
        while (reader.Read())
            texts.Add(reader.GetString(0));
        return texts;
    }

    /// <summary>Lets go of every statement.</summary>
    public void Dispose()
    {
        foreach (var command in _prepared.Values)
            command.Dispose();
        _prepared.Clear();
    }

    private DbCommand Prepared(string sql, ReadOnlySpan<(string Name, object? Value)> values)
    {
        ref var command = ref CollectionsMarshal.GetValueRefOrAddDefault(_prepared, sql, out _);
        command ??= New(sql, values);
        for (var i = 0; i < values.Length; i++)
            command.Parameters[i].Value = values[i].Value ?? DBNull.Value;
        return command;
    }

    [SuppressMessage("Security", "CA2100", Justification = "Every text is a constant of this assembly; what users send goes into parameters.")]
    private DbCommand New(string sql, ReadOnlySpan<(string Name, object? Value)> values)
    {
        var command = connection.CreateCommand();
        command.CommandText = sql;
        foreach (var (name, _) in values)
        {
            var parameter = command.CreateParameter();
            parameter.ParameterName = "@" + name;
            command.Parameters.Add(parameter);
        }

        return command;
    }
}
