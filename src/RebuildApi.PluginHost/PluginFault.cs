namespace RebuildApi.PluginHost;

/// <summary>Why a plug-in, or one call of it, does not go on. Never leaves the host: it becomes a state or a reason.</summary>
/// <param name="state">The state it comes to.</param>
/// <param name="code">The code of the reason when a hook was called.</param>
/// <param name="message">Why, in plain words.</param>
internal sealed class PluginFault(PluginState state, string code, string message) : Exception(message)
{
    private const int LongestForeignText = 300;

    /// <summary>The state it comes to.</summary>
    public PluginState State { get; } = state;

    /// <summary>The code of the reason when a hook was called.</summary>
    public string Code { get; } = code;

    /// <summary>A rule of the host turns it away.</summary>
    public static PluginFault Refused(string message) => new(PluginState.Refused, "hook-not-available", message);

    /// <summary>Its code broke.</summary>
    public static PluginFault Threw(Exception exception) =>
        new(PluginState.Failed, "hook-threw", $"{exception.GetType().Name}: {Tame(exception.Message)}");

    /// <summary>It did not answer in time.</summary>
    public static PluginFault Late(string message) => new(PluginState.Failed, "hook-late", message);

    /// <summary>It answered something that the contract does not allow.</summary>
    public static PluginFault Invalid(string message) => new(PluginState.Failed, "hook-answer-invalid", message);

    /// <summary>A plug-in's words on one line and not too many of them: they go into logs and pages.</summary>
    public static string Tame(string words)
    {
        var line = string.Concat(words.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
        return line.Length <= LongestForeignText ? line : line[..LongestForeignText] + "…";
    }
}
