using CsCheck;

namespace RebuildApi.PluginHost.Tests;

/// <summary>The worker's end of the protocol, without a process around it.</summary>
public sealed class WorkerProtocolTests
{
    [Fact]
    public void Any_bytes_at_all_end_a_worker_quietly() =>
        Gen.Byte.Array[0, 200].Sample(bytes => PluginWorker.Run(new MemoryStream(bytes), new MemoryStream()), iter: 500);

    [Fact]
    public void Well_formed_nonsense_is_answered_with_a_fault() =>
        Gen.String[0, 20].Array[1, 4].Sample(
            words =>
            {
                var output = new MemoryStream();
                PluginWorker.Run(new MemoryStream(Framed(words)), output);
                return output.Length > 0 && System.Text.Encoding.UTF8.GetString(output.ToArray()).Contains("fault", StringComparison.Ordinal);
            },
            iter: 200);

    [Fact]
    public void A_worker_loads_only_what_has_the_hash_it_was_told()
    {
        var output = new MemoryStream();

        PluginWorker.Run(new MemoryStream(Framed(["load", Shelf.FolderOf("good-with-hook"), new string('0', 64)])), output);

        Assert.Contains("refused", System.Text.Encoding.UTF8.GetString(output.ToArray()), StringComparison.Ordinal);
    }

    private static byte[] Framed(string[] words)
    {
        var parts = words.Select(System.Text.Encoding.UTF8.GetBytes).SelectMany(p => (byte[])[.. BitConverter.GetBytes(p.Length), .. p]).ToArray();
        return [.. BitConverter.GetBytes(parts.Length), .. parts];
    }
}
