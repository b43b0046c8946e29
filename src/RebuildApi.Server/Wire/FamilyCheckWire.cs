using System.Collections.Immutable;
using System.Security.Cryptography;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>The text of a family file.</summary>
/// <param name="Text">The YAML.</param>
/// <param name="Name">Name for messages.</param>
public sealed record FamilyFileRequest([Words(1 << 20, Lines = true)] string Text, [Words(100)] string? Name);

/// <summary>What came of checking a family file.</summary>
/// <param name="Usable">Whether the family could be used: nothing is wrong, though something may be doubtful.</param>
/// <param name="Family">Id of the family, when it could be read.</param>
/// <param name="Version">Version of its rules, when it could be read.</param>
/// <param name="Sha256">Hash of the file, as it would be approved.</param>
/// <param name="Errors">How much is wrong.</param>
/// <param name="Doubts">How much is doubtful.</param>
/// <param name="Diagnostics">What is wrong, and what is doubtful.</param>
public sealed record FamilyCheckWire(
    bool Usable, string? Family, string? Version, string Sha256, int Errors, int Doubts, ImmutableArray<DiagnosticWire> Diagnostics)
{
    /// <summary>From what the host read.</summary>
    public static FamilyCheckWire From(ReadResult read, byte[] utf8)
    {
        var errors = read.Diagnostics.Count(d => d.IsError);
        return new(
            read.Family is not null && errors == 0, read.Family?.Version.Id, read.Family?.Version.SemVer, Convert.ToHexStringLower(SHA256.HashData(utf8)),
            errors, read.Diagnostics.Length - errors, [.. read.Diagnostics.Select(DiagnosticWire.From)]);
    }
}

/// <summary>Something wrong or doubtful in a family file.</summary>
/// <param name="File">Which file.</param>
/// <param name="Line">Line, from 1; 0 when it is of the whole file.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Field">The field, as a path by the names of the file.</param>
/// <param name="Code">A stable code.</param>
/// <param name="Severity"><c>error</c> when the family can't be used, else <c>doubt</c>.</param>
/// <param name="Message">What is wrong, and what would be right.</param>
public sealed record DiagnosticWire(string File, int Line, int Column, string Field, string Code, string Severity, string Message)
{
    /// <summary>From the contract.</summary>
    public static DiagnosticWire From(Diagnostic d) => new(d.File, d.Line, d.Column, d.Field, d.Code, d.IsError ? "error" : "doubt", d.Message);
}
