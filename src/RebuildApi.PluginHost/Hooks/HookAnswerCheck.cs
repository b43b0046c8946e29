using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Hooks;

/// <summary>
/// Keeps of a hook's answer only what lies inside its scope. A hook may speak of the rule that bears its own id, or of rules that begin with that id
/// and a slash, each once; what it asks to look at and what it would exchange must be at its positions.
/// </summary>
internal static class HookAnswerCheck
{
    /// <summary>Reads an answer and checks it.</summary>
    /// <param name="answer">A <see cref="HookAnswer"/> as JSON.</param>
    /// <param name="scope">The hook's scope.</param>
    /// <param name="family">The family, its plug-in and hash.</param>
    /// <exception cref="PluginFault">It is no answer at all.</exception>
    public static HookAnswerResult Read(byte[] answer, HookScope scope, LoadedFamily family)
    {
        var verdicts = Parse(answer).Verdicts.GroupBy(v => v.Rule, StringComparer.Ordinal).ToList();
        var inside = verdicts.Where(g => g.Count() == 1 && IsInside(g.Single(), scope)).Select(g => Stamp(g.Single(), family));
        var outside = verdicts.Where(g => g.Count() > 1 || !IsInside(g.First(), scope))
            .Select(g => HookReason.Of("hook-outside-scope", family.Plugin, scope.Id, ("rule", PluginFault.Tame(g.Key))));
        return new HookAnswerResult([.. inside], [.. outside]);
    }

    private static HookAnswer Parse(byte[] answer)
    {
        try
        {
            var read = JsonSerializer.Deserialize(answer, ContractJson.Default.HookAnswer);
            return read is { Verdicts.IsDefault: false } ? read : throw PluginFault.Invalid("It answered nothing at all.");
        }
        catch (JsonException e)
        {
            throw PluginFault.Invalid("Its answer is not complete: " + PluginFault.Tame(e.Message));
        }
    }

    private static bool IsInside(PairingVerdict verdict, HookScope scope) =>
        (verdict.Rule == scope.Id || verdict.Rule.StartsWith(scope.Id + "/", StringComparison.Ordinal))
        && verdict.Settles.All(a => scope.Positions.Contains(a.Position))
        && verdict.Cures.SelectMany(c => c.Steps).All(s => scope.Positions.Contains(s.Position));

    private static PairingVerdict Stamp(PairingVerdict verdict, LoadedFamily family) => verdict with
    {
        Rules = new RuleIdentity(family.Family.Version, "", family.Supplier.Sha256, ContractVersion.Current, "", verdict.Rule) { Plugin = family.Supplier },
        InputsSha256 = "",
    };
}
