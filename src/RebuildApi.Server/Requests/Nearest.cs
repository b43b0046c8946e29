namespace RebuildApi.Server.Requests;

/// <summary>Finds the name that was probably meant.</summary>
public static class Nearest
{
    /// <summary>The allowed name nearest to what was sent, or null when none is near.</summary>
    public static string? To(string got, IEnumerable<string> allowed)
    {
        if (got.Length > 100)
            return null;
        var best = allowed
            .Select(name => (Name: name, Distance: Distance(got, name)))
            .OrderBy(x => x.Distance)
            .ThenBy(x => x.Name, StringComparer.Ordinal)
            .FirstOrDefault();
        return best.Name is not null && best.Distance <= Math.Max(2, best.Name.Length / 3) ? best.Name : null;
    }

    /// <summary>"Did you mean" as a fix, or null.</summary>
    public static string? Fix(string got, IEnumerable<string> allowed) => To(got, allowed) is { } name ? $"Did you mean {name}?" : null;

    /// <summary>How many letters must be put in, taken out or changed to get from one to the other, capitals aside (Levenshtein 1966).</summary>
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = diagonal + (char.ToUpperInvariant(a[i - 1]) == char.ToUpperInvariant(b[j - 1]) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[b.Length];
    }
}
