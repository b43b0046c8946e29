using System.CommandLine;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Commands;

public sealed class CommandTests
{
    [Fact]
    public async Task Every_command_has_help_and_each_that_does_something_an_example()
    {
        foreach (var words in Commands(CommandLine.Root(), []))
        {
            var (code, said, _) = await Run([.. words.Path, "--help"]);
            Assert.Equal(0, code);
            if (words.Leaf)
                Assert.Matches(@"Examples?:\s+" + string.Join(' ', words.Path), said);
        }
    }

    [Theory]
    [InlineData("verfy", "Did you mean verify?")]
    [InlineData("retsore x", "Did you mean restore?")]
    [InlineData("plugin aprove", "Did you mean approve?")]
    [InlineData("xyzzyxyzzy", "There are: serve, demo")]
    [InlineData("backup --Data x", "--Data")]
    [InlineData("new family xml a", "'xml'")]
    [InlineData("serve --hlep", "--hlep is not a setting")]
    [InlineData("--Rebuild:Lissten=x", "Did you mean Listen?")]
    [InlineData("verify --data /nowhere/at/all", "There is no database")]
    public async Task What_is_not_understood_is_said_in_words_with_what_was_probably_meant(string line, string words)
    {
        var (code, _, errors) = await Run(line.Split(' '));

        Assert.Equal(2, code);
        Assert.Contains(words, errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
    }

    [FileFact]
    public async Task A_shop_is_backed_up_verified_restored_and_taken_over_while_it_is_served()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Bore("u1", "1.8776");
        var stands = await http.Read("/v1/audit/verification");
        var (head, entries) = ((string)stands["head"]!, (long)stands["entries"]!);
        var (elsewhere, third) = (Path.Combine(server.DataFolder, "elsewhere"), Path.Combine(server.DataFolder, "third"));
        var file = Path.Combine(server.DataFolder, "out.ndjson");

        var backup = await Done("backup", "--data", server.DataFolder);
        var folder = backup.Split('\n')[0].Trim();
        Assert.Contains(head, backup, StringComparison.Ordinal);
        Assert.Contains("intact", await Done("verify", folder), StringComparison.Ordinal);
        Assert.Contains($"the noted head is entry {entries};", await Done("verify", "--head", head, "--data", server.DataFolder), StringComparison.Ordinal);
        Assert.Contains(head, await Done("export", file, "--data", server.DataFolder), StringComparison.Ordinal);
        Assert.Contains("nothing stands there", await Done("restore", folder, "--dry-run", "--data", elsewhere), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(elsewhere, "shop.db")));
        var restored = await Done("restore", folder, "--person", "Ada", "--data", elsewhere);
        Assert.Contains("Revoked: tests.", restored, StringComparison.Ordinal);
        Assert.Contains("\n  rb_", restored, StringComparison.Ordinal);
        Assert.Contains("revoked", (await Done("token", "list", "--data", elsewhere)).Split('\n').Single(l => l.StartsWith("tests ", StringComparison.Ordinal)), StringComparison.Ordinal);
        // A token revoked, the restore on record, a token issued.
        Assert.Contains($"entries  {entries + 3}\n", await Done("verify", "--head", head, "--data", elsewhere), StringComparison.Ordinal);
        await Done("import", file, "--data", third);
        Assert.Contains(head, await Done("verify", "--data", third), StringComparison.Ordinal);

        var (code, _, errors) = await Run("restore", folder, "--data", server.DataFolder);
        Assert.Equal(2, code);
        Assert.Contains("Another program holds the database", errors, StringComparison.Ordinal);
    }

    [FileFact]
    public async Task Verify_ends_with_1_and_names_the_entry_when_something_was_changed()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        server.Meddle("DROP TRIGGER entry_is_not_changed; UPDATE entry SET actor = 'nobody' WHERE sequence = 2");

        var (code, said, _) = await Run("verify", "--data", server.DataFolder);

        Assert.Equal(1, code);
        Assert.Contains("BROKEN   entry 2: it was changed after it was written", said, StringComparison.Ordinal);
    }

    private static async Task<string> Done(params string[] args)
    {
        var (code, said, errors) = await Run(args);
        Assert.True(code == 0, $"{string.Join(' ', args)}: {code}\n{said}\n{errors}");
        return said;
    }

    private static async Task<(int Code, string Said, string Errors)> Run(params string[] args)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        return (await CommandLine.Run(args, output, errors), output.ToString(), errors.ToString());
    }

    private static IEnumerable<(string[] Path, bool Leaf)> Commands(Command command, string[] path) =>
        command.Subcommands.SelectMany(c => Commands(c, [.. path, c.Name])).Prepend((path, path.Length > 0 && command.Subcommands.Count == 0));
}
