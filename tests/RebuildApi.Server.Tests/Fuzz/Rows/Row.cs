using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Fuzz.Rows;

/// <summary>One request that brings about one answer.</summary>
/// <param name="Status">The answer.</param>
/// <param name="Operation">The operation, as the document has it.</param>
/// <param name="With">What is put over the fields of the operation's example, as JSON; none for the example as it stands.</param>
/// <param name="At">What stands behind its address, or another whole one; names in braces are filled in.</param>
internal sealed record Row(int Status, string Operation, string? With = null, string At = "")
{
    /// <summary>A key that other rows send too; none for one of its own.</summary>
    public string? Key { get; init; }

    /// <summary>The tag of what the client has.</summary>
    public string? Has { get; init; }

    /// <summary>A body that is a file.</summary>
    public byte[]? File { get; init; }

    /// <summary>The whole address without its names.</summary>
    public string Address(Operation operation) => At.StartsWith('/') ? At : operation.Path + At;

    public byte[]? Body(Operation operation) => operation.Method == "get" ? null : File ?? Encoding.UTF8.GetBytes(Json(operation).ToJsonString());

    public IEnumerable<(string, string)> Headers(Operation operation)
    {
        foreach (var parameter in operation.Parameters.Where(p => (string)p["in"]! == "header").Select(p => (string)p["name"]!))
        {
            if (parameter == "Idempotency-Key")
                yield return (parameter, Key ?? OwnKey());
            else if (parameter == "If-Match")
                yield return (parameter, "*");
        }

        if (Has is not null)
            yield return ("If-None-Match", Has);
    }

    private string OwnKey() => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{Status} {Operation} {At} {With}")));

    private JsonObject Json(Operation operation)
    {
        var body = JsonNode.Parse(operation.Example ?? "{}")!.AsObject();
        foreach (var (name, value) in JsonNode.Parse(With ?? "{}")!.AsObject())
            body[name] = value?.DeepClone();
        return body;
    }
}
