using System.Collections.Immutable;
using Microsoft.Net.Http.Headers;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Results;

/// <summary>Further forms that an address without a suffix gives when Accept asks for them (RFC 9110, 12.5.1). JSON comes where nothing is asked for, or several are wanted alike.</summary>
/// <param name="Forms">The forms besides JSON.</param>
public sealed record Offer(params ImmutableArray<ListForm> Forms)
{
    /// <summary>The form that a request asks for: that of its suffix, or else that of its Accept.</summary>
    /// <exception cref="ProblemException">It accepts none of those offered.</exception>
    public static ListForm Of(HttpContext http)
    {
        var metadata = http.GetEndpoint()!.Metadata;
        var form = metadata.GetRequiredMetadata<ListForm>();
        if (form != ListForm.Json || metadata.GetMetadata<Offer>() is not { } offer)
            return form;
        // Whatever comes of it, a problem too, hangs on what is accepted.
        http.Response.OnStarting(() =>
        {
            http.Response.Headers.Append(HeaderNames.Vary, HeaderNames.Accept);
            return Task.CompletedTask;
        });
        return offer.Best(http.Request.GetTypedHeaders().Accept) ?? throw None(http, [ListForm.Json, .. offer.Forms]);
    }

    private ListForm? Best(IList<MediaTypeHeaderValue> accepted)
    {
        if (accepted.Count == 0)
            return ListForm.Json;
        var best = Forms.Prepend(ListForm.Json).Select(f => (Form: f, Quality: QualityOf(f, accepted))).MaxBy(f => f.Quality);
        return best.Quality > 0 ? best.Form : null;
    }

    /// <summary>The quality that the most exact range which covers it gives to a form; 0 where none covers it.</summary>
    private static double QualityOf(ListForm form, IList<MediaTypeHeaderValue> accepted)
    {
        var type = new MediaTypeHeaderValue(form.MediaType);
        var range = accepted.Where(a => type.MediaType.Equals(a.MediaType, StringComparison.OrdinalIgnoreCase) || (a.MatchesAllSubTypes && Covers(a, type)))
            .MaxBy(a => a.MatchesAllTypes ? 0 : a.MatchesAllSubTypes ? 1 : 2);
        return range is null ? 0 : range.Quality ?? 1;
    }

    private static bool Covers(MediaTypeHeaderValue range, MediaTypeHeaderValue type) => range.MatchesAllTypes || range.Type.Equals(type.Type, StringComparison.OrdinalIgnoreCase);

    private static ProblemException None(HttpContext http, ImmutableArray<ListForm> offered)
    {
        var (got, types) = (http.Request.Headers.Accept.ToString(), offered.Select(f => f.MediaType).ToImmutableArray());
        return new ProblemException(Problems.NotAcceptable, $"Offered here: {string.Join(", ", types)}.",
            [new FieldError("header/Accept", FieldProblems.NotAllowed.Code, "None of these media types is given here.", got.Length > 100 ? got[..100] : got, types)]);
    }
}
