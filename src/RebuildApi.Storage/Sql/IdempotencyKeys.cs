using System.Collections.Immutable;
using System.Text.Json;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>The answers that were given under a client's key, kept in the transaction of their effect.</summary>
internal sealed class IdempotencyKeys(Statements statements, string shop, TimeProvider time, TimeSpan keep)
{
    private const string Known =
        "SELECT COUNT(*) FROM idempotency WHERE shop = @shop AND actor = @actor AND key = @key AND created >= @oldest";

    private const string Find =
        """
        SELECT operation, request_sha256 AS requestSha256, status, content_type AS contentType, headers, body FROM idempotency
        WHERE shop = @shop AND actor = @actor AND key = @key AND created >= @oldest
        """;

    private const string Insert =
        """
        INSERT INTO idempotency (shop, actor, key, operation, request_sha256, status, content_type, headers, body, created)
        VALUES (@shop, @actor, @key, @operation, @requestSha256, @status, @contentType, @headers, @body, @created)
        ON CONFLICT (shop, actor, key) DO UPDATE SET operation = @operation, request_sha256 = @requestSha256, status = @status,
            content_type = @contentType, headers = @headers, body = @body, created = @created
        """;

    private static readonly TimeSpan BetweenSweeps = TimeSpan.FromHours(1);
    private DateTimeOffset _swept = DateTimeOffset.MinValue;

    private DateTimeOffset Oldest => time.GetUtcNow() - keep;

    /// <summary>The answer that this request was given before, or null.</summary>
    /// <exception cref="IdempotencyKeyReusedException">The key belongs to another request.</exception>
    public StoredAnswer? Recall(WriteRequest request)
    {
        if (request.IdempotencyKey is not { } key)
            return null;
        if (Row(request.Actor, key) is not { } row)
            return null;
        if (row.Operation != request.Operation || row.RequestSha256 != request.RequestSha256)
            throw new IdempotencyKeyReusedException(key);
        return new StoredAnswer(
            (int)row.Status, row.ContentType, row.Body,
            JsonSerializer.Deserialize(row.Headers, StoreJson.Default.ImmutableSortedDictionaryStringString)!, Replayed: true);
    }

    /// <summary>Keeps an answer under the request's key, if it has one.</summary>
    public void Keep(WriteRequest request, StoredAnswer answer)
    {
        if (request.IdempotencyKey is not { } key)
            return;
        statements.Run(
            Insert,
            ("shop", shop), ("actor", request.Actor), ("key", key), ("operation", request.Operation), ("requestSha256", request.RequestSha256),
            ("status", answer.Status), ("contentType", answer.ContentType),
            ("headers", JsonSerializer.Serialize(answer.Headers, StoreJson.Default.ImmutableSortedDictionaryStringString)),
            ("body", (answer.Kept ?? answer.Body).ToArray()), ("created", Stamp.Of(time.GetUtcNow())));
    }

    /// <summary>Forgets what is too old, at most once an hour.</summary>
    public void Sweep()
    {
        var now = time.GetUtcNow();
        if (now - _swept < BetweenSweeps)
            return;
        statements.Run("DELETE FROM idempotency WHERE shop = @shop AND created < @oldest", ("shop", shop), ("oldest", Stamp.Of(Oldest)));
        _swept = now;
    }

    // Most keys are new: whether one is known is asked with a prepared statement, and only a known one is read whole.
    private KeptAnswer? Row(string actor, string key)
    {
        var oldest = Stamp.Of(Oldest);
        return statements.Number(Known, ("shop", shop), ("actor", actor), ("key", key), ("oldest", oldest)) == 0
            ? null
            : statements.Connection.QuerySingle<KeptAnswer>(Find, new { shop, actor, key, oldest });
    }

    private sealed record KeptAnswer(string Operation, string RequestSha256, long Status, string ContentType, string Headers, byte[] Body);
}
