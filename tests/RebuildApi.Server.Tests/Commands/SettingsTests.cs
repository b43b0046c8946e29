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

    private static IConfiguration With(params (string Name, string Value)[] settings) =>
        new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(s => s.Name, s => (string?)s.Value)).Build();
}
