using System.Net;
using System.Net.Mime;
using RebuildApi.Server.Access;

namespace RebuildApi.Server.Pages;

/// <summary>A plain page that needs nothing from anywhere else.</summary>
public static class Page
{
    /// <summary>The page as an answer.</summary>
    public static IResult Of(string title, string body) => TypedResults.Text(
        $$"""
        <!doctype html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <title>{{Safe(title)}}</title>
        <style>
        body { font: 1rem/1.5 system-ui, sans-serif; max-width: 60rem; margin: 2rem auto; padding: 0 1rem; color: #1a1a1a; background: #fff }
        a { color: #0a4a8a } code, pre { background: #f2f2f2; padding: 0 .2rem } table { border-collapse: collapse; width: 100% }
        th, td { border: 1px solid #888; padding: .3rem .5rem; text-align: left; vertical-align: top }
        @media print { body { margin: 0; max-width: none } thead { display: table-header-group } tr { break-inside: avoid } }
        </style>
        </head>
        <body>
        <h1>{{Safe(title)}}</h1>
        {{body}}
        </body>
        </html>
        """,
        MediaTypeNames.Text.Html,
        System.Text.Encoding.UTF8);

    /// <summary>A route that is a page for people, outside the document. Who comes without a token is led to the sign-in page.</summary>
    public static void MapPage(this IEndpointRouteBuilder routes, string pattern, Delegate handler) =>
        routes.MapGet(pattern, handler).Needs(Scope.Read).WithMetadata(new IsPage()).ExcludeFromDescription();

    /// <summary>A page that everybody may see, with the reason.</summary>
    public static void MapOpenPage(this IEndpointRouteBuilder routes, string pattern, Delegate handler, string why) =>
        routes.MapGet(pattern, handler).Open(why).ExcludeFromDescription();

    /// <summary>Text made safe for a page.</summary>
    public static string Safe(string text) => WebUtility.HtmlEncode(text);
}
