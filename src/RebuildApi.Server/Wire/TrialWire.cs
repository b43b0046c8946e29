using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>A clearance read directly with exactly these parts and pieces fitted.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Clearance">The clearance.</param>
/// <param name="Parts">The parts that were fitted.</param>
/// <param name="Pieces">The selective pieces that were fitted.</param>
/// <param name="Load">The load it was read under.</param>
/// <param name="Gap">The readings.</param>
/// <param name="Instrument">Id of the instrument.</param>
/// <param name="Method">The method.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Supersedes">The trial it corrects.</param>
public sealed record TrialWire(
    string Id,
    string Clearance,
    ImmutableArray<FittedPartWire> Parts,
    ImmutableArray<FittedPieceWire> Pieces,
    QuantityWire? Load,
    ImmutableArray<ReadingWire> Gap,
    string? Instrument,
    string? Method,
    string Person,
    string Bench,
    DateTimeOffset Time,
    string? Supersedes)
{
    /// <summary>From the contract.</summary>
    public static TrialWire From(TrialAssembly t, Display show) => new(
        t.Id,
        t.Loop,
        [.. t.Fitted.Select(f => new FittedPartWire(f.Position, f.Component, f.Revision))],
        [.. t.Pieces.Select(p => new FittedPieceWire(p.Position, p.Series, p.Member, show.Length(p.Thickness)))],
        t.Load is { } load ? show.Si(load, Dimension.Force) : null,
        [.. t.Gap.Select(r => ReadingWire.From(r, Dimension.Length, show))],
        t.Taken.Instrument, t.Taken.Method, t.Taken.Person, t.Taken.Bench, t.Taken.At, t.Supersedes);
}

/// <summary>A part that was in a trial assembly.</summary>
/// <param name="Position">Where.</param>
/// <param name="Component">The part.</param>
/// <param name="Revision">Its revision at the time.</param>
public sealed record FittedPartWire(string Position, string Component, int Revision) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => $"{Position}: {Component}";
}

/// <summary>A selective piece that was in a trial assembly.</summary>
/// <param name="Position">Where it sat.</param>
/// <param name="Series">Its series.</param>
/// <param name="Member">Which member it is sold as.</param>
/// <param name="Thickness">Its thickness as read, or the nominal one.</param>
public sealed record FittedPieceWire(string Position, string Series, string Member, QuantityWire Thickness) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => $"{Position}: {Member}";
}

/// <summary>One trial assembly from JSON, or all those of a filled-in sheet.</summary>
/// <param name="Trials">The trials; all are stored or none.</param>
public sealed record TrialBatch(ImmutableArray<TrialRequest> Trials) : IFromSheet<TrialBatch, TrialRequest>
{
    /// <inheritdoc/>
    public static (TrialBatch Value, ImmutableArray<string> Pointers) FromJson(TrialRequest json) => (new([json]), [""]);

    /// <inheritdoc/>
    public static (TrialBatch Value, ImmutableArray<string> Pointers) FromSheet(ImmutableArray<SheetRow> rows, Complaints complaints)
    {
        var own = rows.Where(r => r.Is("trial") && r.IsFilled).ToArray();
        if (own.Length == 0)
            complaints.Add("row/2", FieldProblems.BadCount, "No row holds a trial.");
        return (new([.. own.Select(r => TrialRequest.FromRow(r, complaints))]), [.. own.Select(r => r.Pointer)]);
    }
}

/// <summary>A clearance read directly.</summary>
/// <param name="Clearance">The clearance.</param>
/// <param name="Readings">The readings of the gap, at three or more equal angles; tight when there is no gap at all.</param>
/// <param name="Pieces">The selective pieces that were fitted.</param>
/// <param name="Parts">Parts that were fitted other than those that stand in the unit.</param>
/// <param name="Load">The load it was read under.</param>
/// <param name="Instrument">Id of the instrument.</param>
/// <param name="Method">The method.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When.</param>
/// <param name="Temperature">Temperature of the parts.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
/// <param name="Supersedes">The trial it corrects.</param>
public sealed record TrialRequest(
    [Id] string Clearance,
    [Entries(1, 36)] ImmutableArray<ReadingRequest> Readings,
    [Entries(0, 20)] ImmutableArray<PieceRequest>? Pieces = null,
    [Entries(0, 50)] ImmutableArray<FittedPartRequest>? Parts = null,
    [Of(Dimension.Force)] SentQuantity? Load = null,
    [Id] string? Instrument = null,
    [Words(60)] string? Method = null,
    [Words(100)] string? Person = null,
    [Words(100)] string? Bench = null,
    DateTimeOffset? Time = null,
    [Of(Dimension.Temperature)] SentQuantity? Temperature = null,
    [Id] string? Id = null,
    [Id] string? Supersedes = null)
{
    /// <summary>From a row of a sheet.</summary>
    public static TrialRequest FromRow(SheetRow row, Complaints complaints)
    {
        var gap = SheetRow.Values.Where(row.Cells.ContainsKey)
            .SelectMany(c => ReadingCell.Read(row[c]!, row["unit"], $"{row.Pointer}/{c}", complaints));
        var pieces = row["piece"]?.Split('+', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(p => new PieceRequest(p));
        return new(row["id"] ?? "", [.. gap], pieces?.ToImmutableArray(), Instrument: row["instrument"], Person: row.Person, Bench: row.Bench);
    }

    /// <summary>How it was taken.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public TakenSaid Taken => new(Instrument, Method, Person, Bench, Time, Temperature);
}

/// <summary>A selective piece that was fitted.</summary>
/// <param name="Member">Which member of its series it is sold as.</param>
/// <param name="Position">Where it sat; needed only where the clearance has several places for pieces.</param>
/// <param name="Thickness">Its thickness as read; the nominal one when it was not.</param>
/// <param name="Series">Its series, which the place settles already; checked when it is said.</param>
public sealed record PieceRequest([Id] string Member, [Id] string? Position = null, [Of(Dimension.Length)] SentQuantity? Thickness = null, [Id] string? Series = null);

/// <summary>A part that was fitted.</summary>
/// <param name="Position">Where; the second of several like parts has <c>#2</c> behind it.</param>
/// <param name="Component">The part.</param>
public sealed record FittedPartRequest([Words(70)] string Position, [Id] string Component);

/// <summary>What came of a batch of trial assemblies.</summary>
/// <param name="Stored">The trials, as they are kept.</param>
/// <param name="Found">Parts that were not recorded before and are now, since they were fitted.</param>
/// <param name="UnitVersion">The version of the unit after it.</param>
/// <param name="Doubts">Readings that look like slips; they are stored as sent, and to be read again.</param>
public sealed record TrialBatchWire(ImmutableArray<TrialWire> Stored, ImmutableArray<ComponentWire> Found, long UnitVersion, ImmutableArray<DoubtWire> Doubts);
