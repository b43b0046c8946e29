using System.CommandLine;

namespace RebuildApi.Server.Commands;

/// <summary><c>serve</c>: the service itself.</summary>
public static class ServeCommand
{
    /// <summary>Its name.</summary>
    public const string Name = "serve";

    /// <summary>The command.</summary>
    public static Command Make()
    {
        var settings = new Argument<string[]>("settings") { Description = "Settings as --Rebuild:Name=value; they stand before the environment and the settings file.", Arity = ArgumentArity.ZeroOrMore };
        var command = new ToldCommand(Name, "Serves until it is told to stop (Ctrl+C, or by the system); then it takes nothing new, answers what it has begun, and ends.", """
            Examples:
              serve
              serve --Rebuild:DataFolder=/srv/shop --Rebuild:Listen=http://127.0.0.1:5290
            """)
        {
            settings,
        };
        command.TreatUnmatchedTokensAsErrors = false;
        command.SetAction((asked, cancellation) => Run([.. asked.GetValue(settings) ?? [], .. asked.UnmatchedTokens]));
        return command;
    }

    private static async Task<int> Run(string[] settings)
    {
        RefuseUnknown(settings);
        await using var app = RebuildApplication.Create(settings);
        await app.RunAsync();
        return 0;
    }

    private static void RefuseUnknown(string[] settings)
    {
        for (var i = 0; i < settings.Length; i++)
        {
            // The host's own, such as --environment=Production, have no colon but a value.
            if (!settings[i].StartsWith("--", StringComparison.Ordinal) || settings[i].IndexOfAny([':', '=']) < 0)
                throw new SettingsException([$"{settings[i]} is not a setting. A setting is written --Rebuild:Name=value."]);
            if (!settings[i].Contains('=', StringComparison.Ordinal))
                i++;
        }
    }
}
