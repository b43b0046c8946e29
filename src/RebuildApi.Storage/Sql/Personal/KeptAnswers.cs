using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dapper;

namespace RebuildApi.Storage.Sql.Personal;

/// <summary>Takes texts out of the answers that are kept for repeated requests; a repeated request is still known again.</summary>
internal sealed class KeptAnswers(Statements statements, string shop)
{
    // Answers about the unit, and that to taking it in, whose address does not name it yet.
    private const string About =
        """
        SELECT actor, key, body FROM idempotency
        WHERE shop = @shop AND (operation = 'POST /v1/units' OR operation LIKE '% /v1/units/' || @unit || '%')
        """;

    /// <summary>Blanks every value that is one of some texts, or holds one.</summary>
    public void Blank(string unit, ImmutableArray<string> texts)
    {
        foreach (var (actor, key, body) in statements.Connection.Query<(string, string, byte[])>(About, new { shop, unit }).ToArray())
        {
            if (Blanked(body, texts) is { } blanked)
                statements.Run(
                    "UPDATE idempotency SET body = @body WHERE shop = @shop AND actor = @actor AND key = @key",
                    ("body", blanked), ("shop", shop), ("actor", actor), ("key", key));
        }
    }

    private static byte[]? Blanked(byte[] body, ImmutableArray<string> texts)
    {
        if (body.Length == 0 || Parse(body) is not { } json || !Blank(json, texts))
            return null;
        return Encoding.UTF8.GetBytes(json.ToJsonString());
    }

    private static JsonNode? Parse(byte[] body)
    {
        try
        {
            return JsonNode.Parse(body);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static bool Blank(JsonNode? node, ImmutableArray<string> texts) => node switch
    {
        JsonObject all => all.ToArray().Aggregate(false, (any, p) => Blank(p.Value, texts) | any),
        JsonArray all => all.ToArray().Aggregate(false, (any, p) => Blank(p, texts) | any),
        JsonValue value when value.GetValueKind() == JsonValueKind.String && Holds(value.GetValue<string>(), texts) => Replace(value),
        _ => false,
    };

    private static bool Replace(JsonValue value)
    {
        value.ReplaceWith(Erasure.Text);
        return true;
    }

    private static bool Holds(string value, ImmutableArray<string> texts) => texts.Any(text => text.Length > 0 && value.Contains(text, StringComparison.OrdinalIgnoreCase));
}
