using System.Collections.Immutable;

namespace RebuildApi.Server.Errors;

/// <summary>What can be wrong with one field. Each stands in the errors of a whole-request problem.</summary>
public static class FieldProblems
{
    public static readonly Problem UnknownField = Of("unknown-field", "There is no such field",
        "A field is not one that this address knows. Nothing is passed over in silence, since a misspelt field would be lost.", "Use the name given as the nearest, or leave it out.");

    public static readonly Problem MissingField = Of("missing-field", "A field is missing", "A field that is needed was not sent.", "Send it.");

    public static readonly Problem DuplicateField = Of("duplicate-field", "A field is there twice",
        "The same name stands twice in one object, so that nobody can say which counts.", "Send it once.");

    public static readonly Problem WrongType = Of("wrong-type", "A field has the wrong type", "Text was sent for a number, a list for an object, and so on.", "Send the type named.");

    public static readonly Problem BareNumber = Of("bare-number", "A number without its unit",
        "A bare 0.015 may be inches or millimetres; a slip of that sort costs a gearbox.", "Send value and unit: { \"value\": 0.015, \"unit\": \"in\" }.");

    public static readonly Problem UnknownUnitOfMeasure = Of("unknown-unit-of-measure", "There is no such unit of measure",
        "The unit is not one that the service reads.", "Lengths: mm, um, in, thou. Others are listed under allowed.");

    public static readonly Problem WrongDimension = Of("wrong-dimension", "The unit measures something else",
        "A torque was sent for a length, or the like.", "Send a unit of the dimension named.");

    public static readonly Problem TooManyDigits = Of("too-many-digits", "More digits than can be kept",
        "Lengths are kept as whole nanometres, exactly; the value has digits beyond.", "Round it to what was read.");

    public static readonly Problem OutOfRange = Of("out-of-range", "A value is out of range", "The value is larger or smaller than can be kept or makes sense.", "Send a value within the range named.");

    public static readonly Problem NotAllowed = Of("not-allowed", "A value is not one of those allowed", "The list of values is closed.", "Send one of those under allowed.");

    public static readonly Problem BadText = Of("bad-text", "Text that can't be kept", "Text is empty, too long, or holds control characters.", "Send plain text of the length named.");

    public static readonly Problem BadId = Of("bad-id", "An id that can't be used",
        "Ids have 1 to 64 letters, digits, dots, hyphens and underscores, and begin with a letter or digit.", "Send such an id, or none to be given one.");

    public static readonly Problem BadTime = Of("bad-time", "A time that can't be read", "Times are ISO 8601 with an offset; dates are year-month-day.", "Send 2026-03-02T12:00:00Z or 2026-03-02.");

    public static readonly Problem BadCount = Of("bad-count", "Too few or too many", "A list has fewer or more entries than make sense here.", "Send as many as the message says.");

    public static readonly Problem Contradiction = Of("contradiction", "Fields that do not go together",
        "Two fields exclude each other, or one of several is needed.", "Send exactly one of those named.");

    public static readonly Problem UnmetRequirement = Of("unmet-requirement", "A requirement of the gate is not met",
        "The unit can't pass before this is there, or is left out rightly.", "Do what the message says, then pass the gate again.");

    public static readonly Problem UnknownPosition = Of("unknown-position", "The family has no such position", "The position is not in the family's build.", "GET the family or its sheet for the list.");

    public static readonly Problem UnknownCharacteristic = Of("unknown-characteristic", "The part has no such characteristic", "The kind of part at that position has no such characteristic.", "GET the family or its sheet for the list.");

    public static readonly Problem UnknownKind = Of("unknown-kind", "The family has no such kind of part", "The kind is not in the family.", "GET the family for the list.");

    public static readonly Problem UnknownAttribute = Of("unknown-attribute", "The part has no such attribute", "The kind of part has no such attribute, or the value is not on its list.", "GET the family or its sheet for the list.");

