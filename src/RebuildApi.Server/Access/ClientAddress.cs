using System.Net;

namespace RebuildApi.Server.Access;

/// <summary>Where a request comes from.</summary>
public static class ClientAddress
{
    /// <summary>The address, for counting.</summary>
    public static string Of(HttpContext http) => http.Connection.RemoteIpAddress?.ToString() ?? "";

    /// <summary>Whether it comes from this machine. A connection without an address is inside this process.</summary>
    public static bool IsThisMachine(HttpContext http) => http.Connection.RemoteIpAddress is not { } address || IPAddress.IsLoopback(address);
}
