using System.Collections.Frozen;
using System.Collections.Immutable;

namespace RebuildApi.Server.Errors;

/// <summary>What a request can meet as a whole. Codes are never renamed or given another meaning.</summary>
public static class Problems
{
    public static readonly Problem MalformedJson = new("malformed-json", 400, "The JSON can't be read",
        "The body is not one JSON value in UTF-8, or is nested too deeply.", "Look at the line and column given; a comma, quote or bracket is usually missing.");

    public static readonly Problem MalformedCsv = new("malformed-csv", 400, "The CSV can't be read",
        "The body is not a table with a header row, or a quote is left open.", "Start from the sheet of the family and keep its header row.");

    public static readonly Problem MalformedWorkbook = new("malformed-workbook", 400, "The workbook can't be read",
        "The body is not a workbook (.xlsx) with a header row in its first sheet, or it unfolds to too much.", "Start from the sheet of the family and keep its header row.");

    public static readonly Problem InvalidBody = new("invalid-body", 400, "The body does not have the right shape",
        "Fields are missing, unknown, repeated or of the wrong type.", "Each entry of errors points at one field and says what would be right.");

    public static readonly Problem InvalidQuery = new("invalid-query", 400, "A query parameter is not right",
        "A parameter is unknown, repeated, or has a value that is not allowed.", "Each entry of errors names one parameter and what it may be.");

    public static readonly Problem InvalidHeader = new("invalid-header", 400, "A header is not right",
        "A header has a value that can't be used.", "Each entry of errors names one header and what it may be.");

    public static readonly Problem InvalidContent = new("invalid-content", 422, "The content does not fit the family or the unit",
        "The shape is right, but something named does not exist or does not fit: a position, a characteristic, a unit of measure.",
        "Each entry of errors points at one field; the family and its sheet list what exists.");

    public static readonly Problem NotComputable = new("not-computable", 422, "The calculation has no answer for these values",
        "The shape is right, but the values make no sense together: a window upside down, a study with readings missing, a result too large to be written.",
        "Each entry of errors points at one field and says what is needed.");

    public static readonly Problem BadRequest = new("bad-request", 400, "The request can't be understood",
        "The request breaks HTTP, or a part of its address can't be read.", "Compare it with the example in /docs.");

    public static readonly Problem HostNotAllowed = new("host-not-allowed", 400, "This host name is not served",
        "The Host header is missing or is not one that this service answers to. This stops pages of other sites from reaching it through a name of their own.",
        "Use localhost or 127.0.0.1, or add the name to Rebuild:Hosts.");

    public static readonly Problem CrossSite = new("cross-site", 403, "Another site may not change anything here",
        "A browser says that the request comes from a page of another origin.", "Send it from a page of this service, or from a program that is not a browser.");

    public static readonly Problem TokenRequired = new("token-required", 401, "A token is needed here",
        "The request shows no access token. The service asks every bench and program for one.",
        "Send Authorization: Bearer and the token, or sign in at /sign-in; an administrator issues tokens with POST /v1/tokens or the command token add.");

    public static readonly Problem TokenRefused = new("token-refused", 401, "This token does not count",
        "The token was never issued here, has expired or was revoked.", "Ask an administrator for a new one: POST /v1/tokens, or the command token add.");

    public static readonly Problem ScopeMissing = new("scope-missing", 403, "The token may not do this",
        "The scope of the token is smaller than what the address asks for: read, bench, office, administrator, each including those before it.",
        "Use a token of the scope that the detail names.");

    public static readonly Problem UnknownToken = new("unknown-token", 404, "There is no such token",
        "No token of this name was issued.", "GET /v1/tokens lists them.");

    public static readonly Problem LastAdministrator = new("last-administrator", 409, "This is the last administrator's token",
        "Without it nobody could issue tokens over the network any more.", "Issue another administrator's token first, or use the command token revoke.");

    public static readonly Problem NotFound = new("not-found", 404, "There is nothing at this address",
        "The address has no resource behind it.", "The list of addresses is at / and /docs.");

    public static readonly Problem UnknownFamily = new("unknown-family", 404, "There is no such family",
        "No loaded plug-in brings a family of this id.", "GET /v1/families lists what is loaded; GET /v1/plugins says why something is not.");

