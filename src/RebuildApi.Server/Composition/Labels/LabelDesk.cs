using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire.Parts;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Labels;

/// <summary>Gives codes out, and finds what bears them.</summary>
public sealed class LabelDesk(IStore store, TimeProvider time)
{
    /// <summary>The code of a unit or a part: the one that it has, or the next one.</summary>
    public async Task<StoredAnswer> Give(Body<LabelRequest> body, CancellationToken cancellation) => await store.Write(body.Request, session =>
    {
        var label = Give(session, body.Value);
        return Answer.Created("/v1/labels/" + label.Code, LabelWire.From(label));
    }, cancellation);

    /// <summary>The label that was scanned or typed.</summary>
    /// <exception cref="ProblemException">It is mistyped, or was never given out.</exception>
    public async ValueTask<PartLabel> Find(string typed, CancellationToken cancellation)
    {
        var read = LabelCode.Read(typed);
        if (read.Code is not { } code)
            throw Mistyped(typed, read.Expected);
        return await store.Find<PartLabel>(code.ToString(), cancellation) ?? throw new ProblemException(Problems.UnknownLabel, $"No unit or part bears {code}.");
    }

    private PartLabel Give(IWriteSession session, LabelRequest sent)
    {
        var complaints = new Complaints();
        if (sent.Unit is null == sent.Component is null)
            complaints.Add("", FieldProblems.Contradiction, "Exactly one of unit and component says what the label is for.");
        else if (sent.Unit is { } unit && session.Unit(unit) is null)
            complaints.Add("/unit", FieldProblems.UnknownRecord, $"There is no unit {unit}.", unit);
        else if (sent.Component is { } component && session.Component(component) is null)
            complaints.Add("/component", FieldProblems.UnknownComponent, $"There is no part {component}.", component);
        complaints.ThrowIfAny(Problems.InvalidContent);
        return session.Newest<PartLabel>(sent.Unit, sent.Component) ?? Next(session, sent);
    }

    private PartLabel Next(IWriteSession session, LabelRequest sent)
    {
        var number = (session.Newest<PartLabel>()?.Number ?? LabelCode.First - 1) + 1;
        var code = new LabelCode(sent.Unit is null ? LabelCode.OfPart : LabelCode.OfUnit, number);
        return session.Put(new PartLabel(number, code.ToString(), sent.Unit, sent.Component, time.GetUtcNow()), 0);
    }

    private static ProblemException Mistyped(string typed, char? expected)
    {
        var shown = typed.Length > 40 ? typed[..40] : typed;
        var words = expected is { } letter
            ? $"The check letter of {shown[..^1]} would be {letter}, not {shown[^1]}: a character is wrong, or two changed places."
            : "A code is U or P, at least four digits, and a check letter: U1042Z.";
        return new(Problems.MistypedLabel, words, [new FieldError("path/label", FieldProblems.NotAllowed.Code, words, shown)]);
    }
}
