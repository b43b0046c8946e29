using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>Gathers what a check of one family finds.</summary>
/// <param name="family">Id of the family, given as the file of each diagnostic.</param>
internal sealed class FamilyReport(string family)
{
    private readonly ImmutableArray<Diagnostic>.Builder _all = ImmutableArray.CreateBuilder<Diagnostic>();

    /// <summary>What was found, in the order of the checks.</summary>
    public ImmutableArray<Diagnostic> All => _all.ToImmutable();

    /// <summary>Whether the family can't be used.</summary>
    public bool HasErrors => _all.Any(d => d.IsError);

    public void Error(string field, string code, string message) => _all.Add(new Diagnostic(family, 0, 0, field, code, message, true));

    public void Doubt(string field, string code, string message) => _all.Add(new Diagnostic(family, 0, 0, field, code, message, false));

    /// <summary>An error unless a condition holds.</summary>
    public void Require(bool condition, string field, string code, string message)
    {
        if (!condition)
            Error(field, code, message);
    }
}