    public static readonly Problem UnknownUnit = new("unknown-unit", 404, "There is no such unit",
        "No unit of this id was taken in.", "GET /v1/units lists them.");

    public static readonly Problem UnknownPlace = new("no-such-position", 404, "There is no such position",
        "The family of the unit has no position of this id, or it holds fewer parts.", "GET the family for the list; the second of several like parts is position#2, written %23 in an address.");

    public static readonly Problem UnknownInstrumentId = new("no-such-instrument", 404, "There is no such instrument",
        "No instrument of this id is registered.", "GET /v1/instruments lists them; POST /v1/instruments registers one.");

    public static readonly Problem UnknownStation = new("unknown-station", 404, "There is no such bench",
        "No reading that stands was taken at a bench of this id.", "GET /v1/stations lists them.");

    public static readonly Problem UnknownPlugin = new("unknown-plugin", 404, "There is no such plug-in",
        "The plug-in folder holds nothing of this name.", "GET /v1/plugins lists what was found.");

    public static readonly Problem UnknownPartId = new("no-such-part", 404, "There is no such part",
        "The shop's price list has no part of this id.", "GET /v1/parts lists them; POST /v1/parts adds one.");

    public static readonly Problem UnknownStockId = new("no-such-stock", 404, "There is no such thing on the shelf",
        "Nothing of this id is on the shelf.", "GET /v1/stock lists what is; POST /v1/stock adds something.");

    public static readonly Problem UnknownReservation = new("unknown-reservation", 404, "There is no such reservation",
        "The unit has no reservation of this id.", "GET the reservations of the unit lists them.");

    public static readonly Problem UnknownPlan = new("unknown-plan", 404, "There is no such plan",
        "The unit has no plan of this id, or none at all.", "GET the plans of the unit lists them; POST works one out.");

    public static readonly Problem UnknownQuote = new("unknown-quote", 404, "There is no quote",
        "No quote was made for this unit.", "POST the quote of the unit makes one from a plan.");

    public static readonly Problem UnknownMachining = new("unknown-machining", 404, "There is no such job",
        "The unit has no machining job of this id.", "GET the machining jobs of the unit lists them.");

    public static readonly Problem UnknownEntry = new("unknown-entry", 404, "There is no such entry",
        "The chain of what was recorded has no entry of this number.", "GET /v1/audit lists them.");

    public static readonly Problem UnknownBackup = new("unknown-backup", 404, "There is no such backup",
        "The folder of backups has none of this name, or it was removed because enough newer ones are kept.", "GET /v1/backups lists them.");

    public static readonly Problem UnknownWebhook = new("unknown-webhook", 404, "There is no such receiver",
        "No receiver of this id is set up, or it was taken away.", "GET /v1/webhooks lists them; POST /v1/webhooks sets one up.");

    public static readonly Problem UnknownDelivery = new("unknown-delivery", 404, "There is no such delivery",
        "The receiver has no delivery of this id that is still remembered.", "GET the deliveries of the receiver lists them.");

    public static readonly Problem ReceiverResting = new("receiver-resting", 409, "The receiver is left alone just now",
        "It failed five times in a row, so that for a minute nothing is even tried.", "Mend the receiver and POST its pings: one that is taken ends the rest.");

    public static readonly Problem UnknownShop = new("unknown-shop", 404, "No such shop has opened this to yours",
        "There is no shop of this name in the database, or it has not opened what was asked for: which of the two is not told. Nor has yours opened anything to it, where that was asked.",
        "GET /v1/shops lists who has opened what to yours; GET /v1/sharings what yours opens to others. The other shop's administrator opens it with POST /v1/sharings.");

    public static readonly Problem UnknownCustomer = new("unknown-customer", 404, "There is no such customer",
        "No unit bears this name, or ever did.", "GET /v1/customers lists them; the name must be the same letter for letter.");

    public static readonly Problem UnknownJudgement = new("unknown-judgement", 404, "There is no such judgement",
        "No judgement of this id was kept of the unit.", "GET the judgements of the unit lists them.");

    public static readonly Problem UnknownAttachment = new("unknown-attachment", 404, "There is no such attachment",
        "The unit has no photo or document of this id.", "GET the attachments of the unit lists them.");

