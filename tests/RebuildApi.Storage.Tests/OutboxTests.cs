namespace RebuildApi.Storage.Tests;

/// <summary>Outboxes remember how far each receiver has come, beside the chain and never in it.</summary>
public class OutboxTests
{
    [Fact]
    public async Task A_new_receiver_is_told_of_what_happens_after_it_was_set_up()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await Open(temp);

        var outbox = await temp.Store.Outbox("w", default);
        Assert.Equal(4, outbox!.Sequence);
        Assert.Equal(["one"], outbox.Secrets.Select(s => s.Secret));
        Assert.Null(await temp.Store.Outbox("nobody", default));
    }

    [Fact]
    public async Task What_is_noted_of_deliveries_is_no_event_and_breaks_no_chain()
    {
        await using var temp = new TempStore();
        await Open(temp);
        await temp.Write(s =>
        {
            s.Outboxes.Note(Delivery(temp, 7, DeliveryState.Dead));
            s.Outboxes.Reach("w", 7);
        });

        Assert.Single(await temp.Store.Events(0, 100, default));
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
        Assert.Equal(Delivery(temp, 7, DeliveryState.Dead), await temp.Store.Delivery("w", 7, default));
    }

    [Fact]
    public async Task A_receiver_never_goes_back()
    {
        await using var temp = new TempStore();
        await Open(temp);
        await temp.Write(s => s.Outboxes.Reach("w", 9));
        await temp.Write(s => s.Outboxes.Reach("w", 5));
        await temp.Close();

        Assert.Equal(9, (await temp.Store.Outbox("w", default))!.Sequence);
    }

    [Fact]
    public async Task A_replaced_secret_signs_until_it_ends_and_is_then_forgotten()
    {
        await using var temp = new TempStore();
        await Open(temp);
        await temp.Write(s => s.Outboxes.Replace("w", new WebhookSecret("two", temp.Time.GetUtcNow(), null), temp.Time.GetUtcNow().AddHours(1)));
        Assert.Equal(["two", "one"], (await temp.Store.Outbox("w", default))!.Secrets.Select(s => s.Secret));

        temp.Time.Advance(TimeSpan.FromHours(2));
        Assert.Equal(["two"], (await temp.Store.Outbox("w", default))!.Secrets.Select(s => s.Secret));
        await temp.Write(s => s.Outboxes.Replace("w", new WebhookSecret("three", temp.Time.GetUtcNow(), null), temp.Time.GetUtcNow().AddHours(1)));
        Assert.Equal(["three", "two"], temp.Ask("SELECT secret FROM webhook_secret ORDER BY secret"));
    }

    [Fact]
    public async Task Old_deliveries_that_went_well_are_forgotten_and_dead_ones_are_kept()
    {
        await using var temp = new TempStore();
        await Open(temp);
        await temp.Write(s => s.Outboxes.Note(Delivery(temp, 2, DeliveryState.Delivered)));
        await temp.Write(s => s.Outboxes.Note(Delivery(temp, 3, DeliveryState.Dead)));
        await temp.Write(s => s.Outboxes.Note(Delivery(temp, 2000, DeliveryState.Delivered)));

        Assert.Equal([3, 2000], (await temp.Store.Deliveries("w", null, null, 10, default)).Items.Select(d => d.Sequence));
        Assert.Equal([3], (await temp.Store.Deliveries("w", DeliveryState.Dead, null, 10, default)).Items.Select(d => d.Sequence));
        var page = await temp.Store.Deliveries("w", null, null, 1, default);
        Assert.Equal([2000], (await temp.Store.Deliveries("w", null, page.Next, 1, default)).Items.Select(d => d.Sequence));
    }

    [Fact]
    public async Task A_receiver_that_was_taken_away_leaves_nothing_behind()
    {
        await using var temp = new TempStore();
        await Open(temp);
        await temp.Write(s => s.Outboxes.Note(Delivery(temp, 2, DeliveryState.Dead)));
        await temp.Write(s => s.Outboxes.Close("w"));

        Assert.Null(await temp.Store.Outbox("w", default));
        Assert.Empty((await temp.Store.Deliveries("w", null, null, 10, default)).Items);
        Assert.Empty(temp.Ask("SELECT secret FROM webhook_secret"));
    }

    private static Task Open(TempStore temp) => temp.Write(s =>
    {
        s.Put(new Webhook("w", "Invoicing", "http://127.0.0.1:9000/", [], "Ada", temp.Time.GetUtcNow(), false, false, 0), 0);
        s.Outboxes.Open("w", new WebhookSecret("one", temp.Time.GetUtcNow(), null));
    });

    private static Delivery Delivery(TempStore temp, long sequence, DeliveryState state) =>
        new("w", sequence, temp.Time.GetUtcNow(), "unit", state, 1, temp.Time.GetUtcNow(), temp.Time.GetUtcNow(), 500, "It answered 500.");
}
