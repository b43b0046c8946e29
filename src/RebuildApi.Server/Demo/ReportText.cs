using System.Globalization;
using System.Text.Json;

namespace RebuildApi.Server.Demo;

/// <summary>Lays answers out as plain lines. What is good is said in one line; what is not, with its reasons.</summary>
public sealed class ReportText(TextWriter output)
{
    private const int Width = 118;

    /// <summary>A heading.</summary>
    public void Heading(string words)
    {
        output.WriteLine();
        output.WriteLine(words.ToUpperInvariant());
    }

    /// <summary>Is each part good?</summary>
    public void Parts(IReadOnlyList<JsonElement> parts)
    {
        Line("  good in itself: ", string.Join(", ", parts.Where(p => Text(p, "disposition") == "reuse").Select(p => Text(p, "subject"))));
        Line("  always new: ", string.Join(", ", parts.Where(IsAlwaysNew).Select(p => Text(p, "subject"))));
        foreach (var part in parts.Where(p => Text(p, "disposition") != "reuse" && !IsAlwaysNew(p)))
        {
            Line("  ", $"{Text(part, "subject")} ({Text(part, "name")}): {Text(part, "disposition")}, {Text(part, "outcome")}");
            Sentences(part, "reasons");
            Each(part, "operations", o => "can be done: " + Text(o, "name"));
            Each(part, "advice", a => "look further: " + a.GetString());
        }
    }

    /// <summary>Will the clearances come right, and how?</summary>
    public void Clearances(IReadOnlyList<JsonElement> clearances)
    {
        Line("  clearances right: ", string.Join(", ", clearances.Where(IsGood).Select(c => Text(c, "clearance"))));
        foreach (var clearance in clearances.Where(c => !IsGood(c)))
        {
            Line("  ", $"{Text(clearance, "clearance")} ({Text(clearance, "name")}): {Text(clearance, "outcome")}");
            Sentences(clearance.GetProperty("verdict"), "reasons");
            if (clearance.TryGetProperty("consequence", out var consequence) && consequence.ValueKind == JsonValueKind.String)
                Line("      ", consequence.GetString()!);
            if (clearance.TryGetProperty("ring", out var ring) && ring.ValueKind == JsonValueKind.Object)
                Ring(ring);
        }
    }

    /// <summary>May the parts run together?</summary>
    public void Pairings(IReadOnlyList<JsonElement> pairings)
    {
        Line("  compatible: ", string.Join(", ", pairings.Where(IsGood).Select(p => Text(p, "pairing"))));
        foreach (var pairing in pairings.Where(p => !IsGood(p)))
        {
            Line("  ", $"{Text(pairing, "pairing")} ({Text(pairing, "name")}): {Text(pairing, "outcome")}");
            Sentences(pairing, "reasons");
            Each(pairing, "cures", c => "cure: " + Text(c, "text"));
            Each(pairing, "settles", s => "look at: " + s.GetString());
        }
    }

    /// <summary>May each sleeve serve all its gears, and with which form?</summary>
    public void Neighbourhoods(IReadOnlyList<JsonElement> neighbourhoods)
    {
        foreach (var sleeve in neighbourhoods)
        {
            Line("  ", $"{Text(sleeve, "name")}: {Text(sleeve, "outcome")}");
            Sentences(sleeve, "reasons");
            foreach (var choice in sleeve.GetProperty("choices").EnumerateArray())
                Choice(choice);
            Each(sleeve, "cures", c => "cure: " + Text(c, "text"));
        }
    }

    /// <summary>Does what was found explain the complaint?</summary>
    public void Complaint(IEnumerable<JsonElement> symptoms)
    {
        foreach (var symptom in symptoms)
            Sentences(symptom, "reasons");
    }

    /// <summary>What may lie behind the complaint, one line for each cause.</summary>
    public void Causes(IEnumerable<JsonElement> causes)
    {
        foreach (var cause in causes)
            Line("  ", $"{Text(cause, "name")}: {Percent(cause, "probability")} % ({Percent(cause, "low")} to {Percent(cause, "high")})");
    }

    /// <summary>The same with the two clues that weigh most.</summary>
    public void CausesWithReasons(IEnumerable<JsonElement> causes)
    {
        foreach (var cause in causes)
        {
            Causes([cause]);
            foreach (var reason in cause.GetProperty("reasons").EnumerateArray().Take(2))
                Line("      ", Text(reason, "text"));
        }
    }

