using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings;

/// <summary>One relation between parts that the engine knows how to judge.</summary>
internal abstract class Template
{
    /// <summary>What it asks of a family.</summary>
    public abstract TemplateDefinition Definition { get; }

    /// <summary>Judges one part in each place.</summary>
    public abstract Assessment Judge(PairingCase parts);

    /// <summary>Exchanges of parts that might mend it, cheapest first; each is tried before it is offered.</summary>
    public virtual IEnumerable<Exchange> Exchanges(PairingCase parts) => [];

    /// <summary>What is wrong with a rule beyond what its definition tells.</summary>
    public virtual IEnumerable<TemplateProblem> CheckMore(PairingRule rule, Snapshots.FamilyIndex family) => [];

    protected static RoleDefinition Role(string name, string about) => new(name, about);

    protected static RoleDefinition MaybeRole(string name, string about) => new(name, about, Required: false);

    protected static SightDefinition Sees(string role, string name, string about, params string[] values) =>
        new(role, name, about, [.. values], null, Always: true);

    protected static SightDefinition MaySee(string role, string name, string about, params string[] values) =>
        new(role, name, about, [.. values], null, Always: false);

    protected static SightDefinition Reads(string role, string name, Dimension dimension, string about) =>
        new(role, name, about, [], dimension, Always: true);

    protected static SightDefinition MayRead(string role, string name, Dimension dimension, string about) =>
        new(role, name, about, [], dimension, Always: false);

    protected static ParameterDefinition Number(string name, Dimension dimension, string about) => new(name, dimension, about);

    protected static OptionDefinition Word(string name, string about, params string[] values) => new(name, about, [.. values]);
}
