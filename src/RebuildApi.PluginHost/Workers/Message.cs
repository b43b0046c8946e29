using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Text;

namespace RebuildApi.PluginHost.Workers;

/// <summary>
/// One message between host and worker: its length, then parts, each with its length; all lengths as 32-bit little-endian numbers. What the parts mean
/// is the business of <see cref="WorkerProtocol"/>.
/// </summary>
internal sealed record Message(ImmutableArray<byte[]> Parts)
{
    private const int Word = sizeof(int);

    /// <summary>A message whose first part is a word.</summary>
    public static Message Of(string verb, params ReadOnlySpan<byte[]> parts) => new([Encoding.UTF8.GetBytes(verb), .. parts]);

    /// <summary>The first part as a word.</summary>
    public string Verb => Text(0);

    /// <summary>A part as text; empty when there is no such part.</summary>
    public string Text(int part) => part < Parts.Length ? Encoding.UTF8.GetString(Parts[part]) : "";

    /// <summary>Writes it whole.</summary>
    public void Write(Stream stream)
    {
        var bytes = new byte[Word + Parts.Sum(p => Word + p.Length)];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, bytes.Length - Word);
        var at = Word;
        foreach (var part in Parts)
        {
            BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(at), part.Length);
            part.CopyTo(bytes, at + Word);
            at += Word + part.Length;
        }

        stream.Write(bytes);
        stream.Flush();
    }

    /// <summary>Reads one message, or null when the other side has ended.</summary>
    /// <exception cref="InvalidDataException">It is longer than allowed, or not a message.</exception>
    /// <exception cref="EndOfStreamException">The other side ended in the middle.</exception>
    public static Message? Read(Stream stream, int longest)
    {
        var word = new byte[Word];
        var got = stream.ReadAtLeast(word, Word, throwOnEndOfStream: false);
        if (got == 0)
            return null;
        if (got < Word)
            throw new EndOfStreamException();
        var length = BinaryPrimitives.ReadInt32LittleEndian(word);
        if (length < 0 || length > longest)
            throw new InvalidDataException($"A message of {length} bytes is not one of ours.");
        var body = new byte[length];
        stream.ReadExactly(body);
        return new Message(Split(body));
    }

    private static ImmutableArray<byte[]> Split(byte[] body)
    {
        var parts = ImmutableArray.CreateBuilder<byte[]>();
        for (var at = 0; at < body.Length;)
        {
            var length = body.Length - at >= Word ? BinaryPrimitives.ReadInt32LittleEndian(body.AsSpan(at)) : -1;
            if (length < 0 || length > body.Length - at - Word)
                throw new InvalidDataException("A part of a message is longer than the message.");
            parts.Add(body[(at + Word)..(at + Word + length)]);
            at += Word + length;
        }

        return parts.ToImmutable();
    }
}
