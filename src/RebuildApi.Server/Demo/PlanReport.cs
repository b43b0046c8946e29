using System.Globalization;
using System.Text;
using System.Text.Json;

namespace RebuildApi.Server.Demo;

/// <summary>Has the demo unit planned twice, the cheaper and the more conservative way, chooses the cheaper, and prints both with the kit and the quote.</summary>
public sealed class PlanReport(HttpClient http, TextWriter output)
{
    private const string Person = "Wren";
    private readonly ReportText _text = new(output);

    /// <summary>Prints everything.</summary>
    /// <returns>Whether every request was answered.</returns>
    public async Task<bool> Print(string unit)
    {
        using var cheaper = await Post($"/v1/units/{unit}/plans", """{ "person": "Wren", "objective": "least-cost" }""");
        using var surer = await Post($"/v1/units/{unit}/plans", """{ "person": "Wren", "objective": "most-conservative" }""");
        if (!HasPlan(cheaper) || !HasPlan(surer))
            return await Nothing(cheaper, surer);
        var id = cheaper!.RootElement.GetProperty("id").GetString();
        using var other = await Get($"/v1/units/{unit}/plans/{id}?against={surer!.RootElement.GetProperty("id").GetString()}");
        using var chosen = await Post($"/v1/units/{unit}/plans/{id}/approvals", $$"""{ "person": "{{Person}}", "reason": "The cheaper one; the gear from the shelf is read again first." }""");
        using var kept = await Post($"/v1/units/{unit}/reservations", $$"""{ "person": "{{Person}}" }""");
        using var quote = await Post($"/v1/units/{unit}/quote", $$"""{ "person": "{{Person}}" }""");
        if (chosen is null || kept is null || quote is null)
            return false;
        using var kit = await Get($"/v1/units/{unit}/kit");
        _text.Heading("two plans");
        Plan("The cheaper", cheaper.RootElement);
        Plan("The more conservative", surer.RootElement);
        Differences(other.RootElement);
        _text.Heading("the sleeve that serves third and fourth");
        Sleeve(cheaper.RootElement, quote.RootElement);
        _text.Heading("the kit of the cheaper plan");
        Kit(kit.RootElement);
        _text.Heading("the quote");
        Quote(quote.RootElement);
        return true;
    }

    private void Plan(string which, JsonElement plan)
    {
        var (cost, lines) = (plan.GetProperty("cost"), Entries(plan, "lines"));
        _text.Line("  ", $"{which} ({Text(plan, "status")}): {Money(cost.GetProperty("total"))} to compare by; parts {Money(cost.GetProperty("parts"))}, labour {Money(cost.GetProperty("labour"))}, "
            + $"what is still unsure {Money(cost.GetProperty("comeback"))}. Ready {plan.GetProperty("readyInDays").GetInt32()} days after the order, {plan.GetProperty("minutes").GetDecimal():0} minutes at the bench.");
        _text.Line("      ", $"{lines.Count(l => Text(l, "disposition") == "reuse")} parts go back as they are, {lines.Count(l => Text(l, "disposition") == "rework")} after work, "
            + $"{lines.Count(l => Text(l, "disposition") == "replace")} places get another.");
        foreach (var doubt in Entries(plan, "conditions").Where(c => Text(c, "code") is "measure-first" or "look-first"))
            _text.Line("      ", $"first: {Text(doubt, "subject")}. {Text(doubt, "text")}");
        foreach (var reading in Entries(plan, "toMeasure").Where(m => m.GetProperty("inPlan").GetBoolean()).Take(2))
        {
            _text.Line("      ", string.Create(CultureInfo.InvariantCulture,
                $"worth reading: {Text(reading, "position")}, {Money(reading.GetProperty("value"))} on average; good with {100 * reading.GetProperty("chanceGood").GetDouble():0.#} %, then the whole costs {Money(reading.GetProperty("costIfGood"))}"));
        }
    }

    private void Differences(JsonElement plan)
    {
        _text.Line("  ", "Where they differ:");
        foreach (var place in Entries(plan, "against"))
            _text.Line("      ", $"{Text(place, "position")}: {Words(Said(place, "this"))} in the cheaper, {Words(Said(place, "other"))} in the other");
    }

    /// <summary>Third gear is back-tapered and leaned over, fourth is straight, and one sleeve serves both: which exchange is really the cheapest.</summary>
    private void Sleeve(JsonElement plan, JsonElement quote)
    {
        _text.Line("  ", "Third gear came in back-tapered and leaned over, fourth straight; no sleeve suits both. The cheapest way out:");
        foreach (var place in new[] { "third-gear", "sleeve-3-4", "input-gear" })
        {
            var line = Entries(plan, "lines").First(l => Text(l, "position") == place);
            var price = line.TryGetProperty("price", out var known) && Text(line, "disposition") == "replace" ? ", " + Money(known) : "";
            _text.Line("      ", $"{place}: {Named(line, quote)}{price}");
            if (line.TryGetProperty("nextBest", out var next))
                _text.Line("        ", $"next best, {Words(Text(next, "candidate"))}: the whole would cost {Money(next.GetProperty("extra"))} more");
        }

        foreach (var reason in Entries(Entries(plan, "lines").First(l => Text(l, "position") == "third-gear"), "reasons"))
            _text.Line("      ", "why: " + Text(reason, "text"));
    }

