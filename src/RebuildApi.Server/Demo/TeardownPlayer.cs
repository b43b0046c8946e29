using System.Globalization;
using System.Text;
using System.Text.Json;

namespace RebuildApi.Server.Demo;

/// <summary>Sends the teardown as the benches would, each request with its own idempotency key, and prints what the service doubts.</summary>
public sealed class TeardownPlayer(HttpClient http, TextWriter output)
{
    /// <summary>Plays every step.</summary>
    /// <returns>Whether all were taken.</returns>
    public async Task<bool> Play(Teardown teardown)
    {
        for (var i = 0; i < teardown.Steps.Count; i++)
        {
            if (!await Send(teardown.Steps[i], string.Create(CultureInfo.InvariantCulture, $"demo-{teardown.Steps.Count}-{i}")))
                return false;
        }

        return true;
    }

    private async Task<bool> Send(TeardownStep step, string key)
    {
        await output.WriteLineAsync("  " + step.Say);
        using var request = new HttpRequestMessage(new HttpMethod(step.Method), step.Path);
        request.Content = new StringContent(step.Body.GetRawText(), Encoding.UTF8, "application/json");
        request.Headers.Add("Idempotency-Key", key);
        if (step.Method == "PATCH")
            request.Headers.Add("If-Match", "*");
        using var response = await http.SendAsync(request);
        var body = await response.Content.ReadAsStringAsync();
        if (!response.IsSuccessStatusCode)
        {
            await output.WriteLineAsync($"    refused: {(int)response.StatusCode} {body}");
            return false;
        }

        await PrintDoubts(body);
        return true;
    }

    private async Task PrintDoubts(string body)
    {
        using var answer = JsonDocument.Parse(body);
        if (!answer.RootElement.TryGetProperty("doubts", out var doubts))
            return;
        foreach (var doubt in doubts.EnumerateArray())
            await output.WriteLineAsync("    doubt: " + doubt.GetProperty("text").GetString());
    }
}
