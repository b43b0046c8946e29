using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Wire;

/// <summary>Why: a code with its arguments, and the same in words.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Text">The same in words.</param>
/// <param name="Rule">The rule or limit that speaks.</param>
/// <param name="Arguments">The numbers behind it; lengths in whole nanometres where the name ends in Nm.</param>
public sealed record ReasonWire(string Code, string Text, string Rule, IReadOnlyDictionary<string, string> Arguments) : IInWords
{
    /// <summary>From the contract.</summary>
    public static ReasonWire From(Reason reason) => new(reason.Code, ReasonText.Words(reason), reason.Rule, reason.Arguments);

    /// <summary>From the contract, with everything called by the names that the family gives it.</summary>
    public static ReasonWire From(Reason reason, FamilyIndex family) => new(reason.Code, family.Say(reason), reason.Rule, reason.Arguments);

    /// <inheritdoc/>
    public string InWords() => Text;
}

/// <summary>One thing that would change a verdict.</summary>
/// <param name="Code">Stable code: <c>value-at-least</c>, <c>value-at-most</c>, <c>read-it</c>, <c>uncertainty-at-most</c>.</param>
/// <param name="At">What it is about.</param>
/// <param name="Value">The value, or the uncertainty, that turns it.</param>
/// <param name="LeadsTo">The outcome it leads to.</param>
public sealed record ChangeWire(string Code, string At, QuantityWire? Value, Outcome LeadsTo) : IInWords
{
    /// <summary>From the contract.</summary>
    public static ChangeWire From(Change change, Display show) => new(change.Code, change.At, show.OfMaybe(change.Value), change.LeadsTo);

    /// <inheritdoc/>
    public string InWords() => Value is { } v ? $"{Code} {v.Value.Text} {v.Unit}" : Code;
}

/// <summary>Whose rules made an answer, exactly enough to make it again.</summary>
/// <param name="Family">Family and edition.</param>
/// <param name="DeclarationSha256">Hash of the family's canonical declaration.</param>
/// <param name="HookSha256">Hash of the assembly whose code took part.</param>
/// <param name="Contract">Version of the contract.</param>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Rule">The rule.</param>
/// <param name="Plugin">The plug-in or family file that brought the family.</param>
public sealed record RuleWire(
    FamilyEditionWire Family, string DeclarationSha256, string? HookSha256, string Contract, string Engine, string Rule, RulePluginWire? Plugin)
{
    /// <summary>From the contract.</summary>
    public static RuleWire From(RuleIdentity rule) => new(
        FamilyEditionWire.From(rule.Family), rule.DeclarationSha256, rule.HookSha256, rule.Contract, rule.Engine, rule.Rule,
        rule.Plugin is { } plugin ? new RulePluginWire(plugin.Id, plugin.Version, plugin.Sha256) : null);
}

/// <summary>The plug-in or family file that brought a rule.</summary>
/// <param name="Id">The name of its folder, or of the file.</param>
/// <param name="Version">The version that it says it has.</param>
/// <param name="Sha256">The hash that was approved: of all its assemblies together, or of the file.</param>
public sealed record RulePluginWire(string Id, string Version, string Sha256);