    private void Kit(JsonElement kit)
    {
        foreach (var pick in Entries(kit, "picks"))
            _text.Line("  ", $"from the shelf ({Said(pick, "bin")}): {pick.GetProperty("quantity").GetInt32()} {Text(pick, "name")}, {Text(pick, "stock")}, kept until {Said(pick, "reservedUntil").Split('T')[0]}");
        foreach (var order in Entries(kit, "orders"))
        {
            _text.Line("  ", $"order from {Text(order, "vendor")}, there in {order.GetProperty("leadDays").GetInt32()} day(s), {Money(order.GetProperty("net"))}:");
            _text.Line("      ", string.Join("; ", Entries(order, "lines").Select(l => $"{l.GetProperty("quantity").GetInt32()} {Text(l, "name")}")));
        }

        foreach (var piece in Entries(kit, "assembly").Where(a => Entries(a, "pieces").Length > 0))
            _text.Line("  ", $"{Text(piece, "name")}: {string.Join(" + ", Entries(piece, "pieces").Select(p => $"{Text(p, "member")} ({Both(p.GetProperty("thickness"))})"))}");
        foreach (var work in Entries(kit, "work"))
        {
            var again = string.Join(", ", Entries(work, "remeasure").Select(r => r.GetString()));
            _text.Line("  ", $"work: {Text(work, "name")}, {work.GetProperty("minutes").GetDecimal():0} minutes{(again.Length > 0 ? ", then read again " + again : "")}");
        }
    }

    private void Quote(JsonElement quote)
    {
        foreach (var line in Entries(quote, "lines"))
        {
            var (chance, minutes) = (line.GetProperty("chance").GetDecimal(), Text(line, "measure") == "minute" ? " minutes" : "");
            _text.Line("  ", string.Create(CultureInfo.InvariantCulture,
                $"{Text(line, "need")}: {line.GetProperty("quantity").GetDecimal():0}{minutes} {Text(line, "text")}, {Money(line.GetProperty("net"))} + {Money(line.GetProperty("taxAmount"))} tax{(chance < 1 ? $" (chance {chance * 100:0.#} %)" : "")}"));
        }

        var (required, range) = (quote.GetProperty("required"), quote.GetProperty("range"));
        _text.Line("  ", $"To be agreed to: {Money(required.GetProperty("net"))} and {Money(required.GetProperty("tax"))} tax, {Money(required.GetProperty("gross"))}.");
        _text.Line("  ", $"It will lie between {Money(range.GetProperty("low"))} and {Money(range.GetProperty("high"))}, likely {Money(range.GetProperty("likely"))}. Holds until {Text(quote, "expires").Split('T')[0]}.");
    }

    private static string Named(JsonElement line, JsonElement quote)
    {
        if (Text(line, "disposition") != "replace")
            return "the one that came in goes back";
        var place = Text(line, "position");
        var named = Entries(quote, "lines").FirstOrDefault(l => Entries(l, "positions").Any(p => p.GetString() == place));
        return $"{(named.ValueKind == JsonValueKind.Object ? Text(named, "text") : "")} ({Words(Text(line, "candidate"))})";
    }

    private async Task<bool> Nothing(params JsonDocument?[] answers)
    {
        foreach (var answer in answers.OfType<JsonDocument>())
        {
            foreach (var conflict in Entries(answer.RootElement, "conflicts"))
                await output.WriteLineAsync("  no plan: " + Text(conflict, "text"));
        }

        return false;
    }

    private async Task<JsonDocument> Get(string path) => await JsonDocument.ParseAsync(await http.GetStreamAsync(path));

    private async Task<JsonDocument?> Post(string path, string body)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await http.PostAsync(new Uri(path, UriKind.Relative), content);
        var text = await answer.Content.ReadAsStringAsync();
        if (answer.IsSuccessStatusCode)
            return JsonDocument.Parse(text);
        await output.WriteLineAsync($"    refused: {(int)answer.StatusCode} {text}");
        return null;
    }

    private static bool HasPlan(JsonDocument? answer) => answer is not null && answer.RootElement.TryGetProperty("cost", out _);

    private static string Both(JsonElement thickness)
    {
        var mm = thickness.GetProperty("value").GetDecimal();
        return FormattableString.Invariant($"{mm} mm, {mm / 25.4m:0.0000} in");
    }

    /// <summary>What a plan calls a part, as a person would say it.</summary>
    private static string Words(string candidate) => candidate.Split('/') switch
    {
        ["found"] => "its own",
        ["order", var part] => "new " + part,
        ["shelf", var item] => item + " from the shelf",
        _ => candidate,
    };

    private static string Money(JsonElement money) =>
        string.Create(CultureInfo.InvariantCulture, $"{money.GetProperty("minor").GetInt64() / 100m:0.00} {money.GetProperty("currency").GetString()}");

    private static JsonElement[] Entries(JsonElement item, string list) => [.. item.GetProperty(list).EnumerateArray()];

    private static string Text(JsonElement item, string name) => item.GetProperty(name).GetString()!;

    private static string Said(JsonElement item, string name) => item.TryGetProperty(name, out var text) ? text.GetString()! : "–";
}