    /// <summary>What to try while the box is still whole.</summary>
    public void NextCheck(IEnumerable<JsonElement> checks)
    {
        foreach (var check in checks.Where(c => Text(c, "stage") == "before-strip-down").Take(1))
            Line("  next check: ", $"{Text(check, "name")}? ({check.GetProperty("minutes").GetDecimal().ToString(CultureInfo.InvariantCulture)} min)");
    }

    /// <summary>What has not been read or seen yet.</summary>
    public void Missing(IEnumerable<JsonElement> missing)
    {
        foreach (var place in missing.GroupBy(m => Text(m, "subject")))
            Line("  ", $"{place.Key}: {string.Join(", ", place.Select(m => $"{Text(m, "what")} {Text(m, "id")}"))}");
    }

    /// <summary>What keeps the unit from going on.</summary>
    public void Blocks(IEnumerable<JsonElement> blocks)
    {
        foreach (var why in blocks.GroupBy(b => Text(b.GetProperty("reason"), "text")))
            Line("  ", $"{why.Key} {string.Join(", ", why.Select(b => Text(b, "subject")))}");
    }

    /// <summary>Where a unit is, what was left out on the way, and what its next gate asks for.</summary>
    public void Gate(JsonElement stages)
    {
        Line("  ", $"at: {Text(stages, "stage")}");
        foreach (var left in stages.GetProperty("leftOut").EnumerateArray())
            Line("  ", $"{Text(left, "requirement")} {Text(left, "state")}: {Text(left, "reason")} ({Text(left, "person")})");
        if (!stages.TryGetProperty("next", out var next))
            return;
        foreach (var asked in next.GetProperty("requirements").EnumerateArray())
        {
            var unmet = asked.GetProperty("unmet").EnumerateArray().ToArray();
            Line("  ", $"to {Text(next, "to")}: {Text(asked, "name")}: {(unmet.Length == 0 ? "yes" : $"no, {unmet.Length.ToString(CultureInfo.InvariantCulture)} open; {Text(unmet[0], "words")} {Text(unmet[0], "fix")}")}");
        }
    }

    /// <summary>What can hurt.</summary>
    public void Cautions(IEnumerable<JsonElement> cautions)
    {
        foreach (var caution in cautions)
            Line("  ", caution.GetString()!);
    }

    private void Choice(JsonElement choice)
    {
        Line("      ", $"{Text(choice, "form")} sleeve{(choice.GetProperty("present").GetBoolean() ? ", as it is" : "")}: {Text(choice, "outcome")}");
        foreach (var side in choice.GetProperty("sides").EnumerateArray())
            Line("        ", $"{Text(side, "name")}: {Text(side, "outcome")}. {Text(side.GetProperty("reasons")[0], "text")}");
    }

    private void Ring(JsonElement ring)
    {
        Sentences(ring, "reasons");
        foreach (var cut in ring.GetProperty("cuts").EnumerateArray())
        {
            Line("      ", $"cut {Text(cut, "at")} from the {Text(cut, "datum")}: {Text(cut, "permission")}");
            Sentences(cut, "reasons");
            Each(cut, "touches", t => $"also changes {Text(t, "clearance")}: {Text(t, "outcome")} afterwards");
            Each(cut, "cautions", c => "caution: " + c.GetString());
        }
    }

    private void Sentences(JsonElement item, string list) => Each(item, list, r => Text(r, "text"));

    private void Each(JsonElement item, string list, Func<JsonElement, string> words)
    {
        foreach (var entry in item.GetProperty(list).EnumerateArray())
            Line("      ", words(entry));
    }

    /// <summary>A line broken at spaces, the rest indented under it. Nothing is printed for no words.</summary>
    public void Line(string indent, string words)
    {
        if (words.Length == 0)
            return;
        var line = indent;
        foreach (var word in words.Split(' '))
        {
            if (line.Length + word.Length > Width)
            {
                output.WriteLine(line.TrimEnd());
                line = new string(' ', indent.Length - indent.TrimStart().Length + 2);
            }

            line += word + " ";
        }

        output.WriteLine(line.TrimEnd());
    }

    private static bool IsAlwaysNew(JsonElement part) => part.GetProperty("reasons").EnumerateArray().All(r => Text(r, "code") == "single-use");

    private static bool IsGood(JsonElement answer) => Text(answer, "outcome") is "conforming" or "compatible";

    private static string Percent(JsonElement item, string name) => Math.Round(100 * item.GetProperty(name).GetDouble()).ToString(CultureInfo.InvariantCulture);

    private static string Text(JsonElement item, string name) => item.GetProperty(name).GetString()!;
}