    public static readonly Problem AttachmentLost = new("attachment-lost", 410, "The file behind the record is lost",
        "The record and its hash stand, but the file in the folder of attachments is missing or was changed.", "Put it back from a backup; the hash says which it is.");

    public static readonly Problem AttachmentErased = new("attachment-erased", 410, "The file was erased",
        "It was erased on purpose, with what names its customer. The record and its hash stand.", "Nothing; it is not to come back.");

    public static readonly Problem UnknownLabel = new("unknown-label", 404, "Nothing bears this label",
        "The code is well formed, but the shop never gave it out.", "GET /v1/labels lists the codes given out.");

    public static readonly Problem MistypedLabel = new("mistyped-label", 422, "The code is mistyped",
        "A code is U for a unit or P for a part, digits, and a check letter that follows from them; here they do not agree.", "Look at the label again, or scan it.");

    public static readonly Problem UnknownComponentId = new("no-such-component", 404, "There is no such part",
        "No part of this id was ever recorded.", "GET the components of a unit lists its parts.");

    public static readonly Problem GateNotMet = new("gate-not-met", 409, "Something that the gate asks for is missing",
        "A unit goes on only when everything that its next gate asks for is there.", "Each entry of errors names one requirement, what is missing and what to do; GET the stages of the unit lists them.");

    public static readonly Problem StageConflict = new("stage-conflict", 409, "The unit can't go there from where it is",
        "Units pass one gate after the other; somebody may have been faster.", "GET the stages of the unit says where it is and where it may go.");

    public static readonly Problem StockShort = new("stock-short", 409, "There is not enough on the shelf",
        "Less is free on the shelf than is asked for; the rest is kept for other units or was taken.", "GET /v1/stock says how many are free; ask for fewer, or let another reservation go.");

    public static readonly Problem QuoteOvertaken = new("quote-overtaken", 409, "Another quote or state stands now",
        "The quote that the request names is no longer the newest one, has expired, or nothing was agreed to.", "GET the quote of the unit; make a new one when it has expired.");

    public static readonly Problem ApprovalNeeded = new("approval-needed", 409, "The customer must be asked again",
        "With these lines the sum grows beyond what was agreed to and the share by which it may grow.", "Make a new quote and have it approved, then write the lines.");

    public static readonly Problem MethodNotAllowed = new("method-not-allowed", 405, "This address does not take that method",
        "The address exists but answers other methods.", "The Allow header lists them.");

    public static readonly Problem RequestTimeout = new("request-timeout", 408, "The request came too slowly",
        "The body was not received in time.", "Send it again.");

    public static readonly Problem DuplicateId = new("duplicate-id", 409, "The id is taken",
        "Something of this kind has the id that was sent.", "Send another id, or none to be given one.");

    public static readonly Problem PartElsewhere = new("part-elsewhere", 409, "The part is in another unit",
        "One part can't be found or fitted in two gearboxes.", "Look at where the part is; take it out there first, or name another part.");

    public static readonly Problem RevisionConflict = new("revision-conflict", 409, "The part was reworked in the meantime",
        "Another revision of the part was recorded first.", "Read the part again.");

    public static readonly Problem IdempotencyKeyReused = new("idempotency-key-reused", 422, "The idempotency key belongs to another request",
        "The same key came before with another address or content.", "Use a new key for each new request, and the same key only to repeat one.");

    public static readonly Problem IdempotencyKeyMissing = new("idempotency-key-missing", 400, "An idempotency key is required here",
        "A batch of readings must not be stored twice when a connection breaks.", "Send a header Idempotency-Key with a value of your own that is new for each batch.");

    public static readonly Problem VersionConflict = new("version-conflict", 412, "Someone changed it in the meantime",
        "If-Match names a version that is no longer the current one.", "Read it again, look at what changed, and send your change with the new ETag.");

    public static readonly Problem BodyTooLarge = new("body-too-large", 413, "The body is too large",
        "The body is larger than this address takes.", "Send several smaller ones.");

