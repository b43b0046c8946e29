using System.Globalization;
using RebuildApi.Checkers.Plans;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Pairings;

/// <summary>Gears that run together: their teeth, hands and centres.</summary>
internal static class Meshes
{
    private static readonly string[] s_mates = ["driver", "driven"];

    public static IReadOnlySet<Compatibility> Pair(CheckedCase parts)
    {
        if (parts.TeethOf("driver") is not { } a || parts.TeethOf("driven") is not { } b)
            return Says.Open;
        var geometry = (a.NormalModule, a.NormalPressureAngle, a.HelixAngle) == (b.NormalModule, b.NormalPressureAngle, b.HelixAngle) && Oppose(a.Hand, b.Hand);
        var seen = parts.List("see").SelectMany(n => new[] { ("driver", a), ("driven", b) }.Select(x =>
            parts.OneOf(x.Item1, n, n == "hand" ? Word(x.Item2.Hand) : x.Item2.Teeth.ToString(CultureInfo.InvariantCulture))));
        var kept = parts.Option("keep-together") == "yes"
            ? [Sets.Together(parts, [.. s_mates.Select(r => (parts.Places[r].Position, parts.Places[r].Index))], SetBond.ReplaceTogether)]
            : Array.Empty<IReadOnlySet<Compatibility>>();
        return Says.Worst([parts.Holds(geometry), .. seen, .. kept]);
    }

    /// <summary>Mates have opposite hands; two rows of one cluster the same, so that their thrusts oppose.</summary>
    public static IReadOnlySet<Compatibility> Hands(CheckedCase parts)
    {
        if (HandOf(parts, "first") is not { } first || HandOf(parts, "second") is not { } second)
            return Says.Open;
        return parts.Holds(parts.Option("relation") == "same-cluster" ? first == second : Oppose(first, second));
    }

    /// <summary>The case's centre distance less the one without backlash: a = mn·z/(2·cos β), aw = a·cos αt/cos αwt, inv αwt = inv αt + 2·x·tan αn/z (ISO 21771).</summary>
    public static IReadOnlySet<Compatibility> Centre(CheckedCase parts)
    {
        if (parts.TeethOf("driver") is not { } a || parts.TeethOf("driven") is not { } b)
            return Says.Open;
        if (Count(parts, "driver", a) is not { } first || Count(parts, "driven", b) is not { } second || parts.Read("case", "centre-distance") is not { } read)
            return Says.Open;
        var teeth = first + second;
        var transverse = Math.Atan(Math.Tan(a.NormalPressureAngle) / Math.Cos(a.HelixAngle));
        var involute = Math.Tan(transverse) - transverse + (2 * Math.Tan(a.NormalPressureAngle) * (a.ProfileShift + b.ProfileShift) / teeth);
        if (involute < 0)
            return Says.Open;
        var without = a.NormalModule.Nanometres * teeth / (2 * Math.Cos(a.HelixAngle)) * Math.Cos(transverse) / Math.Cos(AngleOf(involute));
        return parts.Within(Says.Less(read, CheckedValue.Exactly(Math.Round(without))), parts.Number("play-low"), parts.Number("play-high"));
    }

    private static int? Count(CheckedCase parts, string role, ToothSet declared) => parts.Option("see") != "teeth" ? declared.Teeth
        : int.TryParse(parts.See(role, "teeth"), NumberStyles.None, CultureInfo.InvariantCulture, out var counted) ? counted : null;

    /// <summary>The angle whose tan α − α is given, by halving.</summary>
    private static double AngleOf(double involute)
    {
        var (low, high) = (0.0, 1.5);
        for (var i = 0; i < 100; i++)
        {
            var middle = (low + high) / 2;
            if (Math.Tan(middle) - middle < involute)
                low = middle;
            else
                high = middle;
        }

        return low;
    }

    private static Hand? HandOf(CheckedCase parts, string role)
    {
        var name = parts.NameAt(role, "hand");
        return parts.Values.Unit.KindOf(parts.Places[role].Position).Attributes.Any(a => a.Id == name)
            ? parts.See(role, "hand") switch { "left" => Hand.Left, "right" => Hand.Right, "spur" => Hand.Spur, _ => null }
            : parts.TeethOf(role)?.Hand;
    }

    private static bool Oppose(Hand a, Hand b) => a == Hand.Spur ? b == Hand.Spur : b != Hand.Spur && a != b;

    private static string Word(Hand hand) => hand switch { Hand.Left => "left", Hand.Right => "right", _ => "spur" };
}
