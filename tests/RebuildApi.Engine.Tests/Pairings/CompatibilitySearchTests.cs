using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Pairings;

public sealed class CompatibilitySearchTests
{
    private static readonly Family s_family = FamilyBuilder.Named().Part("bearing").Part("gear").Part("sleeve")
        .Pairing(Bench.Rule("bearing-thrust", ("bearing", "bearing")).With("thrust", "both"))
        .Pairing(Bench.Rule("attributes-equal", ("first", "bearing"), ("second", "gear")).With("attribute", "vintage") with { Id = "vintage" })
        .Pairing(Bench.Rule("attributes-equal", ("first", "sleeve"), ("second", "gear")).With("attribute", "form") with { Id = "form" })
        .Family;

    private static readonly SnapshotBuilder s_unit = SnapshotBuilder.Complete(s_family).Attribute("gear", "vintage", "late").Attribute("bearing", "type", "filling-slot");

    [Fact]
    public void Candidates_come_best_first_and_those_of_another_kind_are_passed_over()
    {
        var found = Search(
            Part("b-filling", "bearing", ("type", "filling-slot"), ("vintage", "late")),
            Part("c-unseen", "bearing"),
            Part("d-right", "bearing", ("type", "deep-groove"), ("vintage", "late")),
            Part("e-sleeve", "sleeve"));

        Assert.Equal(["d-right", "c-unseen", "b-filling"], found.Select(f => f.Component.Id));
        Assert.Equal([Compatibility.Compatible, Compatibility.NotAssessed, Compatibility.Incompatible], found.Select(f => f.Outcome));
    }

    [Fact]
    public void A_candidate_says_what_to_look_at() =>
        Assert.Equal<string>(["bearing/type", "bearing/vintage"], Search(Part("c-unseen", "bearing")).Single().Settles.Select(s => s.ToString()).Order());

    [Fact]
    public void Only_rules_of_the_position_are_judged() =>
        Assert.Equal<string>(["rule", "vintage"], Search(Part("x", "bearing")).Single().Pairings.Select(p => p.Rule));

    [Fact]
    public void What_was_seen_on_a_candidate_counts()
    {
        var seen = new Finding("f", "x", 1, new AttributeSeen("type", "deep-groove"), null, SnapshotBuilder.Taken(null), null);
        var candidate = Candidate.Of(Part("x", "bearing", ("vintage", "late"))) with { Findings = [seen] };
        Assert.Equal(Compatibility.Compatible, CompatibilitySearch.For("bearing", [candidate], Bench.Book(s_family, s_unit.Snapshot)).Single().Outcome);
    }

    [Fact]
    public void Searching_leaves_the_unit_as_it_was()
    {
        var book = Bench.Book(s_family, s_unit.Snapshot);
        var before = PairingJudge.JudgeAll(book).Select(v => v.Outcome).ToArray();
        CompatibilitySearch.For("bearing", [Candidate.Of(Part("x", "bearing", ("type", "deep-groove")))], book);
        Assert.Equal(before, PairingJudge.JudgeAll(book).Select(v => v.Outcome));
    }

    private static ImmutableArray<CandidateVerdict> Search(params Component[] parts) =>
        CompatibilitySearch.For("bearing", parts.Select(Candidate.Of), Bench.Book(s_family, s_unit.Snapshot));

    private static Component Part(string id, string kind, params (string Name, string Value)[] attributes) => new(
        id, 1, kind, Origin.Shelf, attributes.ToImmutableSortedDictionary(a => a.Name, a => a.Value), null);
}
