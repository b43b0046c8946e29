using System.Collections.Immutable;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Requests;

/// <summary>The time of a request runs out just when its answer is at hand: it is written whole, and not cut to have a problem put behind it.</summary>
public sealed class LateAnswerTests
{
    [Fact]
    public async Task An_answer_that_is_at_hand_is_written_whole()
    {
        Assert.Equal("[1,2]", await Answered(new Found<int[]>([1, 2])));
        PageReader<int> pages = (_, _, _) => ValueTask.FromResult(new Page<int>([7], null));
        Assert.StartsWith("""{"items":[7]""", await Answered(new Listing<int, ListOf<int>>(pages, (items, next, asOf) => new(items, next, asOf))), StringComparison.Ordinal);
        Assert.Equal("{}", await Answered(new ChangedAnswer<int[]>(new StoredAnswer(200, "application/json", "{}"u8.ToArray(), ImmutableSortedDictionary<string, string>.Empty), dryRun: false)));
    }

    private static async Task<string> Answered(IResult result)
    {
        await using var body = new MemoryStream();
        using var services = new ServiceCollection().AddSingleton(TimeProvider.System).BuildServiceProvider();
        var http = new DefaultHttpContext { RequestAborted = new CancellationToken(canceled: true), RequestServices = services };
        http.Response.Body = body;
        http.SetEndpoint(new Endpoint(null, new EndpointMetadataCollection(ListForm.Json), "a list"));
        await result.ExecuteAsync(http);
        return Encoding.UTF8.GetString(body.ToArray());
    }
}
