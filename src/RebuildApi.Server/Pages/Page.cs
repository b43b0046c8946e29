using System.Net;
using RebuildApi.Server.Access;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Pages;

/// <summary>What pages share.</summary>
public static class Page
{
    /// <summary>A route that is a page for people, outside the document. Who comes without a token is led to the sign-in page.</summary>
    public static void MapPage(this IEndpointRouteBuilder routes, string pattern, Delegate handler) =>
        routes.MapLater(HttpMethods.Get, pattern, handler).Needs(Scope.Read).WithMetadata(new IsPage()).ExcludeFromDescription();

    /// <summary>A page that everybody may see, with the reason.</summary>
    public static void MapOpenPage(this IEndpointRouteBuilder routes, string pattern, Delegate handler, string why) =>
        routes.MapLater(HttpMethods.Get, pattern, handler).Open(why).ExcludeFromDescription();

    /// <summary>Text made safe for a page.</summary>
    public static string Safe(string text) => WebUtility.HtmlEncode(text);
}
