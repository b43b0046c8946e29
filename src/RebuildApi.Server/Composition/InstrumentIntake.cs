using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>Reads what is said of an instrument. It may measure anything; the unit of its resolution says what.</summary>
public static class InstrumentIntake
{
    /// <summary>A new instrument; null with complaints.</summary>
    public static InstrumentState? Read(InstrumentRequest sent, string id, Complaints complaints)
    {
        if (Step(sent.Resolution, "/resolution", complaints) is not { } resolution)
            return null;
        var state = new InstrumentState(id, sent.Type, resolution, Step(sent.LimitOfError, "/limitOfError", complaints), sent.ErrorModel, sent.CalibrationDue)
        {
            ReferenceUncertainty = Step(sent.ReferenceUncertainty, "/referenceUncertainty", complaints),
            ExpansionPerKelvin = sent.Expansion?.PerKelvin,
            ExpansionHalfWidth = sent.Expansion?.HalfWidthPerKelvin,
        };
        return Checked(Ranged(state, sent.Range, complaints), complaints);
    }

    /// <summary>An instrument with the fields changed that were given.</summary>
    public static InstrumentState Change(InstrumentChangeRequest sent, ImmutableHashSet<string> given, InstrumentState now, Complaints complaints)
    {
        foreach (var needed in Unremovable(sent).Where(n => given.Contains(n.Name) && n.Missing))
            complaints.Add("/" + needed.Name, FieldProblems.MissingField, $"The field {needed.Name} can't be taken away.");
        var state = now with
        {
            Resolution = Step(sent.Resolution, "/resolution", complaints) ?? now.Resolution,
            LimitOfError = given.Contains("limitOfError") ? Step(sent.LimitOfError, "/limitOfError", complaints) : now.LimitOfError,
            ErrorModel = sent.ErrorModel ?? now.ErrorModel,
            CalibrationDue = given.Contains("calibrationDue") ? sent.CalibrationDue : now.CalibrationDue,
            ReferenceUncertainty = given.Contains("referenceUncertainty")
                ? Step(sent.ReferenceUncertainty, "/referenceUncertainty", complaints)
                : now.ReferenceUncertainty,
            ExpansionPerKelvin = given.Contains("expansion") ? sent.Expansion?.PerKelvin : now.ExpansionPerKelvin,
            ExpansionHalfWidth = given.Contains("expansion") ? sent.Expansion?.HalfWidthPerKelvin : now.ExpansionHalfWidth,
        };
        return Checked(given.Contains("range") ? Ranged(state, sent.Range, complaints) : state, complaints);
    }

    private static (string Name, bool Missing)[] Unremovable(InstrumentChangeRequest sent) =>
        [("name", sent.Name is null), ("resolution", sent.Resolution is null), ("errorModel", sent.ErrorModel is null)];

    private static InstrumentState Ranged(InstrumentState state, RangeRequest? range, Complaints complaints)
    {
        if (range is { Low: null, High: null })
            complaints.Add("/range", FieldProblems.MissingField, "A range has at least one end: low or high.");
        return state with
        {
            RangeLow = Points.Maybe(range?.Low, state.Resolution.Kind, "/range/low", complaints),
            RangeHigh = Points.Maybe(range?.High, state.Resolution.Kind, "/range/high", complaints),
        };
    }

    private static InstrumentState Checked(InstrumentState state, Complaints complaints)
    {
        RequireAlike(state.Resolution, state.LimitOfError, "/limitOfError", complaints);
        RequireAlike(state.Resolution, state.ReferenceUncertainty, "/referenceUncertainty", complaints);
        RequireAlike(state.Resolution, state.RangeLow, "/range/low", complaints);
        RequireAlike(state.Resolution, state.RangeHigh, "/range/high", complaints);
        if (state.RangeLow?.InSi >= state.RangeHigh?.InSi)
            complaints.Add("/range/high", FieldProblems.OutOfRange, "The range ends below where it begins.");
        return state;
    }

    private static void RequireAlike(Quantity resolution, Quantity? other, string pointer, Complaints complaints)
    {
        if (other is not null && other.Kind != resolution.Kind)
            complaints.Add(pointer + "/unit", FieldProblems.WrongDimension, "Resolution and this measure different things.");
    }

    // A step of temperature is a difference, so only kelvin-sized ones count.
    private static Quantity? Step(SentQuantity? sent, string pointer, Complaints complaints)
    {
        if (sent is null)
            return null;
        var dimension = UnitCatalogue.Find(sent.Unit)?.Dimension ?? Dimension.Length;
        var step = dimension == Dimension.Temperature ? Kelvins(sent, pointer, complaints) : Quantities.Read(sent.Value, sent.Unit, dimension, pointer, complaints);
        if (step is not null && !(step.InSi > 0))
        {
            complaints.Add(pointer + "/value", FieldProblems.OutOfRange, "The value must be greater than 0.", sent.Value.Text);
            return null;
        }

        return step;
    }

    private static Real? Kelvins(SentQuantity sent, string pointer, Complaints complaints)
    {
        var zero = UnitCatalogue.Find(sent.Unit, Dimension.Temperature) is RealUnit unit ? unit.ToSi(0) : 0;
        var one = UnitCatalogue.Find(sent.Unit, Dimension.Temperature) is RealUnit same ? same.ToSi(1) : 1;
        return Quantities.Read(sent.Value, "K", Dimension.Temperature, pointer, complaints) is { } value
            ? new Real(value.InSi * (one - zero), Dimension.Temperature)
            : null;
    }
}
