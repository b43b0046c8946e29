using System.Text;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Server.Webhooks;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Webhooks;

/// <summary>The secrets of receivers can't be read from the records.</summary>
public sealed class SecretKeeperTests
{
    [Fact]
    public async Task A_secret_is_in_no_database_and_in_no_backup_and_still_signs()
    {
        await using var telling = await Telling.Begin();
        var another = (string)(await telling.Http.Make("/v1/webhooks/w/secrets", """{ "hours": 1 }"""))["secret"]!;
        var backup = (string)(await telling.Http.Make("/v1/backups", "{}"))["folder"]!;
        await telling.TakeIn("u1");
        await telling.Until(() => telling.Told.Length == 1);

        Assert.True(telling.Receiver.Messages.Single().IsSignedWith(telling.Secret));
        Assert.True(telling.Receiver.Messages.Single().IsSignedWith(another));
        foreach (var file in Directory.GetFiles(telling.Server.DataFolder, "*", SearchOption.AllDirectories))
        {
            var letters = await Letters(file);
            Assert.All(new[] { telling.Secret, another }, secret => Assert.False(letters.Contains(secret["whsec_".Length..], StringComparison.Ordinal), file));
        }

        Assert.Empty(Directory.GetFiles(backup, "key-*", SearchOption.AllDirectories));
    }

    [Fact]
    public void The_folder_of_keys_is_its_owners_alone()
    {
        if (OperatingSystem.IsWindows())
            return;
        var data = Directory.CreateTempSubdirectory("keys-test-");
        var folder = Path.Combine(data.FullName, SecretKeeper.Folder);

        new SecretKeeper(folder).Close(new WebhookSecret("whsec_x", DateTimeOffset.UnixEpoch, null));

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
        data.Delete(recursive: true);
    }

    [Fact]
    public void Without_its_key_a_secret_signs_nothing_and_the_words_say_what_to_do()
    {
        var data = Directory.CreateTempSubdirectory("keys-test-");
        var secret = new WebhookSecret("whsec_x", DateTimeOffset.UnixEpoch, null);
        var closed = new SecretKeeper(Path.Combine(data.FullName, "one")).Close(secret);

        var failed = Assert.Throws<DeliveryFailedException>(() => new SecretKeeper(Path.Combine(data.FullName, "other")).Open([closed]));

        Assert.Contains("Replace the secret", failed.Message, StringComparison.Ordinal);
        Assert.Equal(secret, Assert.Single(new SecretKeeper(Path.Combine(data.FullName, "one")).Open([closed])));
        Assert.Equal(secret, Assert.Single(new SecretKeeper(Path.Combine(data.FullName, "one")).Open([secret])));
        data.Delete(recursive: true);
    }

    private static async Task<string> Letters(string file)
    {
        await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var reader = new StreamReader(stream, Encoding.Latin1);
        return await reader.ReadToEndAsync();
    }
}
