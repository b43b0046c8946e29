using CsCheck;

namespace RebuildApi.PluginHost.Tests;

/// <summary>The worker's end of the protocol, without a process around it.</summary>
public sealed class WorkerProtocolTests
{
    private const string Seed = "0N0XIzNsQ0O2";

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

    [Fact]
    public void A_conversation_that_is_cut_off_anywhere_ends_a_worker_quietly()
    {
        var whole = Conversation();

        Gen.Int[0, whole.Length].Sample(at => PluginWorker.Run(new MemoryStream(whole[..at]), new MemoryStream()), iter: 60, seed: Seed, threads: 1);
    }

    [Fact]
    public void A_garbled_conversation_ends_a_worker_quietly()
    {
        var whole = Conversation();

        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Byte).Array[1, 8].Sample(
            changes => PluginWorker.Run(new MemoryStream(Changed(whole, changes)), new MemoryStream()), iter: 60, seed: Seed, threads: 1);
    }

    [Theory]
    [InlineData(int.MaxValue)]
    [InlineData(int.MinValue)]
    [InlineData(-1)]
    [InlineData((64 << 20) + 1)]
    public void A_length_out_of_all_measure_is_not_believed(int length)
    {
        var output = new MemoryStream();
        var before = GC.GetTotalAllocatedBytes();

        PluginWorker.Run(new MemoryStream([.. BitConverter.GetBytes(length), 1, 2, 3]), output);

        Assert.Equal(0, output.Length);
        Assert.True(GC.GetTotalAllocatedBytes() - before < 16 << 20, "The length was believed.");
    }

    [Theory]
    [InlineData("judge", "side", "{}")]
    [InlineData("read", "a.yaml", "family: a")]
    [InlineData("write", "{}")]
    [InlineData("load")]
    public void A_question_out_of_order_is_answered_with_a_fault(params string[] words)
    {
        var output = new MemoryStream();

        PluginWorker.Run(new MemoryStream(Framed(words)), output);

        Assert.Contains("fault", System.Text.Encoding.UTF8.GetString(output.ToArray()), StringComparison.Ordinal);
    }

    /// <summary>Load, then ask.</summary>
    private static byte[] Conversation()
    {
        var sha256 = PluginBench.Sha256Of($"{PluginBench.Sha256Of(File.ReadAllBytes(Shelf.PathOf("good-with-hook")))}  good-with-hook.dll\n");
        return [.. Framed(["load", Shelf.FolderOf("good-with-hook"), sha256]), .. Framed(["judge", "side", "{}"])];
    }

    private static byte[] Changed(byte[] whole, (int At, byte To)[] changes)
    {
        var changed = whole.ToArray();
        foreach (var (at, to) in changes)
            changed[at] = to;
        return changed;
    }

    private static byte[] Framed(string[] words)
    {
        var parts = words.Select(System.Text.Encoding.UTF8.GetBytes).SelectMany(p => (byte[])[.. BitConverter.GetBytes(p.Length), .. p]).ToArray();
        return [.. BitConverter.GetBytes(parts.Length), .. parts];
    }
}
