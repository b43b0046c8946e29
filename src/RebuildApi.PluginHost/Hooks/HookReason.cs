using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Hooks;

/// <summary>Reasons for what a hook could not say.</summary>
internal static class HookReason
{
    /// <summary>A reason that names plug-in and hook, and whatever else its words need.</summary>
    public static Reason Of(string code, string plugin, string hook, params (string Name, string Value)[] more)
    {
        var arguments = ImmutableSortedDictionary<string, string>.Empty.Add("plugin", plugin).Add("hook", hook);
        return new Reason(code, arguments.AddRange(more.Select(m => KeyValuePair.Create(m.Name, m.Value))), hook);
    }

    /// <summary>No plug-in in use supplies that hook for that family.</summary>
    public static Reason NotAvailable(string family, string hook) =>
        new("hook-not-available", ImmutableSortedDictionary<string, string>.Empty.Add("family", family).Add("hook", hook), hook);
}
