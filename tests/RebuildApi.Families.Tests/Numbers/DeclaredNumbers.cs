using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RebuildApi.Families.Tests;

/// <summary>Every number that a family declares, and the family with one of them changed.</summary>
internal sealed class DeclaredNumbers
{
    private readonly string _text;

    public DeclaredNumbers(Family family)
    {
        _text = JsonSerializer.Serialize(family, ContractJson.Default.Family);
        var root = JsonNode.Parse(_text)!;
        Paths = [.. Walk(root, []).Where(p => p[0] is not "golden" && !IsCountOfWhatIsNotRead(root, p))];
    }

    /// <summary>Where they stand: names and indices from the root. The readings of worked cases are no rules, and left out.</summary>
    public ImmutableArray<ImmutableArray<object>> Paths { get; }

    /// <summary>Every one in so many, spread evenly over the whole family.</summary>
    public ImmutableArray<ImmutableArray<object>> Sample(int every) => [.. Paths.Where((_, i) => i % every == every / 2)];

    /// <summary>
    /// The family with the number changed each way that still makes a family: a little up, a little down, half as much again, half, double and five times as
    /// much; a zero has no half and no double: as a length it goes 0.05 mm and 0.25 mm down.
    /// </summary>
    public IEnumerable<Family> Changed(ImmutableArray<object> path) => s_moves.Select(move => Read(path, move)).OfType<Family>();

    public static string Words(ImmutableArray<object> path) => string.Join('/', path);

    private static readonly Func<decimal, bool, decimal>[] s_moves =
    [
        (n, whole) => whole ? n + Step(n) : n * 1.05m + 0.0005m,
        (n, whole) => whole ? n - Step(n) : n * 0.95m - 0.0005m,
        (n, whole) => whole ? Math.Ceiling(n * 1.5m) : n * 1.5m,
        (n, whole) => whole ? Math.Floor(n / 2) : n / 2,
        (n, _) => n == 0 ? -50_000 : n * 5,
        (n, _) => n == 0 ? -250_000 : n * 2,
    ];

    /// <summary>A length by a micrometre, a count by one.</summary>
    private static decimal Step(decimal number) => Math.Abs(number) >= 10_000 ? 1_000 : 1;

    private Family? Read(ImmutableArray<object> path, Func<decimal, bool, decimal> move)
    {
        var root = JsonNode.Parse(_text)!;
        var parent = path[..^1].Aggregate(root, (node, step) => step is int i ? node[i]! : node[(string)step]!);
        var old = (path[^1] is int at ? parent[at] : parent[(string)path[^1]])!.ToJsonString();
        var number = decimal.Parse(old, NumberStyles.Float, CultureInfo.InvariantCulture);
        var value = JsonValue.Create(move(number, !old.Contains('.', StringComparison.Ordinal) && !old.Contains('e', StringComparison.OrdinalIgnoreCase)));
        if (path[^1] is int index)
            parent[index] = value;
        else
            parent[(string)path[^1]] = value;
        try
        {
            return root.Deserialize(ContractJson.Default.Family);
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>A dimension that follows from others and has no limits is not read: the contract asks for a count all the same.</summary>
    private static bool IsCountOfWhatIsNotRead(JsonNode root, ImmutableArray<object> path) =>
        path[^1] is "minimumReadings" && path[..^1].Aggregate(root, (node, step) => step is int i ? node[i]! : node[(string)step]!) is { } c
        && c["derivedFrom"] is not null && c["service"] is null;

    private static IEnumerable<ImmutableArray<object>> Walk(JsonNode node, ImmutableArray<object> path) => node switch
    {
        JsonObject o => o.Where(p => p.Value is not null).SelectMany(p => Walk(p.Value!, path.Add(p.Key))),
        JsonArray a => a.SelectMany((n, i) => n is null ? [] : Walk(n, path.Add(i))),
        _ => node.GetValueKind() == JsonValueKind.Number ? [path] : [],
    };
}