    public static readonly Problem UnknownDamage = Of("unknown-damage", "The part has no such class of damage", "The class is not one that the family looks for on this kind of part.", "GET the family for the list.");

    public static readonly Problem UnknownClearance = Of("unknown-clearance", "The family has no such clearance", "The clearance is not in the family.", "GET the family for the list.");

    public static readonly Problem UnknownPiece = Of("unknown-piece", "The series has no such piece", "The series or its member is not in the family.", "GET the family for the list.");

    public static readonly Problem UnknownSymptom = Of("unknown-symptom", "The family has no such symptom", "The symptom, or the gear it is said to be in, is not in the family.", "GET the family for the list.");

    public static readonly Problem UnknownTest = Of("unknown-test", "The family has no such test", "The test is not in the family.", "Take one of those under allowed.");

    public static readonly Problem UnknownCause = Of("unknown-cause", "The family has no such cause", "The cause is not in the family.", "Take one of those under allowed.");

    public static readonly Problem UnknownComponent = Of("unknown-component", "There is no such part", "No part of this id is in the unit.", "GET the components of the unit, or name a position instead.");

    public static readonly Problem UnknownInstrument = Of("unknown-instrument", "There is no such instrument", "The instrument is not registered, so that its error can't be counted.", "POST it to /v1/instruments first, or leave it out.");

    public static readonly Problem UnknownRecord = Of("unknown-record", "There is no such record to supersede", "The record to be superseded is not in this unit or was superseded already.", "GET the list for the ids.");

    public static readonly Problem UnknownSubject = Of("unknown-subject", "There is no such verdict", "No verdict, clearance or pairing of this unit has that subject.", "GET the verdicts for the subjects.");

    public static readonly Problem UnknownGear = Of("unknown-gear", "There is no such gear", "The gear is not one of the family.", "GET the family for the list.");

    public static readonly Problem UnknownPart = Of("unknown-part", "The price list has no such part", "The part is not on the shop's price list.", "GET /v1/parts lists them.");

    public static readonly Problem UnknownStock = Of("unknown-stock", "There is no such thing on the shelf", "Nothing of this id is on the shelf.", "GET /v1/stock lists what is.");

    public static readonly Problem UnknownLine = Of("unknown-line", "There is no such line", "The quote or invoice of this unit has no line of this id.", "GET the quote or the invoice lines of the unit for the ids.");

    public static readonly Problem UnknownOperation = Of("unknown-operation", "The family has no such operation", "The operation is not in the family.", "GET the family for the list.");

    public static readonly Problem BadCursor = Of("bad-cursor", "A cursor that can't be used", "The cursor is not one that this list gave out, or the list has changed under it.", "Follow next as it was given, or begin again without.");

    public static readonly Problem RowTooLong = Of("row-too-long", "A row is too long", "A line has no end within what is taken; everything after it was left unread.", "Send rows of at most 65536 bytes, each on its own line.");

    public static readonly Problem BadAddress = Of("bad-address", "An address that can't be read", "An address is position/characteristic.", "Write it like third-gear/bore.");

    /// <summary>Every field problem.</summary>
    public static ImmutableArray<Problem> All { get; } =
    [
        UnknownField, MissingField, DuplicateField, WrongType, BareNumber, UnknownUnitOfMeasure, WrongDimension, TooManyDigits, OutOfRange, NotAllowed,
        BadText, BadId, BadTime, BadCount, Contradiction, UnmetRequirement, UnknownPosition, UnknownCharacteristic, UnknownKind, UnknownAttribute, UnknownDamage,
        UnknownClearance, UnknownPiece, UnknownSymptom, UnknownTest, UnknownCause, UnknownComponent, UnknownInstrument, UnknownRecord, UnknownSubject, UnknownGear, UnknownPart, UnknownStock, UnknownLine, UnknownOperation, BadCursor, BadAddress, RowTooLong,
    ];

    private static Problem Of(string code, string title, string cause, string fix) => new(code, 0, title, cause, fix);
}
