using System.Collections;
using System.Collections.Immutable;
using System.Globalization;
using Microsoft.Extensions.Options;
using RebuildApi.Server.Results;
using RebuildApi.Storage;

namespace RebuildApi.Server;

/// <summary>At each start puts the settings on record when they are not those of the last start, so that a change of them is found beside what it changed.</summary>
public sealed partial class SettingsRecord(IServiceProvider services, IOptions<ServerOptions> options, ILogger<SettingsRecord> log) : IHostedService
{
    private static readonly WriteRequest Start = new("service", "start", null, "", DryRun: false);
    private static readonly string[] Secrets = ["password", "secret", "key", "token", "database"];

    /// <inheritdoc/>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        try
        {
            // Asked for here and not in the constructor: a damaged database must not keep the service from saying so.
            var store = services.GetRequiredService<IStore>();
            var now = new Act(Acts.Settings, ServerOptions.Section, Start.Actor, Shown(options.Value));
            var last = await store.NewestAct(Acts.Settings, cancellationToken);
            if (last is null || !last.Details.SequenceEqual(now.Details))
                await store.Write(Start, session => Answer.Changed(session.Record(now)), cancellationToken);
        }
        catch (StorageUnavailableException e)
        {
            LogUnavailable(log, e.Code, e.Message);
        }
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>Every setting with its value as text, but for those whose name says that they are secret.</summary>
    public static ImmutableSortedDictionary<string, string> Shown(object settings) => Pairs("", settings).ToImmutableSortedDictionary(StringComparer.Ordinal);

    private static IEnumerable<KeyValuePair<string, string>> Pairs(string prefix, object settings)
    {
        foreach (var property in settings.GetType().GetProperties().Where(p => p.GetIndexParameters().Length == 0 && p.Name != "EqualityContract"))
        {
            var name = prefix + property.Name;
            var value = property.GetValue(settings);
            if (Secrets.Any(s => property.Name.Contains(s, StringComparison.OrdinalIgnoreCase)))
                continue;
            if (value is { } part && part.GetType().Namespace?.StartsWith("RebuildApi", StringComparison.Ordinal) == true && !part.GetType().IsEnum)
            {
                foreach (var pair in Pairs(name + ":", part))
                    yield return pair;
            }
            else
            {
                yield return new(name, Text(value));
            }
        }
    }

    private static string Text(object? value) => value switch
    {
        null => "",
        string text => text,
        IEnumerable many => string.Join(", ", many.Cast<object>().Select(Text)),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
    };

    [LoggerMessage(LogLevel.Critical, "The records can't be used ({Code}): {Message} Every request that needs them is answered 503 until that is mended.")]
    private static partial void LogUnavailable(ILogger log, string code, string message);
}
