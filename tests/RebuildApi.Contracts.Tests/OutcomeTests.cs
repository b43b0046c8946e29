namespace RebuildApi.Contracts.Tests;

/// <summary>What nobody has assessed is never good: the value that memory starts with says so.</summary>
public sealed class OutcomeTests
{
    [Fact]
    public void An_outcome_nobody_set_is_not_assessed() => Assert.Equal(Outcome.NotAssessed, default);

    [Fact]
    public void A_compatibility_nobody_set_is_not_assessed() => Assert.Equal(Compatibility.NotAssessed, default);

    [Fact]
    public void A_disposition_nobody_set_is_undecided() => Assert.Equal(Disposition.Undecided, default);

    [Fact]
    public void An_estimate_nobody_made_rests_on_nothing() => Assert.Equal(EstimateBasis.None, default);

    [Fact]
    public void A_part_nobody_measured_is_assumed_to_have_no_value() => Assert.Equal(Distribution.None, default);
}
