using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>A plug-in that reads families written as files. The host hands it each file's bytes; it never opens a file itself.</summary>
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
public sealed record ReadResult(Family? Family, ImmutableArray<Diagnostic> Diagnostics);

/// <summary>Something wrong or doubtful in a family file.</summary>
/// <param name="File">Which file.</param>
/// <param name="Line">Line, from 1; 0 when it is of the whole file.</param>
/// <param name="Column">Column, from 1; 0 when it is of the whole line.</param>
/// <param name="Field">The field, as a path.</param>
/// <param name="Code">A stable code.</param>
/// <param name="Message">What is wrong, in plain words, and what would be right.</param>
/// <param name="IsError">Whether the family can't be used.</param>
public sealed record Diagnostic(string File, int Line, int Column, string Field, string Code, string Message, bool IsError);
