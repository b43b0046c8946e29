using System.Text.Json;

namespace RebuildApi.Contracts.Tests;

public sealed class RoundTripTests
{
    public static TheoryData<string> Records => [.. SampleRecord.Types.Select(t => t.Name)];

    [Theory]
    [MemberData(nameof(Records))]
    public void A_record_comes_back_from_JSON_with_everything_it_had(string name)
    {
        var type = SampleRecord.Types.Single(t => t.Name == name);
        var sample = SampleRecord.Of(type);
        var shape = ContractJson.Default.GetTypeInfo(type);
        Assert.NotNull(shape);

        var written = JsonSerializer.Serialize(sample, shape);
        var read = JsonSerializer.Deserialize(written, shape);

        Assert.Equal(written, JsonSerializer.Serialize(read, shape));
        Assert.DoesNotContain("null", written, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"id":"a","semVer":"1.0.0","more":1}""")]
    [InlineData("""{"id":"a"}""")]
    [InlineData("""{"id":"a","id":"b","semVer":"1.0.0"}""")]
    [InlineData("""{"id":null,"semVer":"1.0.0"}""")]
    public void JSON_with_more_less_or_doubled_members_is_not_read(string json) =>
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize(json, ContractJson.Default.FamilyVersion));

    [Fact]
    public void A_policy_written_before_overdue_instruments_had_a_rule_flags_them()
    {
        const string Written = """{"version":"1","decision":"guarded","probability":0.95,"duty":"ordinary","limits":[]}""";

        var policy = JsonSerializer.Deserialize(Written, ContractJson.Default.Policy)!;

        Assert.Equal((OverdueRule.Flag, null), (policy.Overdue, policy.ByCriticality));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("\"good\"")]
    public void An_outcome_is_read_by_name_only(string json) =>
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize(json, ContractJson.Default.Outcome));
}
