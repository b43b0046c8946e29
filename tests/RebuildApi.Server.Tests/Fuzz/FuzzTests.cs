using System.Globalization;
using RebuildApi.Server.Tests.Kit;
using Xunit.Abstractions;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>
/// Random requests of the right shape and broken ones, to every operation of the document, from a seed: no fault of the service, and every answer is
/// one that the document promises. <c>scripts/soak/fuzz</c> runs the long form.
/// </summary>
public sealed class FuzzTests(ITestOutputHelper output)
{
    private static readonly int Rounds = Setting("FUZZ_ROUNDS", 6);
    private static readonly int Seed = Setting("FUZZ_SEED", 20260302);

    // Each of these works for a good part of a second.
    internal static readonly string[] Slow = ["/plans", "/trade-off", "/allocations", "/validate", "/monte-carlo", "/settling", "/diagnosis", "/candidates", "/judgements", "/backups", "/backups/{backup}", "/audit/verification"];

    [Fact]
    public async Task Random_requests_are_answered_as_the_document_says()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var shop = await PlayedShop.Play(http);
        await OtherShop.Open(server.Database);
        var document = await ApiDocument.Of(http);
        var check = new AnswerCheck(document);
        var faults = new List<string>();
        var sent = 0;
        foreach (var operation in document.Operations)
        {
            var maker = new RequestMaker(document, shop, new Random(HashCode(operation)));
            var rounds = Slow.Any(s => operation.Path.EndsWith(s, StringComparison.Ordinal)) ? Math.Max(1, Rounds / 6) : Rounds;
            for (var round = 0; round < rounds; round++, sent++)
            {
                if (await Fault(http, operation, maker, check) is { } fault)
                    faults.Add(fault);
            }
        }

        output.WriteLine($"seed {Seed}: {sent} requests, {check.Seen.Count} kinds of answers, {faults.Count} faults");
        Assert.True(faults.Count == 0, string.Join("\n\n", faults.Distinct().Take(25)));
    }

    private static async Task<string?> Fault(HttpClient http, Operation operation, RequestMaker maker, AnswerCheck check)
    {
        using var request = maker.Of(operation);
        using var late = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        using var answer = await http.SendAsync(request, late.Token);
        if (await check.Fault(operation, answer) is not { } fault)
            return null;
        var body = request.Content is null ? "" : await request.Content.ReadAsStringAsync();
        return $"{operation} {request.RequestUri} {(body.Length > 400 ? body[..400] : body)}\n    {fault}";
    }

    // The same requests for an operation whatever else the document holds.
    private static int HashCode(Operation operation) => operation.ToString().Aggregate(Seed, (hash, c) => unchecked((hash * 31) + c));

    private static int Setting(string name, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? value : usual;
}
