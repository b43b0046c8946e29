using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace RebuildApi.Engine.MonteCarlo;

/// <summary>
/// Uniform random numbers, sixteen at a time: xoshiro256+ (Blackman and Vigna, Scrambled linear pseudorandom number generators, ACM TOMS
/// 2021; made for floating-point numbers, which take its sound upper bits) in sixteen lanes, each begun through SplitMix64 from one number and the
/// number of the stream. The same two give the same numbers on every machine and whatever else is drawn beside them. Two groups of lanes run abreast so that neither waits for itself.
/// </summary>
public struct UniformStream
{
    /// <summary>Numbers are drawn in multiples of this many.</summary>
    public const int Lanes = 16;

    private const ulong OneInBits = 0x3FF0_0000_0000_0000;
    private const double HalfAStepBelowOne = 1 - 1.0 / (1L << 53);

    private Group _a;
    private Group _b;

    /// <summary>Starts a stream.</summary>
    /// <param name="seed">Where the numbers begin.</param>
    /// <param name="stream">The number of the stream; streams of one seed are unrelated.</param>
    public UniformStream(ulong seed, ulong stream)
    {
        var state = Mixed(seed) ^ Mixed(unchecked(stream * 0xD1B5_4A32_D192_ED03 + 0x8CB9_2BA7_2F3D_8DD7));
        Span<ulong> words = stackalloc ulong[64];
        foreach (ref var word in words)
        {
            state = unchecked(state + 0x9E37_79B9_7F4A_7C15);
            word = Mixed(state);
        }

        _a = new Group(words[..32]);
        _b = new Group(words[32..]);
    }

    /// <summary>Fills with values of (2k + 1)·2⁻⁵³, all in 0..1 with both ends excluded. The length is a multiple of <see cref="Lanes"/>.</summary>
    public void Fill(Span<double> values)
    {
        var (a, b) = (_a, _b);
        ref var first = ref MemoryMarshal.GetReference(values);
        for (var i = 0; i <= values.Length - Lanes; i += Lanes)
        {
            Uniform(a.Next()).StoreUnsafe(ref first, (nuint)i);
            Uniform(b.Next()).StoreUnsafe(ref first, (nuint)i + 8);
        }

        (_a, _b) = (a, b);
    }

    /// <summary>The upper 52 bits as the fraction of a double in 1..2, moved to the middle of its step in 0..1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Uniform(Vector512<ulong> bits) =>
        ((bits >>> 12) | Vector512.Create(OneInBits)).AsDouble() - Vector512.Create(HalfAStepBelowOne);

    /// <summary>The finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).</summary>
    private static ulong Mixed(ulong z)
    {
        z = unchecked((z ^ (z >> 30)) * 0xBF58_476D_1CE4_E5B9);
        z = unchecked((z ^ (z >> 27)) * 0x94D0_49BB_1331_11EB);
        return z ^ (z >> 31);
    }

    /// <summary>Eight lanes of xoshiro256+.</summary>
    private struct Group(ReadOnlySpan<ulong> words)
    {
        private Vector512<ulong> _s0 = Vector512.Create(words[..8]);
        private Vector512<ulong> _s1 = Vector512.Create(words[8..16]);
        private Vector512<ulong> _s2 = Vector512.Create(words[16..24]);
        private Vector512<ulong> _s3 = Vector512.Create(words[24..32]);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public Vector512<ulong> Next()
        {
            // Each new word from the old ones alone, so that two exclusive ors become one instruction where the machine has it.
            var (s0, s1, s2, s3) = (_s0, _s1, _s2, _s3);
            _s0 = s0 ^ s3 ^ s1;
            _s1 = s1 ^ s2 ^ s0;
            _s2 = s2 ^ s0 ^ (s1 << 17);
            _s3 = Rotated(s3 ^ s1, 45);
            return s0 + s3;
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static Vector512<ulong> Rotated(Vector512<ulong> x, [ConstantExpected] byte by) =>
            Avx512F.IsSupported ? Avx512F.RotateLeft(x, by) : (x << by) | (x >>> (64 - by));
    }
}
