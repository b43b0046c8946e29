using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>
/// A plug-in that reads families written as files. The host hands it each file's bytes; it never opens a file itself. The class is an
/// <see cref="IFamilyPlugin"/> too, which says who it is; it need not declare a family of its own.
/// </summary>
public interface IFamilyReader
{
    /// <summary>Reads one file. Never throws for bad content: it says what is wrong and where.</summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="utf8">The file's bytes.</param>
    ReadResult Read(string fileName, ReadOnlyMemory<byte> utf8);
}

/// <summary>What came of reading a family file.</summary>
/// <param name="Family">The family, when there was no error.</param>
/// <param name="Diagnostics">What is wrong or doubtful.</param>
public sealed record ReadResult(Family? Family, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>Where the parts of the family stand in the file, so that what is found later can be shown there. The deepest mark on the way to a field counts.</summary>
    public ImmutableArray<FieldMark> Marks { get; init; } = [];
}

/// <summary>Where a field of the family stands in the file.</summary>
/// <param name="Field">The field as the contract calls it: <c>loops[third-end-play].window</c>.</param>
/// <param name="Written">The field as the file calls it: <c>clearances.third-end-play.window</c>.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
public sealed record FieldMark(string Field, string Written, int Line, int Column);

/// <summary>Something wrong or doubtful in a family file.</summary>
/// <param name="File">Which file.</param>
/// <param name="Line">Line, from 1; 0 when it is of the whole file.</param>
/// <param name="Column">Column, from 1; 0 when it is of the whole line.</param>
/// <param name="Field">The field, as a path.</param>
/// <param name="Code">A stable code.</param>
/// <param name="Message">What is wrong, in plain words, and what would be right.</param>
/// <param name="IsError">Whether the family can't be used.</param>
public sealed record Diagnostic(string File, int Line, int Column, string Field, string Code, string Message, bool IsError);
