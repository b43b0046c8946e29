using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Reflection;
using RebuildApi.Server.Backups;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Webhooks;

namespace RebuildApi.Server;

/// <summary>Settings that can't be used, all said at once.</summary>
public sealed class SettingsException(IReadOnlyList<string> faults) : InvalidOperationException(string.Join(Environment.NewLine, faults))
{
    /// <summary>What is wrong, one sentence or two for each setting.</summary>
    public IReadOnlyList<string> Faults { get; } = faults;
}

/// <summary>
/// Holds the section <c>Rebuild</c> against <see cref="ServerOptions"/> before anything starts: an unknown name is told with the nearest known one, a value
/// that is not of its kind or range with what is allowed.
/// </summary>
public static class SettingsCheck
{
    /// <summary>The settings, when all of them can be used.</summary>
    /// <exception cref="SettingsException">Some can't.</exception>
    public static ServerOptions Read(IConfiguration configuration)
    {
        var section = configuration.GetSection(ServerOptions.Section);
        List<string> faults = [.. Faults(section, typeof(ServerOptions))];
        var options = faults.Count == 0 ? section.Get<ServerOptions>() ?? new ServerOptions() : new ServerOptions();
        if (faults.Count == 0)
            faults.AddRange(FaultsOf(options));
        return faults.Count == 0 ? options : throw new SettingsException(faults);
    }

    private static IEnumerable<string> Faults(IConfigurationSection section, Type type)
    {
        var known = type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.CanWrite).ToDictionary(p => p.Name, StringComparer.OrdinalIgnoreCase);
        foreach (var child in section.GetChildren())
        {
            if (!known.TryGetValue(child.Key, out var property))
                yield return $"There is no setting {child.Path}. {Nearest.Fix(child.Key, known.Keys) ?? ""} Allowed: {string.Join(", ", known.Keys.Order(StringComparer.Ordinal))}.".Replace("  ", " ", StringComparison.Ordinal);
            else if (IsGroup(property.PropertyType))
                foreach (var fault in Faults(child, property.PropertyType))
                    yield return fault;
            else if (Fault(child, property) is { } fault)
                yield return fault;
        }
    }

    private static bool IsGroup(Type type) => type is { IsClass: true, IsArray: false } && type != typeof(string) && type.Namespace?.StartsWith("RebuildApi", StringComparison.Ordinal) == true;

    private static string? Fault(IConfigurationSection setting, PropertyInfo property)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        if (type == typeof(bool))
            return bool.TryParse(setting.Value, out _) ? null : Wrong(setting, "true or false");
        if (type == typeof(int) || type == typeof(long))
            return NumberFault(setting, property.GetCustomAttribute<RangeAttribute>());
        if (type == typeof(string[]))
            return setting.Value is { Length: > 0 } || setting.GetChildren().Any(c => c.Value is null) ? Wrong(setting, $"a list of texts, each by its number: {setting.Path}:0") : null;
        if (type == typeof(string))
            return setting.Value is null ? Wrong(setting, "one text") : null;
        return null;
    }

    private static string? NumberFault(IConfigurationSection setting, RangeAttribute? range)
    {
        var (low, high) = (Convert.ToInt64(range?.Minimum ?? int.MinValue, CultureInfo.InvariantCulture), Convert.ToInt64(range?.Maximum ?? int.MaxValue, CultureInfo.InvariantCulture));
        return long.TryParse(setting.Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) && number >= low && number <= high
            ? null
            : Wrong(setting, range is null ? "a whole number" : string.Create(CultureInfo.InvariantCulture, $"a whole number from {low} to {high}"));
    }

    private static string Wrong(IConfigurationSection setting, string allowed) => $"{setting.Path} is {setting.Value ?? "a group"}; it must be {allowed}.";

    /// <summary>What only the setting's own reader knows.</summary>
    private static IEnumerable<string> FaultsOf(ServerOptions options)
    {
        Action[] readers =
        [
            () => Records.Check(options), () => Listening.Checked(options), () => Certificate.Check(options), () => BackupTimes.Of(options.BackupAt, TimeZoneInfo.Utc),
            () => Telemetry.Checked(options.TelemetryTo), () => AllowedReceivers.Check(options),
            () => RequireThere(nameof(options.PluginFolder), options.PluginFolder, Directory.Exists), () => RequireThere(nameof(options.ApprovedPlugins), options.ApprovedPlugins, File.Exists),
        ];
        foreach (var reader in readers)
        {
            if (Said(reader) is { } fault)
                yield return fault;
        }
    }

    // A wrong path would else show only as families that are missing.
    private static void RequireThere(string name, string? path, Func<string, bool> isThere)
    {
        if (path is not null && !isThere(path))
            throw new InvalidOperationException($"{ServerOptions.Section}:{name} is {path}, and nothing is there. Leave it out for what lies beside the program.");
    }

    private static string? Said(Action reader)
    {
        try
        {
            reader();
            return null;
        }
        catch (Exception e) when (e is InvalidOperationException or FormatException)
        {
            return e.Message;
        }
    }
}
