using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Options;

namespace RebuildApi.Server.Webhooks;

/// <summary>Finds the addresses of a host name.</summary>
public delegate Task<IPAddress[]> ResolveName(string host, CancellationToken cancellation);

/// <summary>
/// The networks and host names that webhooks may be sent to. A name is looked up at the very moment of connecting, and what is connected to is what
/// was looked at, so a name that changes its address between check and use leads nowhere.
/// </summary>
public sealed class AllowedReceivers
{
    private readonly ImmutableArray<IPNetwork> _networks;
    private readonly FrozenSet<string> _hosts;
    private readonly ResolveName _resolve;

    /// <summary>Reads the setting.</summary>
    /// <exception cref="InvalidOperationException">An entry is neither a network, nor an address, nor a host name.</exception>
    public AllowedReceivers(IOptions<ServerOptions> options, ResolveName resolve)
    {
        var entries = options.Value.WebhookReceivers.Select(e => e.Trim()).ToArray();
        _networks = [.. entries.Select(NetworkOf).OfType<IPNetwork>()];
        _hosts = entries.Where(e => NetworkOf(e) is null).Select(CheckedHost).ToFrozenSet(StringComparer.OrdinalIgnoreCase);
        _resolve = resolve;
        All = [.. entries];
    }

    /// <summary>The setting.</summary>
    public ImmutableArray<string> All { get; }

    /// <summary>Holds the setting against what can be used.</summary>
    /// <exception cref="InvalidOperationException">An entry is neither a network, nor an address, nor a host name.</exception>
    public static void Check(ServerOptions options) => _ = new AllowedReceivers(Options.Create(options), Dns.GetHostAddressesAsync);

    /// <summary>The addresses of a host that may be connected to.</summary>
    /// <exception cref="ReceiverRefusedException">There are none.</exception>
    /// <exception cref="SocketException">The name is not known.</exception>
    public async Task<IPAddress[]> Resolve(string host, CancellationToken cancellation)
    {
        var plain = host.Trim('[', ']');
        var found = IPAddress.TryParse(plain, out var literal) ? [literal] : await _resolve(plain, cancellation);
        var allowed = _hosts.Contains(plain) ? found : [.. found.Where(IsAllowed)];
        return allowed.Length > 0 ? allowed : throw new ReceiverRefusedException(host);
    }

    private bool IsAllowed(IPAddress address)
    {
        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return _networks.Any(n => n.Contains(plain));
    }

    private static IPNetwork? NetworkOf(string entry)
    {
        if (IPNetwork.TryParse(entry, out var network))
            return network;
        return IPAddress.TryParse(entry, out var address) ? new IPNetwork(address, address.AddressFamily == AddressFamily.InterNetwork ? 32 : 128) : null;
    }

    private static string CheckedHost(string entry) => Uri.CheckHostName(entry) == UriHostNameType.Dns
        ? entry
        : throw new InvalidOperationException($"Rebuild:WebhookReceivers has {entry}, which is no network such as 192.168.1.0/24, no address and no host name.");
}

/// <summary>A receiver lies where webhooks may not be sent to.</summary>
public sealed class ReceiverRefusedException(string host) : Exception($"{host} is not among the receivers that the setting Rebuild:WebhookReceivers allows.");
