using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>
/// One row of the teardown sheet: something to look at or to read, in stripping order. Filled in and saved as CSV, the same file goes back to
/// measurements, findings and trials; each takes the rows that are its own and passes over the empty ones.
/// </summary>
/// <param name="Row">Number of the row.</param>
/// <param name="Group">The assembly.</param>
/// <param name="Position">The place; the second of several like parts has <c>#2</c> behind it.</param>
/// <param name="Part">What a person calls the part.</param>
/// <param name="What"><c>inspection</c>, <c>attribute</c>, <c>reading</c> or <c>trial</c>.</param>
/// <param name="Id">The characteristic, attribute or clearance.</param>
/// <param name="Question">What to look at or to read.</param>
/// <param name="Choices">The damage classes to look for, the values to choose from, or how it may be measured.</param>
/// <param name="Low">Lowest value allowed for service.</param>
/// <param name="High">Highest value allowed for service.</param>
/// <param name="LimitUnit">Unit of the limits.</param>
/// <param name="Readings">How many readings make a measurement.</param>
/// <param name="Unit">Unit of the readings; to be filled in or changed.</param>
/// <param name="Value1">The first reading, the attribute's value, or what was seen: <c>sound</c>, or class and extent.</param>
/// <param name="Value2">The second reading.</param>
/// <param name="Value3">The third reading.</param>
/// <param name="Value4">The fourth reading.</param>
/// <param name="Value5">The fifth reading.</param>
/// <param name="Value6">The sixth reading; further ones stand behind it with a space between.</param>
/// <param name="Piece">For a trial: the piece fitted, as <c>member</c>; several with a plus between.</param>
/// <param name="Instrument">Id of the instrument.</param>
/// <param name="Person">Who; empty means as in the row before.</param>
/// <param name="Bench">Where; empty means as in the row before.</param>
/// <param name="Note">Anything else.</param>
public sealed record SheetRowWire(
    int Row,
    string Group,
    string Position,
    string Part,
    string What,
    string Id,
    string Question,
    string Choices,
    SentNumber? Low,
    SentNumber? High,
    string? LimitUnit,
    int? Readings,
    string? Unit,
    string? Value1 = null,
    string? Value2 = null,
    string? Value3 = null,
    string? Value4 = null,
    string? Value5 = null,
    string? Value6 = null,
    string? Piece = null,
    string? Instrument = null,
    string? Person = null,
    string? Bench = null,
    string? Note = null);
