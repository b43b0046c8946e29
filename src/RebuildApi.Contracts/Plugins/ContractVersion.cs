namespace RebuildApi.Contracts;

/// <summary>The version of this contract. A plug-in compiled against an older minor version keeps working; a newer one is refused with words.</summary>
public static class ContractVersion
{
    /// <summary>Major and minor: <c>1.0</c>.</summary>
    public static string Current { get; } = typeof(ContractVersion).Assembly.GetName().Version!.ToString(2);
}
