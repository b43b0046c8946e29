using Microsoft.Extensions.Configuration;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Commands;

public sealed class SettingsTests
{
    [Theory]
    [InlineData("Rebuild:Lissten", "x", "There is no setting Rebuild:Lissten. Did you mean Listen?")]
    [InlineData("Rebuild:Zzz", "x", "Allowed: ")]
    [InlineData("Rebuild:RequestSeconds", "soon", "Rebuild:RequestSeconds is soon; it must be a whole number from 1 to 3600.")]
    [InlineData("Rebuild:RequestSeconds", "0", "it must be a whole number from 1 to 3600.")]
    [InlineData("Rebuild:BackupAt", "2 am", "not a time of day such as 02:00")]
    [InlineData("Rebuild:Listen", "here", "which is not an address")]
    [InlineData("Rebuild:TelemetryTo", "somewhere", "Rebuild:TelemetryTo is somewhere, which is not an address")]
    [InlineData("Rebuild:AttachmentBytesPerUnit", "plenty", "Rebuild:AttachmentBytesPerUnit is plenty; it must be a whole number from 1 to 1000000000000000.")]
    [InlineData("Rebuild:AttachmentBytesPerUnit", "0", "it must be a whole number from 1 to")]
    [InlineData("Rebuild:Lan", "perhaps", "Rebuild:Lan is perhaps; it must be true or false.")]
    [InlineData("Rebuild:Hosts", "shop-pc", "Rebuild:Hosts is shop-pc; it must be a list of texts, each by its number: Rebuild:Hosts:0.")]
    [InlineData("Rebuild:WebhookReceivers:0", "the bookkeeper", "Rebuild:WebhookReceivers has the bookkeeper, which is no network")]
    [InlineData("Rebuild:PluginFolder", "no/such/folder", "Rebuild:PluginFolder is no/such/folder, and nothing is there.")]
    [InlineData("Rebuild:ApprovedPlugins", "no/such/list", "Rebuild:ApprovedPlugins is no/such/list, and nothing is there.")]
    [InlineData("Rebuild:DataFolder:Path", "x", "Rebuild:DataFolder is a group; it must be one text.")]
    public void A_setting_that_cannot_be_used_is_named_with_what_is_allowed(string name, string value, string words)
    {
        var refusal = Assert.Throws<SettingsException>(() => SettingsCheck.Read(With((name, value))));

        Assert.Contains(words, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Everything_wrong_is_said_at_once_and_what_is_right_is_read()
    {
        var refusal = Assert.Throws<SettingsException>(() => SettingsCheck.Read(With(("Rebuild:A", "1"), ("Rebuild:BackupsKept", "-1"))));
        Assert.Equal(2, refusal.Faults.Count);
        Assert.Equal(30, SettingsCheck.Read(With(("Rebuild:RequestSeconds", "30"), ("Rebuild:Hosts:0", "bench"))).RequestSeconds);
    }

    [Fact]
    public void The_readme_has_a_row_for_each_setting()
    {
        var readme = File.ReadAllText(Repository.PathTo("README.md"));
        Assert.All(typeof(ServerOptions).GetProperties().Where(p => p.CanWrite), p => Assert.Contains("`Rebuild:" + p.Name, readme, StringComparison.Ordinal));
    }

    [Fact]
    public void The_settings_file_names_each_setting()
    {
        var file = File.ReadAllText(Repository.PathTo("src", "RebuildApi.Server", "appsettings.json"));
        Assert.All(typeof(ServerOptions).GetProperties().Where(p => p.CanWrite), p => Assert.Contains($"\"{p.Name}\":", file, StringComparison.Ordinal));
    }

    private static readonly string[] Examples = ["\"Certificate", "\"PluginFolder", "\"ApprovedPlugins", "\"Microsoft"];

    [Fact]
    public void What_the_settings_file_offers_can_be_used()
    {
        // Each offered line as it stands once its strokes are taken away, but for those that name what must be there.
        var offered = File.ReadAllLines(Repository.PathTo("src", "RebuildApi.Server", "appsettings.json")).Select(l => l.Trim().TrimEnd(','))
            .Where(l => l.StartsWith("// \"", StringComparison.Ordinal) && l.Contains("\":", StringComparison.Ordinal)).Select(l => l[3..]).Where(l => !Examples.Any(l.StartsWith));
        using var json = new MemoryStream(System.Text.Encoding.UTF8.GetBytes($$"""{ "Rebuild": { {{string.Join(", ", offered)}} } }"""));

        var settings = SettingsCheck.Read(new ConfigurationBuilder().AddJsonStream(json).Build());

        Assert.Equal(new ServerOptions().RequestSeconds, settings.RequestSeconds);
    }

    private static IConfiguration With(params (string Name, string Value)[] settings) =>
        new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(s => s.Name, s => (string?)s.Value)).Build();
}
