using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Measuring instruments and their calibration.</summary>
public static class InstrumentEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapInstruments(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("instruments");
        group.Make("/instruments", Register, "registerInstrument", "Register an instrument",
                "Its resolution and limit of error go into the uncertainty of everything that is read with it.")
            .Fails(Problems.InvalidContent, Problems.DuplicateId)
            .Example("""
                { "id": "mic-25", "name": "Micrometer 0-25", "type": "outside-micrometer", "resolution": { "value": 0.001, "unit": "mm" },
                  "limitOfError": { "value": 0.004, "unit": "mm" }, "calibrationDue": "2027-01-31" }
                """);
        group.List<ListOf<InstrumentWire>>("/instruments", List, "listInstruments", "List instruments", "Instruments in the order of their ids.");
        group.Read("/instruments/{instrument}", Get, "getInstrument", "Get an instrument", "One instrument; its ETag is what a change must name.")
            .InUnits().Fails(Problems.UnknownInstrumentId);
        group.Change("/instruments/{instrument}", Change, "changeInstrument", "Change an instrument",
                "Changes the fields that are sent. Verdicts are worked out anew with it; judgements that someone relied on keep what stood then.")
            .Fails(Problems.UnknownInstrumentId, Problems.InvalidContent)
            .Example("""{ "calibrationDue": "2028-01-31" }""");
    }

    private static async Task<CreatedAnswer<InstrumentWire>> Register(
        Body<InstrumentRequest> body, Asked asked, IStore store, IIdSource ids, CancellationToken cancellation)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        var resolution = Step(sent.Resolution, "/resolution", complaints);
        var error = Step(sent.LimitOfError, "/limitOfError", complaints);
        RequireAlike(resolution, error, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        var state = new InstrumentState(sent.Id ?? ids.Next(), sent.Type, resolution!, error, sent.ErrorModel, sent.CalibrationDue);
        var answer = await store.Write(body.Request, session =>
        {
            if (session.Instrument(state.Id) is not null)
                throw new DuplicateIdException("instrument", state.Id);
            var put = session.Put(new Instrument(state, sent.Name, 0), null);
            return Answer.Created("/v1/instruments/" + state.Id, InstrumentWire.From(put, asked.Show), Etags.Of(Etags.Instrument, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static Listing<InstrumentWire, ListOf<InstrumentWire>> List(Asked asked, IStore store)
    {
        PageReader<Instrument> pages = store.Instruments;
        return new(pages.Select(i => InstrumentWire.From(i, asked.Show)), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<InstrumentWire>> Get(string instrument, Asked asked, IStore store, CancellationToken cancellation)
    {
        var found = await store.Instrument(instrument, cancellation) ?? throw Unknown();
        return new(InstrumentWire.From(found, asked.Show), Etags.Of(Etags.Instrument, found.Version));
    }

    private static async Task<ChangedAnswer<InstrumentWire>> Change(
        string instrument, HttpContext http, Body<InstrumentChangeRequest> body, Asked asked, IStore store, CancellationToken cancellation)
    {
        var expected = Writes.ExpectedVersion(http, Etags.Instrument);
        var answer = await store.Write(body.Request, session =>
        {
            var now = session.Instrument(instrument) ?? throw Unknown();
            if (expected is { } seen && seen != now.Version)
                throw Conflict(now, seen, asked.Show);
            var put = session.Put(Apply(body, now), expected);
            return Answer.Changed(InstrumentWire.From(put, asked.Show), Etags.Of(Etags.Instrument, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static Instrument Apply(Body<InstrumentChangeRequest> body, Instrument now)
    {
        var (sent, given) = (body.Value, body.Given);
        var complaints = new Complaints();
        foreach (var needed in Unremovable(sent).Where(n => given.Contains(n.Name) && n.Missing))
            complaints.Add("/" + needed.Name, FieldProblems.MissingField, $"The field {needed.Name} can't be taken away.");
        var resolution = Step(sent.Resolution, "/resolution", complaints) ?? now.State.Resolution;
        var error = given.Contains("limitOfError") ? Step(sent.LimitOfError, "/limitOfError", complaints) : now.State.LimitOfError;
        RequireAlike(resolution, error, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        var state = now.State with
        {
            Resolution = resolution,
            LimitOfError = error,
            ErrorModel = sent.ErrorModel ?? now.State.ErrorModel,
            CalibrationDue = given.Contains("calibrationDue") ? sent.CalibrationDue : now.State.CalibrationDue,
        };
        return now with { State = state, Name = sent.Name ?? now.Name };
    }

    private static (string Name, bool Missing)[] Unremovable(InstrumentChangeRequest sent) =>
        [("name", sent.Name is null), ("resolution", sent.Resolution is null), ("errorModel", sent.ErrorModel is null)];

    // An instrument may measure anything; its unit says what. A step of temperature is a difference, so only kelvin-sized ones count.
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

    private static void RequireAlike(Quantity? resolution, Quantity? error, Complaints complaints)
    {
        if (resolution is not null && error is not null && resolution.Kind != error.Kind)
            complaints.Add("/limitOfError/unit", FieldProblems.WrongDimension, "Resolution and limit of error measure different things.");
    }

    private static ProblemException Conflict(Instrument now, long seen, Display show) => new(Problems.VersionConflict, $"The instrument is at version {now.Version}, not {seen}.")
    {
        Extras = new Dictionary<string, object> { ["currentVersion"] = now.Version, ["yourVersion"] = seen, ["current"] = InstrumentWire.From(now, show) }.ToExtras(),
        Headers = ImmutableSortedDictionary<string, string>.Empty.Add("ETag", Etags.Of(Etags.Instrument, now.Version)),
    };

    private static ProblemException Unknown() => new(Problems.UnknownInstrumentId, "No instrument of this id is registered.");
}