    public static readonly Problem UnsupportedMediaType = new("unsupported-media-type", 415, "This content type is not taken here",
        "Content-Type is missing or is not one that this address takes. It is asked for even without a body, so that no web page can send it unasked.",
        "Send Content-Type: application/json, or another of those allowed.");

    public static readonly Problem NotAcceptable = new("not-acceptable", 406, "None of the media types asked for is given here",
        "Accept names only media types that this address does not give.", "Send Accept with one of those allowed, or none.");

    public static readonly Problem PreconditionRequired = new("precondition-required", 428, "Say which version you are changing",
        "A change needs If-Match, so that nobody's work is overwritten unseen.", "Read the resource, and send its ETag back in If-Match.");

    public static readonly Problem TooManyRequests = new("too-many-requests", 429, "Too many requests",
        "More requests came than the service takes in this time.", "Wait as long as Retry-After says.");

    public static readonly Problem HeadersTooLarge = new("headers-too-large", 431, "The headers are too large",
        "The headers together are larger than the service takes.", "Send fewer or shorter ones.");

    public static readonly Problem Unexpected = new("unexpected", 500, "Something went wrong here",
        "A fault of this service. It was logged with the trace id given.", "Try again; if it stays, report the trace id.");

    public static readonly Problem StorageUnavailable = new("storage-unavailable", 503, "The records can't be written or read just now",
        "The disk is full or read-only, the file is locked by another program, or it is damaged. Nothing was written.",
        "GET /health/ready says what is wrong.");

    public static readonly Problem RulesUnavailable = new("rules-unavailable", 409, "The rules of this family are not loaded",
        "The plug-in that brings the family is missing, not approved or faulty. What was recorded stays; nothing new can be judged or checked.",
        "GET /v1/plugins says why; approve or mend the plug-in, then reload.");

    public static readonly Problem PluginRefused = new("plugin-refused", 409, "The plug-in can't be used",
        "The plug-in was approved or reloaded but did not load.", "The detail and GET /v1/plugins say why.");

    public static readonly Problem Timeout = new("timeout", 504, "The answer took too long",
        "The time allowed for one request ran out. Nothing was written.", "Ask for less at once.");

    /// <summary>Every whole-request problem.</summary>
    public static ImmutableArray<Problem> All { get; } =
    [
        MalformedJson, MalformedCsv, MalformedWorkbook, InvalidBody, InvalidQuery, InvalidHeader, InvalidContent, NotComputable, BadRequest, HostNotAllowed, CrossSite, TokenRequired, TokenRefused, ScopeMissing, NotFound,
        UnknownFamily, UnknownUnit, UnknownPlace, UnknownInstrumentId, UnknownStation, UnknownPlugin, UnknownPartId, UnknownStockId, UnknownReservation,
        UnknownPlan, UnknownQuote, UnknownMachining, UnknownEntry, UnknownBackup, UnknownCustomer, UnknownWebhook, UnknownDelivery, ReceiverResting,
        UnknownJudgement, UnknownAttachment, AttachmentLost, AttachmentErased, UnknownLabel, MistypedLabel, UnknownComponentId, GateNotMet, StageConflict,
        UnknownToken, LastAdministrator, UnknownShop,
        StockShort, QuoteOvertaken, ApprovalNeeded, MethodNotAllowed, RequestTimeout, DuplicateId, PartElsewhere, RevisionConflict, IdempotencyKeyReused,
        IdempotencyKeyMissing, VersionConflict, BodyTooLarge, UnsupportedMediaType, NotAcceptable, PreconditionRequired, TooManyRequests, HeadersTooLarge,
        Unexpected, StorageUnavailable, RulesUnavailable, PluginRefused, Timeout,
    ];

    private static readonly FrozenDictionary<int, Problem> Plain = new[]
    {
        BadRequest, CrossSite, NotFound, MethodNotAllowed, RequestTimeout, BodyTooLarge, UnsupportedMediaType, TooManyRequests, HeadersTooLarge,
        Unexpected, StorageUnavailable, Timeout,
    }.ToFrozenDictionary(p => p.Status);

    /// <summary>The plain problem for a status that the framework set by itself.</summary>
    public static Problem ForStatus(int status) =>
        Plain.TryGetValue(status, out var problem) ? problem : status < 500 ? BadRequest : Unexpected;
}
