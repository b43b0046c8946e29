using System.Globalization;

namespace RebuildApi.Server.Backups;

/// <summary>When backups are made by themselves: once a day at a time of the shop's own clock, and after a start that comes later than a time that was missed.</summary>
/// <param name="At">The time of day.</param>
/// <param name="Zone">The shop's clock.</param>
public sealed record BackupTimes(TimeOnly At, TimeZoneInfo Zone)
{
    /// <summary>The word that turns them off.</summary>
    public const string Off = "off";

    /// <summary>Reads the setting.</summary>
    /// <returns>Null when they are off.</returns>
    /// <exception cref="FormatException">It is no time of day.</exception>
    public static BackupTimes? Of(string setting, TimeZoneInfo zone)
    {
        if (setting == Off)
            return null;
        return TimeOnly.TryParseExact(setting, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var at)
            ? new BackupTimes(at, zone)
            : throw new FormatException($"{ServerOptions.Section}:BackupAt is {setting}, which is not a time of day such as 02:00, nor {Off}.");
    }

    /// <summary>The last moment at or before now at which one was due.</summary>
    public DateTimeOffset LastDue(DateTimeOffset now)
    {
        var here = TimeZoneInfo.ConvertTime(now, Zone);
        var day = DateOnly.FromDateTime(here.DateTime);
        var today = Moment(day);
        return today <= now ? today : Moment(day.AddDays(-1));
    }

    // A time that the clocks skip in spring counts as the hour after it.
    private DateTimeOffset Moment(DateOnly day)
    {
        var local = day.ToDateTime(At);
        if (Zone.IsInvalidTime(local))
            local = local.AddHours(1);
        return new DateTimeOffset(local, Zone.GetUtcOffset(local)).ToUniversalTime();
    }
}
