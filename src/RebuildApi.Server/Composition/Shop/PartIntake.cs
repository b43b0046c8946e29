using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Takes parts of the price list in: what they name must exist in their family, and their money be the shop's.</summary>
public sealed class PartIntake(FamilyBook families, Rates rates)
{
    /// <summary>The part; what is wrong with it is complained of.</summary>
    /// <param name="sent">What was sent.</param>
    /// <param name="at">Turns a pointer within the part into one within the request.</param>
    /// <param name="complaints">What is wrong.</param>
    public Part Take(PartRequest sent, Func<string, string> at, Complaints complaints)
    {
        var attributes = sent.Attributes ?? ImmutableSortedDictionary<string, string>.Empty;
        ShopKind.Check(families, sent.Family, sent.Kind, sent.Member, attributes, at, complaints);
        return new Part(
            sent.Id, sent.Family, sent.Kind, sent.Name, sent.Vendor, sent.VendorNumber, rates.Amount(sent.Price, at("/price"), complaints),
            rates.CheckTax(sent.Tax, at("/tax"), complaints), rates.Amount(sent.CoreDeposit, at("/coreDeposit"), complaints), sent.LeadDays, attributes,
            sent.Member, sent.Set, sent.Withdrawn, 0);
    }

    /// <summary>A part with changes.</summary>
    public Part Change(Part now, Body<PartChangeRequest> body, Complaints complaints)
    {
        var (sent, given) = (body.Value, body.Given);
        var changed = now with
        {
            Name = sent.Name ?? now.Name,
            Vendor = sent.Vendor ?? now.Vendor,
            VendorNumber = given.Contains("vendorNumber") ? sent.VendorNumber : now.VendorNumber,
            Price = sent.Price is null ? now.Price : rates.Amount(sent.Price, "/price", complaints),
            Tax = given.Contains("tax") ? rates.CheckTax(sent.Tax, "/tax", complaints) : now.Tax,
            CoreDeposit = given.Contains("coreDeposit") ? rates.Amount(sent.CoreDeposit, "/coreDeposit", complaints) : now.CoreDeposit,
            LeadDays = sent.LeadDays ?? now.LeadDays,
            Attributes = given.Contains("attributes") ? sent.Attributes ?? ImmutableSortedDictionary<string, string>.Empty : now.Attributes,
            Set = given.Contains("set") ? sent.Set : now.Set,
            Withdrawn = sent.Withdrawn ?? now.Withdrawn,
        };
        if (given.Contains("attributes"))
            ShopKind.Check(families, changed.Family, changed.Kind, changed.Member, changed.Attributes, p => p, complaints);
        return changed;
    }
}

/// <summary>Holds what the shop sells and keeps against the families.</summary>
public static class ShopKind
{
    /// <summary>Complains of a family, kind, member or attribute that is not there.</summary>
    /// <returns>The kind; none when it is not there.</returns>
    public static PartKind? Check(
        FamilyBook families, string family, string kind, string? member, IReadOnlyDictionary<string, string> attributes, Func<string, string> at, Complaints complaints)
    {
        if (families.Find(family) is not { } rules)
        {
            complaints.AddUnknown(at("/family"), FieldProblems.NotAllowed, $"No family {family} is loaded.", family, [.. families.All.Select(f => f.Family.Version.Id)]);
            return null;
        }

        if (!rules.Kinds.TryGetValue(kind, out var known))
        {
            complaints.AddUnknown(at("/kind"), FieldProblems.UnknownKind, $"{family} has no kind {kind}.", kind, rules.Kinds.Keys);
            return null;
        }

        CheckMember(rules, kind, member, at("/member"), complaints);
        foreach (var (attribute, value) in attributes)
        {
            var pointer = at(Pointer.Member("/attributes", attribute));
            AttributeCheck.Check(known, attribute, value, pointer, pointer, complaints);
        }

        return known;
    }

    private static void CheckMember(FamilyIndex rules, string kind, string? member, string pointer, Complaints complaints)
    {
        var members = rules.Family.Series.Where(s => s.Kind == kind).SelectMany(s => s.Members).Select(m => m.Id).ToHashSet(StringComparer.Ordinal);
        if (member is not null && !members.Contains(member))
            complaints.AddUnknown(pointer, FieldProblems.UnknownPiece, $"No series of {kind} has {member}.", member, members);
    }
}
