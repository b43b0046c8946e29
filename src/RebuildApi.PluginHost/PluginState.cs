using System.Text.Json.Serialization;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost;

/// <summary>How a plug-in stands. Only a loaded one supplies families.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<PluginState>))]
public enum PluginState
{
    /// <summary>Found and looked through; none of its code has run. An administrator must approve its hash.</summary>
    AwaitingApproval,

    /// <summary>In use.</summary>
    Loaded,

    /// <summary>Turned away by a rule of the host before any of its code ran, or with nothing usable in what it declared.</summary>
    Refused,

    /// <summary>Approved, but it broke while it was being loaded.</summary>
    Failed,

    /// <summary>Its families stand, but its rules in code are not called for a while, because they kept failing.</summary>
    Suspended,

    /// <summary>Its folder is gone; what it supplied is no longer used.</summary>
    Removed,
}
