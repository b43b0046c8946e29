using System.Text.Json;
using System.Text.Json.Nodes;
using RebuildApi.Engine.Identity;
using RebuildApi.TestKit;

namespace RebuildApi.Contracts.Tests;

/// <summary>Two declarations are the same when their canonical hashes are, however they were written down.</summary>
public sealed class CanonicalHashTests
{
    [Fact]
    public void The_order_of_members_does_not_change_a_family_s_hash()
    {
        var family = (Family)SampleRecord.Of(typeof(Family));
        var turned = Turned(JsonSerializer.SerializeToNode(family, ContractJson.Default.Family))!.ToJsonString();

        var again = JsonSerializer.Deserialize<JsonElement>(turned);

        Assert.NotEqual(JsonSerializer.Serialize(family, ContractJson.Default.Family), turned);
        Assert.Equal(Canonical.Sha256(family), Canonical.Sha256(again));
    }

    [Fact]
    public void Two_families_made_alike_have_one_hash_though_they_are_not_equal_as_objects()
    {
        var one = FamilyBuilder.Named().Part("washer").Family;
        var other = FamilyBuilder.Named().Part("washer").Family;

        Assert.NotEqual(one, other);
        Assert.Equal(Canonical.Sha256(one), Canonical.Sha256(other));
    }

    [Fact]
    public void The_least_change_of_a_limit_changes_the_hash()
    {
        var one = FamilyBuilder.Named().Part("washer", FamilyBuilder.LengthOf("thickness", 1.500000m, 1.6m)).Family;
        var other = FamilyBuilder.Named().Part("washer", FamilyBuilder.LengthOf("thickness", 1.500001m, 1.6m)).Family;

        Assert.NotEqual(Canonical.Sha256(one), Canonical.Sha256(other));
    }

    /// <summary>
    /// What contract 1.2 added is not written where a family declares none of it: the hash is the one that contract 1.1 made of the same family (taken down from a
    /// build of it), so that verdicts and kept judgements go on naming the same rules.
    /// </summary>
    [Fact]
    public void A_family_that_declares_nothing_of_what_was_added_keeps_its_hash()
    {
        var family = FamilyBuilder.Named().Part("washer").Family;

        Assert.Equal("4e24f25ff94ddffe4359374760bdb7ab12db8f0937f024167942df1547ec114d", Canonical.Sha256(family));
        Assert.NotEqual(Canonical.Sha256(family), Canonical.Sha256(family with { Fasteners = [] }));
    }

    /// <summary>Members in reverse order, all the way down.</summary>
    private static JsonNode? Turned(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Reverse().Select(m => KeyValuePair.Create(m.Key, Turned(m.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Turned)]),
        _ => node?.DeepClone(),
    };
}
