using System.Collections.Immutable;
using RebuildApi.PluginHost;
using RebuildApi.Storage;

namespace RebuildApi.Server.Errors;

/// <summary>The one place where an exception becomes a problem.</summary>
public static class ExceptionMapper
{
    /// <summary>The problem that an exception stands for; <see cref="Problems.Unexpected"/> when it is a fault of this service.</summary>
    public static ProblemException ToProblem(Exception exception) => exception switch
    {
        ProblemException problem => problem,
        BadHttpRequestException bad => new ProblemException(Problems.ForStatus(bad.StatusCode), bad.Message),
        DuplicateIdException duplicate => new ProblemException(Problems.DuplicateId, duplicate.Message),
        VersionConflictException conflict => Conflict(conflict),
        IdempotencyKeyReusedException reused => new ProblemException(Problems.IdempotencyKeyReused, reused.Message),
        StorageUnavailableException storage => Storage(storage),
        UnknownCursorException cursor => QueryFault.Of("cursor", FieldProblems.BadCursor, FieldProblems.BadCursor.Cause, cursor.Cursor),
        SupersedesException supersedes => OfField("/supersedes", FieldProblems.UnknownRecord, supersedes.Message, supersedes.Supersedes),
        UnknownIdException unknown => OfField("", FieldProblems.UnknownComponent, unknown.Message, unknown.Id),
        ShopNotOpenedException shop => new ProblemException(Problems.UnknownShop, shop.Message),
        ComponentPlacedElsewhereException elsewhere => new ProblemException(Problems.PartElsewhere, elsewhere.Message),
        RevisionOutOfOrderException order => new ProblemException(Problems.RevisionConflict, order.Message),
        PluginNotFoundException plugin => new ProblemException(Problems.UnknownPlugin, plugin.Message),
        PluginChangedException changed => new ProblemException(Problems.PluginRefused, changed.Message),
        ArithmeticException => new ProblemException(Problems.NotComputable, "The numbers lead outside what can be computed."),
        OperationCanceledException => new ProblemException(Problems.Timeout, "The time allowed for this request ran out."),
        _ => new ProblemException(Problems.Unexpected, "A fault of this service, not of your request. It was logged."),
    };

    private static ProblemException OfField(string pointer, Problem kind, string message, string got) =>
        new(Problems.InvalidContent, message, [new FieldError(pointer, kind.Code, message, got)]);

    private static ProblemException Conflict(VersionConflictException conflict) => new(Problems.VersionConflict, conflict.Message)
    {
        Extras = ImmutableSortedDictionary<string, object>.Empty.Add("currentVersion", conflict.Actual).Add("yourVersion", conflict.Expected),
    };

    private static ProblemException Storage(StorageUnavailableException storage) => new(Problems.StorageUnavailable, storage.Message)
    {
        Extras = ImmutableSortedDictionary<string, object>.Empty.Add("storage", storage.Code),
        Headers = ImmutableSortedDictionary<string, string>.Empty.Add("Retry-After", "5"),
    };
}
