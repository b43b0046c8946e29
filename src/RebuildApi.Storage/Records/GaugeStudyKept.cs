using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>A crossed gauge study of an instrument at one characteristic, with its raw readings.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Instrument">The instrument.</param>
/// <param name="Readings">The readings as they were sent.</param>
/// <param name="PoolAbove">p above which the interaction was pooled.</param>
/// <param name="Found">What it found; goes into every budget of that characteristic.</param>
/// <param name="Person">Who records it.</param>
/// <param name="At">When, UTC.</param>
public sealed record GaugeStudyKept(
    string Id, string Instrument, ImmutableArray<StudyReading> Readings, double PoolAbove, GaugeCapability Found, string Person, DateTimeOffset At);

/// <summary>One reading of a gauge study.</summary>
/// <param name="Appraiser">The person, or the bench.</param>
/// <param name="Part">The part.</param>
/// <param name="AsSent">The number as it was sent.</param>
/// <param name="Unit">Its unit as it was sent.</param>
public sealed record StudyReading(string Appraiser, string Part, string AsSent, string Unit);
