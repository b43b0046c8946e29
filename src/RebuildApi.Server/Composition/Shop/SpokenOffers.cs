using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Parts that a plan is to take as if they could be had: an offer on the telephone, a box at the breaker's. What is wrong with them is complained of.</summary>
public sealed class SpokenOffers(FamilyIndex family, Rates rates, Complaints complaints)
{
    // A hash sign keeps the id apart from those of real parts.
    private const string Prefix = "sent#";

    /// <summary>The parts as candidates, each for the one position that it is spoken of for.</summary>
    public ImmutableArray<PlanCandidate> Of(ImmutableArray<PlanCandidateRequest> sent) => [.. sent.Select((c, i) => One(c, i)).OfType<PlanCandidate>()];

    private PlanCandidate? One(PlanCandidateRequest sent, int number)
    {
        var at = $"/candidates/{number}";
        if (!family.Positions.TryGetValue(sent.Position, out var position))
        {
            complaints.AddUnknown(at + "/position", FieldProblems.UnknownPosition, $"The family has no position {sent.Position}.", sent.Position, family.Positions.Keys);
            return null;
        }

        var id = $"{Prefix}{number + 1}";
        var part = new SpokenParts(family, complaints).Of(id, position.Kind, sent.Attributes, sent.Readings, at);
        var price = sent.Price is null ? (long?)null : rates.Amount(sent.Price, at + "/price", complaints);
        return new PlanCandidate(
            id, sent.IsNew ? PartSource.Catalogue : PartSource.Shelf,
            part with { Component = part.Component with { Origin = sent.IsNew ? Origin.New : Origin.Shelf, Label = sent.Label } }, price, sent.LeadDays, sent.Vendor, sent.IsNew ? null : 1)
        {
            Positions = [position.Id],
            Set = sent.Set,
        };
    }
}
