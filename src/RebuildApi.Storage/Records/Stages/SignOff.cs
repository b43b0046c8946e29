namespace RebuildApi.Storage;

/// <summary>That a person made a check of the whole gearbox and signs for what came of it. Never edited; of several of one check the newest counts.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Check">Which: <c>interlock</c>, <c>function-test</c>.</param>
/// <param name="Passed">Whether it passed.</param>
/// <param name="Person">Who signs.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Note">What was noted, if anything.</param>
/// <param name="BuildSha256">Hash of what was fitted then; a sign-off of another build does not count.</param>
public sealed record SignOff(
    string Id, string Unit, string Check, bool Passed, string Person, string Bench, DateTimeOffset Time, string? Note, string BuildSha256) : IShopRecord<SignOff>
{
    /// <inheritdoc/>
    public static ShopTable<SignOff> Table { get; } = new("sign-off", isEdited: false, StoreJson.Default.SignOff);

    string IShopRecord<SignOff>.OfUnit => Unit;

    string IShopRecord<SignOff>.About => Check;

    long IShopRecord<SignOff>.Version => 1;

    SignOff IShopRecord<SignOff>.At(long version) => this;
}
