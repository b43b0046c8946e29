using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;
using RebuildApi.Server.Access;
using RebuildApi.Server.Backups;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Json;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Copies of everything, made while benches work, each opened and checked before it counts.</summary>
public static class BackupEndpoints
{
    /// <summary>The routes. A backup may be asked for again by its nature, so it takes no idempotency key.</summary>
    public static void MapBackups(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("backups");
        group.List<ListOf<BackupWire>>("/backups", List, "listBackups", "List backups",
            "The backups that are there, newest first, as they were found when they were made; before them the last attempt, when it failed.")
            .Needs(Scope.Administrator);
        group.MapLater(HttpMethods.Post, "/backups", Make).WithName("makeBackup").WithSummary("Make a backup")
            .WithDescription("Copies the database and the attachments as they stand at one moment, opens the copy and checks all of it. Benches go on meanwhile. A dry run makes it, checks it and removes it.")
            .Needs(Scope.Administrator).WithMetadata(QueryOption.DryRun).DisableRequestTimeout();
        group.Read("/backups/{backup}", Check, "checkBackup", "Is a backup whole?",
                "Reads all of it again: every hash, the engine's own check and the hash chain.")
            .Needs(Scope.Administrator).Fails(Problems.UnknownBackup).DisableRequestTimeout();
    }

    private static Listing<BackupWire, ListOf<BackupWire>> List(BackupDesk desk)
    {
        var failed = desk.Failed is { } f ? [BackupWire.From(f)] : Array.Empty<BackupWire>();
        return new(PagesOf.Whole([.. failed, .. desk.Shelf.List().Select(BackupWire.From)], b => b.Id), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<MadeBackup> Make(NoBody body, BackupDesk desk, CancellationToken cancellation)
    {
        var made = await desk.Make(body.Request.Actor, cancellation);
        if (body.Request.DryRun)
            Directory.Delete(made.Path, recursive: true);
        return new MadeBackup(BackupWire.From(made));
    }

    private static async Task<Found<BackupWire>> Check(string backup, BackupDesk desk, CancellationToken cancellation)
    {
        var found = desk.Shelf.List().FirstOrDefault(b => b.Name == backup)
            ?? throw new ProblemException(Problems.UnknownBackup, "There is no backup of this name.");
        return new(BackupWire.From(await Task.Run(() => desk.Shelf.Check(found.Path, ChainQuestion.Plain, cancellation), cancellation)));
    }

    private sealed class MadeBackup(BackupWire made) : IResult, IEndpointMetadataProvider
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.StatusCode = StatusCodes.Status201Created;
            httpContext.Response.Headers.Location = "/v1/backups/" + made.Id;
            return httpContext.Response.WriteAsJsonAsync(made, WireJson.Options, httpContext.RequestAborted);
        }

        public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
            builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status201Created, typeof(BackupWire), ["application/json"]));
    }
}
