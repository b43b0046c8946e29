namespace FamilyFiles.Forms;

/// <summary>How many letters must be put in, taken out or exchanged to make one word of another (Levenshtein 1966).</summary>
internal static class EditDistance
{
    private const int Longest = 64;

    /// <summary>The distance; words longer than any name are simply far.</summary>
    public static int Of(string a, string b)
    {
        if (a.Length > Longest || b.Length > Longest)
            return Longest;
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var (corner, left) = (row[0], i);
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var above = row[j];
                left = Math.Min(Math.Min(above, left) + 1, corner + (a[i - 1] == b[j - 1] ? 0 : 1));
                (corner, row[j]) = (above, left);
            }
        }

        return row[b.Length];
    }
}
