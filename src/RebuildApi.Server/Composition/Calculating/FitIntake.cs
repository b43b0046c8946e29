using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Fits;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>What a fit calculation was asked.</summary>
public sealed class FitIntake(FitRequest sent, Complaints complaints)
{
    private bool IsIso => sent.Hole is not null || sent.Shaft is not null;

    /// <summary>The formula that is asked for first.</summary>
    public Formula Formula => IsIso ? ClearanceFormulas.IsoFit : sent.RunningFit is not null ? ClearanceFormulas.RunningFit : ClearanceFormulas.Seat;

    /// <summary>Complains of what does not go together.</summary>
    public void Check()
    {
        if (!IsIso && sent.RunningFit is null && sent.Seat is null)
            complaints.Add("", FieldProblems.MissingField, "Send hole and shaft, or runningFit, or seat.");
        if (IsIso && (sent.Hole is null || sent.Shaft is null))
            complaints.Add(sent.Hole is null ? "/hole" : "/shaft", FieldProblems.MissingField, "A fit has a class for the hole and one for the shaft.");
        if (IsIso && sent.RunningFit is not null)
            complaints.Add("/runningFit", FieldProblems.Contradiction, "Send hole and shaft, or runningFit, not both.");
        if ((IsIso || sent.RunningFit is not null) && sent.Nominal is null)
            complaints.Add("/nominal", FieldProblems.MissingField, "Classes need a nominal size.");
        if (sent.Seat is { } seat)
            (_, _) = (Uncertainty(seat.BoreUncertainty, "bore"), Uncertainty(seat.InnerUncertainty, "inner"));
    }

    /// <summary>The fit by classes; null when none was asked for.</summary>
    public Fit? Classes()
    {
        if (sent.RunningFit is { } running)
            return AnsiFits.Of(sent.Nominal!.Length, running);
        return IsIso
            ? new Fit(
                Refusal.At("/hole", () => IsoFits.Hole(sent.Nominal!.Length, sent.Hole!)),
                Refusal.At("/shaft", () => IsoFits.Shaft(sent.Nominal!.Length, sent.Shaft!)))
            : null;
    }

    /// <summary>The measured seat; null when none was asked for.</summary>
    public SeatFit? Seat() => sent.Seat is not { } seat ? null : SeatFit.Of(
        TermValue.Exactly(seat.Bore.Length) with { StandardUncertainty = Uncertainty(seat.BoreUncertainty, "bore") },
        TermValue.Exactly(seat.Inner.Length) with { StandardUncertainty = Uncertainty(seat.InnerUncertainty, "inner") },
        seat.BoreMaterial.ToContract("bore"),
        seat.InnerMaterial.ToContract("inner"),
        seat.Temperature.Si,
        seat.MustBeTight);

    private double Uncertainty(SentQuantity? u, string name) => Differences.Read(u, Dimension.Length, $"/seat/{name}Uncertainty", complaints) ?? 0;
}
