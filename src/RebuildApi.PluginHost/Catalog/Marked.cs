using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Catalog;

/// <summary>Shows what a check found in a family where it stands in the file, under the names of the file.</summary>
internal static class Marked
{
    /// <summary>The same diagnostics with line, column and the field as it is written; those that nothing in the file stands for keep their names.</summary>
    public static IEnumerable<Diagnostic> Show(ImmutableArray<Diagnostic> found, string fileName, ImmutableArray<FieldMark> marks)
    {
        var byField = new Dictionary<string, FieldMark>(StringComparer.Ordinal);
        foreach (var mark in marks)
            byField.TryAdd(mark.Field, mark);
        return found.Select(d => At(d with { File = fileName }, byField));
    }

    private static Diagnostic At(Diagnostic d, Dictionary<string, FieldMark> marks)
    {
        for (var path = d.Field; path.Length > 0; path = Parent(path))
        {
            if (marks.TryGetValue(path, out var mark))
                return d with { Line = mark.Line, Column = mark.Column, Field = mark.Written + d.Field[path.Length..] };
        }

        return d;
    }

    /// <summary>The path without its last step: <c>a[b].c</c>, <c>a[b]</c>, <c>a</c>. What stands in brackets may hold points of its own.</summary>
    private static string Parent(string path)
    {
        if (path[^1] == ']')
        {
            var depth = 0;
            for (var i = path.Length - 1; i >= 0; i--)
            {
                depth += path[i] switch { ']' => 1, '[' => -1, _ => 0 };
                if (depth == 0)
                    return path[..i];
            }
        }

        var point = path.LastIndexOf('.');
        return point < 0 ? "" : path[..point];
    }
}
