using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Calculations;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>A gauge study that is kept with an instrument.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Instrument">The instrument.</param>
/// <param name="Found">What it found; goes into every budget of that characteristic unless a later study does.</param>
/// <param name="Study">The whole result, worked out from the readings.</param>
/// <param name="Readings">The readings, as they were sent.</param>
/// <param name="Person">Who recorded it.</param>
/// <param name="Time">When, UTC.</param>
public sealed record StudyWire(
    string Id, string Instrument, StudiedWire Found, GaugeStudyWire Study, ImmutableArray<StudyReadingWire> Readings, string Person, DateTimeOffset Time);

/// <summary>One reading of a gauge study.</summary>
/// <param name="Appraiser">The person.</param>
/// <param name="Part">The part.</param>
/// <param name="Reading">What was read, as it was sent.</param>
public sealed record StudyReadingWire(string Appraiser, string Part, QuantityWire Reading) : IInWords
{
    /// <summary>From the store.</summary>
    public static StudyReadingWire From(StudyReading r) => new(r.Appraiser, r.Part, new QuantityWire(new SentNumber(r.AsSent), r.Unit));

    /// <inheritdoc/>
    public string InWords() => $"{Appraiser}, {Part}: {Reading.Value.Text} {Reading.Unit}";
}

/// <summary>A crossed gauge study to be kept: every person read every part the same number of times.</summary>
/// <param name="Family">The family whose parts were read.</param>
/// <param name="Kind">The kind of part.</param>
/// <param name="Characteristic">The characteristic.</param>
/// <param name="Readings">The readings.</param>
/// <param name="Person">Who records it.</param>
/// <param name="PoolAbove">p above which the interaction is pooled; 0.25 is customary.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
public sealed record StudyRequest(
    [Id] string Family,
    [Id] string Kind,
    [Words(64)] string Characteristic,
    [Entries(8, 2000)] ImmutableArray<GaugeReadingRequest> Readings,
    [Words(100)] string Person,
    [Between(0, 1)] decimal PoolAbove = 0.25m,
    [Id] string? Id = null);
