using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Dapper;

namespace RebuildApi.Storage.Sql.Personal;

/// <summary>Rows of texts that stand apart, and their end.</summary>
internal sealed class PersonalRows(Statements statements, string shop)
{
    private const string OfUnit =
        $"SELECT e.sequence, e.at, e.actor, e.id, e.kind, e.form, e.body, {PersonalSql.Column} FROM entry e {PersonalSql.Join} WHERE e.shop = @shop AND e.unit = @unit ORDER BY e.sequence";

    public void Insert(long sequence, string personal) => statements.Run(
        "INSERT INTO personal (shop, sequence, body) VALUES (@shop, @sequence, @body)", ("shop", shop), ("sequence", sequence), ("body", personal));

    /// <summary>Every entry of a unit with what stands apart from it.</summary>
    public IEnumerable<PersonalEntry> Of(string unit) => statements.Connection.Query<PersonalEntry>(OfUnit, new { shop, unit });

    /// <summary>Lets go of the texts of entries that an erasure names.</summary>
    public void Erase(IEnumerable<(PersonalEntry Entry, ErasedEntry Erased)> gone, long erasure)
    {
        foreach (var (entry, erased) in gone)
        {
            statements.Run(
                "INSERT INTO erased (shop, sequence, entry) VALUES (@shop, @sequence, @entry) ON CONFLICT (shop, sequence) DO NOTHING",
                ("shop", shop), ("sequence", entry.Sequence), ("entry", erasure));
            if (erased.BodySha256 is null)
                statements.Run("DELETE FROM personal WHERE shop = @shop AND sequence = @sequence", ("shop", shop), ("sequence", entry.Sequence));
            else
                statements.Run("UPDATE entry SET body = @body WHERE shop = @shop AND sequence = @sequence", ("body", Blanked(entry)), ("shop", shop), ("sequence", entry.Sequence));
        }

        statements.HasErased = true;
    }

    /// <summary>The body of an entry in which a text stood, without it.</summary>
    public static string Blanked(PersonalEntry entry)
    {
        var json = JsonNode.Parse(entry.Body)!.AsObject();
        foreach (var field in entry.Texts().Keys)
            json[field] = Erasure.Text;
        return json.ToJsonString();
    }

    /// <summary>SHA-256 of a body, lower-case hex.</summary>
    public static string HashOf(string body) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(body)));
}

/// <summary>An entry with what stands apart from it. Filled by name.</summary>
internal sealed record PersonalEntry
{
    public long Sequence { get; init; }

    public string At { get; init; } = "";

    public string Actor { get; init; } = "";

    public string Id { get; init; } = "";

    public string Kind { get; init; } = "";

    public long Form { get; init; }

    public string Body { get; init; } = "";

    public string? Personal { get; init; }

    /// <summary>The body with its texts in their places.</summary>
    public string Told() => PersonalBody.Open(Kind, Body, Personal);

    /// <summary>The personal texts that are still there, by field.</summary>
    public ImmutableSortedDictionary<string, string> Texts() => Form == ChainLink.Old
        ? PersonalFields.Of(Kind) is { IsEmpty: false } fields
            ? PersonalBody.Texts(JsonNode.Parse(Body)!.AsObject(), fields).Where(t => t.Value != Erasure.Text).ToImmutableSortedDictionary(StringComparer.Ordinal)
            : ImmutableSortedDictionary<string, string>.Empty
        : PersonalBody.Read(Personal).ToImmutableSortedDictionary(t => t.Key, t => t.Value.Text, StringComparer.Ordinal);
}
