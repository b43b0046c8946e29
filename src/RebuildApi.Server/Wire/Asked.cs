using System.Reflection;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>How the caller wants to be answered.</summary>
/// <param name="Show">In which units, and in which words.</param>
/// <param name="DryRun">Whether everything is to be undone at the end.</param>
public sealed record Asked(Display Show, bool DryRun)
{
    /// <summary>Reads it; called by the framework.</summary>
    public static ValueTask<Asked?> BindAsync(HttpContext http, ParameterInfo parameter) =>
        ValueTask.FromResult<Asked?>(new Asked(Display.For(QueryText.Word(http, "units", "mm", "in")), Writes.IsDryRun(http)));
}
