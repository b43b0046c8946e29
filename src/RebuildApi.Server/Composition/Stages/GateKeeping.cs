using System.Collections.Immutable;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Stages;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>Holds a request to pass against its gate.</summary>
public static class GateKeeping
{
    /// <summary>How each requirement is answered.</summary>
    /// <exception cref="ProblemException">One is not met and not left out rightly; the errors name each with what to do.</exception>
    public static ImmutableArray<GateAnswer> Pass(ImmutableArray<Held> gate, StageRequest sent)
    {
        var complaints = new Complaints();
        var left = Left(gate, sent, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        var missing = gate.Where(h => !h.IsMet && !left.ContainsKey(h.Of.Id)).ToArray();
        // A list of complaints is cut at some length: each requirement is named before any of them is told in full.
        foreach (var held in missing)
            Complain(held, held.Unmet[0], complaints);
        foreach (var (held, unmet) in missing.SelectMany(h => h.Unmet.Skip(1), (h, u) => (h, u)))
            Complain(held, unmet, complaints);
        complaints.ThrowIfAny(Problems.GateNotMet);
        return [.. gate.Select(h => Answer(h, left.GetValueOrDefault(h.Of.Id)))];
    }

    private static Dictionary<string, LeftOut> Left(ImmutableArray<Held> gate, StageRequest sent, Complaints complaints)
    {
        var left = new Dictionary<string, LeftOut>(StringComparer.Ordinal);
        foreach (var (said, i) in (sent.NotAvailable ?? []).Select((n, i) => (n, i)))
            Take(new LeftOut(said.Requirement, "not-available", said.Reason, sent.Person), Leave.NotAvailable, Pointer.Entry("/notAvailable", i));
        foreach (var (said, i) in (sent.Exceptions ?? []).Select((e, i) => (e, i)))
            Take(new LeftOut(said.Requirement, "excepted", said.Reason, said.Person), Leave.Exception, Pointer.Entry("/exceptions", i));
        return left;

        void Take(LeftOut said, Leave way, string pointer)
        {
            var held = gate.FirstOrDefault(h => h.Of.Id == said.Requirement);
            if (held is null)
                complaints.AddUnknown(pointer + "/requirement", FieldProblems.UnknownSubject, $"This gate does not ask for {said.Requirement}.", said.Requirement, [.. gate.Select(h => h.Of.Id)]);
            else if (held.IsMet)
                complaints.Add(pointer, FieldProblems.Contradiction, $"{held.Of.Name}: it is met, nothing is to be left out.", said.Requirement);
            else if (held.Of.Leave != way || !held.MayLeave)
                complaints.Add(pointer, FieldProblems.NotAllowed, WhyNot(held), said.Requirement);
            else if (!left.TryAdd(said.Requirement, said))
                complaints.Add(pointer, FieldProblems.DuplicateField, $"{said.Requirement} is left out twice.", said.Requirement);
        }
    }

    private static string WhyNot(Held held) =>
        held.Of.Leave == Leave.NotAvailable ? "Say under notAvailable why it could not be had."
        : held.Of.Leave == Leave.Exception && held.Unmet.Any(u => u.IsSafety) ? "A person can be hurt: there is no exception."
        : held.Of.Leave == Leave.Exception ? "The shop's policy allows no exception here."
        : "There is no exception to this.";

    private static void Complain(Held held, Unmet unmet, Complaints complaints) =>
        complaints.Add($"requirement/{held.Of.Id}", FieldProblems.UnmetRequirement, unmet.Words, unmet.Subject, null, unmet.Fix);

    private static GateAnswer Answer(Held held, LeftOut? left) => left is null
        ? new(held.Of.Id, "met", null, null, [])
        : new(held.Of.Id, left.State, left.Reason, left.Person, [.. held.Unmet.Select(u => u.Subject).OfType<string>()]);

    private sealed record LeftOut(string Requirement, string State, string Reason, string Person);
}
