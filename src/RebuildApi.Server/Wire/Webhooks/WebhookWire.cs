using System.Collections.Immutable;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Webhooks;

/// <summary>A receiver that is told of what happens.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Address">Where it is told.</param>
/// <param name="Kinds">The kinds of events that it is told of; empty for all.</param>
/// <param name="Person">Who set it up.</param>
/// <param name="Made">When, UTC.</param>
/// <param name="Paused">Whether nothing is sent for now: someone said so, or the receiver answered 410.</param>
/// <param name="Reached">Number of the last event that is done with: delivered, given up or not wanted; absent in the answer of a change.</param>
/// <param name="Waiting">The delivery that failed and is tried again; absent when none is.</param>
/// <param name="Version">Grows by one with every change; the ETag carries it.</param>
public sealed record WebhookWire(
    string Id, string Name, string Address, ImmutableArray<string> Kinds, string Person, DateTimeOffset Made, bool Paused, long? Reached, DeliveryWire? Waiting, long Version)
{
    /// <summary>From the store.</summary>
    public static WebhookWire From(Webhook w, long? reached, DeliveryWire? waiting) =>
        new(w.Id, w.Name, w.Address, w.Kinds, w.Person, w.Made, w.Paused, reached, waiting, w.Version);

    /// <summary>One that was just set up or changed, so that nothing is known of its deliveries here.</summary>
    public static WebhookWire Bare(Webhook w) => From(w, null, null);
}

/// <summary>A receiver, and its secret for the only time.</summary>
/// <param name="Webhook">The receiver.</param>
/// <param name="Secret">What its deliveries are signed with; not shown again.</param>
public sealed record WebhookMadeWire(WebhookWire Webhook, string? Secret);

/// <summary>Another secret of a receiver, for the only time.</summary>
/// <param name="Secret">What its deliveries are signed with from now on; null when the request is repeated by its key.</param>
/// <param name="OldUntil">Until when they are also signed with the one before, UTC.</param>
public sealed record WebhookSecretWire(string? Secret, DateTimeOffset OldUntil);

/// <summary>A receiver to be set up.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Address">Where it is told: an address of http or https in a network or at a host that the settings allow.</param>
/// <param name="Person">Who sets it up.</param>
/// <param name="Kinds">The kinds of events that it is told of; all when there are none.</param>
/// <param name="Id">Its id, without dots; given one when there is none.</param>
public sealed record WebhookRequest(
    [Words(100)] string Name, [Words(500)] string Address, [Words(100)] string Person, [Entries(0, 100)] ImmutableArray<string>? Kinds = null, [Id] string? Id = null);

/// <summary>What of a receiver is to be changed.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Address">Where it is told.</param>
/// <param name="Kinds">The kinds of events that it is told of; none for all.</param>
/// <param name="Paused">Whether nothing is sent for now; what happens meanwhile waits.</param>
public sealed record WebhookChangeRequest(
    [Words(100)] string? Name = null, [Words(500)] string? Address = null, [Entries(0, 100)] ImmutableArray<string>? Kinds = null, bool? Paused = null);

/// <summary>How a secret is replaced.</summary>
/// <param name="Hours">For how many hours deliveries are also signed with the old one.</param>
public sealed record WebhookSecretRequest([Between(0, 168)] int Hours = 24);
