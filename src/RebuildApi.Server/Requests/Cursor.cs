using System.Buffers.Text;
using System.Text;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>Where a list goes on, in a form that nobody is tempted to make up.</summary>
public static class Cursor
{
    /// <summary>Writes a cursor.</summary>
    public static string Of(string after) => Base64Url.EncodeToString(Encoding.UTF8.GetBytes(after));

    /// <summary>Reads the cursor of a request; null at the beginning.</summary>
    /// <exception cref="ProblemException">It is not one that was given out.</exception>
    public static string? In(HttpContext http)
    {
        var text = QueryText.Of(http, "cursor");
        if (text is null)
            return null;
        if (text.Length > 400 || !Base64Url.IsValid(text))
            throw Bad(text);
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(Base64Url.DecodeFromChars(text));
        }
        catch (DecoderFallbackException)
        {
            throw Bad(text);
        }
    }

    /// <summary>The problem of a cursor that can't be used.</summary>
    public static ProblemException Bad(string? text) => QueryText.Wrong("cursor", FieldProblems.BadCursor, FieldProblems.BadCursor.Cause, text);
}
