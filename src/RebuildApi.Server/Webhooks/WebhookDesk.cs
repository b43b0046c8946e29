using System.Collections.Immutable;
using System.Net.Sockets;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Webhooks;
using RebuildApi.Storage;

namespace RebuildApi.Server.Webhooks;

/// <summary>Checks what a receiver is to be.</summary>
public sealed class WebhookDesk(AllowedReceivers allowed, IIdSource ids, TimeProvider time)
{
    /// <summary>The receiver as asked for.</summary>
    /// <exception cref="ProblemException">It may not be told anything, or wants what there is not.</exception>
    public async Task<Webhook> Made(WebhookRequest sent, CancellationToken cancellation)
    {
        var complaints = new Complaints();
        // Standard Webhooks puts a dot after the id of a message before it signs.
        if (sent.Id?.Contains('.', StringComparison.Ordinal) == true)
            complaints.Add("/id", FieldProblems.BadId, "The id of a receiver has no dots.", sent.Id);
        await CheckAddress(sent.Address, complaints, cancellation);
        var kinds = Checked(sent.Kinds, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        return new Webhook(sent.Id ?? ids.Next(), sent.Name, sent.Address, kinds, sent.Person, time.GetUtcNow(), Paused: false, Ended: false, 0);
    }

    /// <summary>Checks what a receiver is to become; gives what it becomes.</summary>
    /// <exception cref="ProblemException">It may not be told anything, or wants what there is not.</exception>
    public async Task<Func<Webhook, Webhook>> Changed(WebhookChangeRequest sent, CancellationToken cancellation)
    {
        var complaints = new Complaints();
        if (sent.Address is { } address)
            await CheckAddress(address, complaints, cancellation);
        var kinds = Checked(sent.Kinds, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        return w => w with { Name = sent.Name ?? w.Name, Address = sent.Address ?? w.Address, Kinds = sent.Kinds is null ? w.Kinds : kinds, Paused = sent.Paused ?? w.Paused };
    }

    private async Task CheckAddress(string address, Complaints complaints, CancellationToken cancellation)
    {
        if (!Uri.TryCreate(address, UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https") || uri.UserInfo.Length > 0 || uri.Fragment.Length > 0)
        {
            complaints.Add("/address", FieldProblems.BadText, "This is no address such as http://127.0.0.1:9000/events, with no name and password in it.", address);
            return;
        }

        try
        {
            await allowed.Resolve(uri.IdnHost, cancellation);
        }
        catch (SocketException)
        {
            complaints.Add("/address", FieldProblems.NotAllowed, $"No machine of the name {uri.IdnHost} is known.", address);
        }
        catch (ReceiverRefusedException refused)
        {
            complaints.Add("/address", FieldProblems.NotAllowed, refused.Message, address, allowed.All, "An administrator adds the network or the host to the setting.");
        }
    }

    private static ImmutableArray<string> Checked(ImmutableArray<string>? kinds, Complaints complaints)
    {
        foreach (var (i, kind) in (kinds ?? []).Index().Where(k => !StoreEvent.Kinds.Contains(k.Item)))
            complaints.AddUnknown($"/kinds/{i}", FieldProblems.NotAllowed, $"There is no kind of event {kind}.", kind, StoreEvent.Kinds);
        return [.. (kinds ?? []).Distinct()];
    }
}
