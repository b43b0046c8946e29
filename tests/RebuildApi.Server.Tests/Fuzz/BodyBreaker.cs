using System.Text;
using System.Text.Json.Nodes;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>Changes a body in a few places: puts something else there, leaves something out, doubles it, or cuts the text.</summary>
internal sealed class BodyBreaker(Random random)
{
    public byte[] Broken(string body)
    {
        if (random.Next(12) == 0)
            return Torn(body);
        var root = JsonNode.Parse(body);
        for (var i = random.Next(1, 4); i > 0 && root is not null; i--)
            Change(root);
        return Encoding.UTF8.GetBytes(root?.ToJsonString() ?? "null");
    }

    private byte[] Torn(string body)
    {
        var bytes = Encoding.UTF8.GetBytes(body);
        if (bytes.Length == 0)
            return bytes;
        bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        return bytes[..random.Next(1, bytes.Length + 1)];
    }

    private void Change(JsonNode root)
    {
        var nodes = Below(root).ToArray();
        if (nodes.Length == 0)
            return;
        var target = nodes[random.Next(nodes.Length)];
        switch (target.Parent)
        {
            case JsonObject map when random.Next(3) == 0:
                map.Remove(map.First(m => ReferenceEquals(m.Value, target)).Key);
                break;
            case JsonArray list when random.Next(3) == 0:
                list.Add(target.DeepClone());
                break;
            default:
                Replace(target);
                break;
        }
    }

    // Numbers that no double holds are no nodes that can be compared, but they can be written.
    private void Replace(JsonNode target) => target.ReplaceWith(random.Next(3) switch
    {
        0 => JsonNode.Parse(OddWords.Numbers[random.Next(OddWords.Numbers.Length)]),
        1 => JsonValue.Create(OddWords.Texts[random.Next(OddWords.Texts.Length)]),
        _ => JsonNode.Parse(OddWords.Json[random.Next(OddWords.Json.Length)]),
    });

    private static IEnumerable<JsonNode> Below(JsonNode node) => node switch
    {
        JsonObject map => map.Where(m => m.Value is not null).SelectMany(m => Below(m.Value!).Prepend(m.Value!)),
        JsonArray list => list.Where(e => e is not null).SelectMany(e => Below(e!).Prepend(e!)),
        _ => [],
    };
}
