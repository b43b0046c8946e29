using System.Text;

namespace Service;

/// <summary>A worker that answers its first question with something odd, the same for the same number.</summary>
internal static class OddWorker
{
    public static int Run(string oddity, int number)
    {
        using var output = Console.OpenStandardOutput();
        var random = new Random(number);
        var noise = new byte[random.Next(1, 4000)];
        random.NextBytes(noise);
        output.Write(oddity switch
        {
            "noise" => noise,
            "huge-length" => [.. BitConverter.GetBytes(int.MaxValue), .. noise],
            "negative-length" => [.. BitConverter.GetBytes(-1), .. noise],
            "cut-off" or "cut-off-and-waits" => [.. BitConverter.GetBytes(noise.Length + 1), .. noise],
            "part-too-long" => [.. BitConverter.GetBytes(8), .. BitConverter.GetBytes(1000), 1, 2, 3, 4],
            "another-word" => Framed("hello"u8.ToArray()),
            "declares-noise" => Framed("declared"u8.ToArray(), noise, [], noise),
            // The second frame is nobody's answer: nothing of the first one is a plug-in either.
            "answers-twice" => [.. Framed("answer"u8.ToArray(), noise), .. Framed("answer"u8.ToArray(), noise)],
            _ => [],
        });
        output.Flush();
        if (oddity is "cut-off-and-waits" or "says-nothing")
            Thread.Sleep(Timeout.Infinite);
        return 0;
    }

    private static byte[] Framed(params byte[][] parts)
    {
        var body = parts.SelectMany(p => (byte[])[.. BitConverter.GetBytes(p.Length), .. p]).ToArray();
        return [.. BitConverter.GetBytes(body.Length), .. body];
    }
}
