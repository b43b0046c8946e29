using System.Diagnostics;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Docs;

/// <summary>Runs an example as a person would.</summary>
internal sealed record Script(int Code, string Output, string Errors)
{
    private static string Folder => Repository.PathTo("scripts", "examples");

    public static Task<Script> Bash(string name, string[] arguments, string input = "", params (string Name, string Value)[] settings) =>
        Run("bash", [Path.Combine(Folder, name), .. arguments], input, settings);

    public static Task<Script> PowerShell(string name, string[] arguments, params (string Name, string Value)[] settings) =>
        Run("pwsh", ["-NoProfile", "-NonInteractive", "-File", Path.Combine(Folder, name), .. arguments], "", settings);

    private static async Task<Script> Run(string program, string[] arguments, string input, (string Name, string Value)[] settings)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Folder };
        foreach (var (setting, value) in settings)
            start.Environment[setting] = value;
        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(120));
        await process.WaitForExitAsync(patience.Token);
        return new Script(process.ExitCode, await output, await errors);
    }
}

/// <summary>A fact that needs some programs; skipped, visibly, where one is missing.</summary>
public sealed class WithProgramsFactAttribute : FactAttribute
{
    public WithProgramsFactAttribute(params string[] programs)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        var missing = programs.Where(p => !folders.Any(f => File.Exists(Path.Combine(f, p)) || File.Exists(Path.Combine(f, p + ".exe")))).ToArray();
        if (missing.Length > 0)
            Skip = $"Not on this machine: {string.Join(", ", missing)}.";
    }
}
