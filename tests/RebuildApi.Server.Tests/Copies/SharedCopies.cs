using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Copies;

/// <summary>Two copies that several tests share, since starting them with all plug-ins takes a while. A family file lies beside each, not approved yet.</summary>
public sealed class SharedCopies : IAsyncLifetime
{
    private readonly Lazy<Task<TwoCopies>> _copies = new(Open);

    public Task<TwoCopies> Copies => _copies.Value;

    public Task InitializeAsync() => Task.CompletedTask;

    public async Task DisposeAsync()
    {
        if (_copies.IsValueCreated)
            await (await Copies).DisposeAsync();
    }

    private static async Task<TwoCopies> Open()
    {
        var family = await File.ReadAllTextAsync(Repository.PathTo("plugins", "family-files", "examples", "brackenmere-4.yaml"));
        return await TwoCopies.Open(folder => File.WriteAllText(
            Path.Combine(Directory.CreateDirectory(Path.Combine(folder, "families")).FullName, "ours.yaml"),
            family.Replace("family: brackenmere-4", "family: ours-4", StringComparison.Ordinal)));
    }
}
