using RebuildApi.Server.Demo;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Server.Webhooks;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Docs;

/// <summary>The scripts that a shop may copy do what they say, against the service on a real connection.</summary>
public sealed class ExampleTests
{
    [WithProgramsFact("bash", "curl", "sha256sum")]
    public async Task A_unit_is_taken_in_read_and_judged_from_a_shell()
    {
        await using var server = await RealServer.Open();
        Assert.Contains("\"id\":\"sl-2001\"", (await Good(Script.Bash("intake", ["sl-2001", "brackenmere-4", "T \"2001\"", "Ada"], "", At(server)))).Output, StringComparison.Ordinal);
        await Good(Script.Bash("intake", ["sl-2001", "brackenmere-4", "T \"2001\"", "Ada"], "", At(server)));
        await Good(Script.Bash("readings", ["sl-2001", "readings.csv"], "", At(server)));
        await Good(Script.Bash("readings", ["sl-2001", "readings.csv"], "", At(server)));
        using var http = server.Client();
        Assert.Equal(2, (await http.Read("/v1/units/sl-2001/measurements"))["items"]!.AsArray().Count);
        var verdicts = (await Good(Script.Bash("verdicts", ["sl-2001"], "", At(server)))).Output;
        Assert.Contains("third-gear", verdicts, StringComparison.Ordinal);
        Assert.Contains("#end,", verdicts, StringComparison.Ordinal);
    }

    [WithProgramsFact("bash", "curl")]
    public async Task Values_are_checked_by_the_table_and_a_refusal_is_shown()
    {
        await using var server = await RealServer.Open();
        Assert.Contains("conforming", (await Good(Script.Bash("check", ["checks.csv", "brackenmere-4"], "", At(server)))).Output, StringComparison.Ordinal);
        var refused = await Script.Bash("verdicts", ["nobody"], "", At(server));
        Assert.Equal(1, refused.Code);
        Assert.Contains("unknown-unit", refused.Errors, StringComparison.Ordinal);
        Assert.Equal(2, (await Script.Bash("verdicts", [], "", At(server))).Code);
    }

    [WithProgramsFact("bash", "curl")]
    public async Task Invoice_lines_are_pulled_once_each_and_the_kit_is_a_workbook()
    {
        await using var server = await RealServer.Open();
        using var http = server.Client();
        await Planned(http);
        var place = Path.Combine(server.Folder, "place");
        var first = (await Good(Script.Bash("pull-invoice-lines", [place], "", At(server)))).Output.Trim().Split('\n');
        Assert.True(first.Length > 1);
        Assert.Single((await Good(Script.Bash("pull-invoice-lines", [place], "", At(server)))).Output.Trim().Split('\n'));
        await Good(Script.Bash("kit", ["sl-1047", Path.Combine(server.Folder, "kit.xlsx")], "", At(server)));
        Assert.Equal("PK"u8.ToArray(), (await File.ReadAllBytesAsync(Path.Combine(server.Folder, "kit.xlsx")))[..2]);
    }

    /// <summary>The published message of Standard Webhooks first, then one of the service's own signatures, then what was tampered with.</summary>
    [WithProgramsFact("bash", "openssl", "od")]
    public async Task A_message_is_checked_with_openssl()
    {
        const string Secret = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw";
        const string Body = """{"test": 2432232314}""";
        var now = DateTimeOffset.FromUnixTimeSeconds(1614265330);
        Assert.Equal(0, await Verified("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=", Body, "1614265330"));
        Assert.Equal(0, await Verified("v1,AAAA " + WebhookSignature.Of(Secret, "msg_p5jXN8AQM9LWM0D4loKWxJek", now, System.Text.Encoding.UTF8.GetBytes(Body)), Body, "1614265330"));
        Assert.Equal(1, await Verified("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=", Body + " ", "1614265330"));
        Assert.Equal(1, await Verified("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=", Body, "1614265931"));

        static async Task<int> Verified(string signature, string body, string now) => (await Script.Bash(
            "verify-webhook", [Secret], body,
            ("WEBHOOK_ID", "msg_p5jXN8AQM9LWM0D4loKWxJek"), ("WEBHOOK_TIMESTAMP", "1614265330"), ("WEBHOOK_SIGNATURE", signature), ("NOW", now))).Code;
    }

    [WithProgramsFact("pwsh")]
    public async Task The_scripts_for_PowerShell_do_the_same()
    {
        await using var server = await RealServer.Open();
        using var http = server.Client();
        await Good(Script.PowerShell("intake.ps1", ["-Unit", "sl-2001", "-Family", "brackenmere-4", "-Tag", "T", "-Person", "Ada"], At(server)));
        Assert.Contains("third-gear", (await Good(Script.PowerShell("verdicts.ps1", ["-Unit", "sl-2001"], At(server)))).Output, StringComparison.Ordinal);
        await Planned(http);
        var place = Path.Combine(server.Folder, "place");
        Assert.NotEmpty((await Good(Script.PowerShell("pull-invoice-lines.ps1", ["-Place", place], At(server)))).Output.Trim());
        Assert.Empty((await Good(Script.PowerShell("pull-invoice-lines.ps1", ["-Place", place], At(server)))).Output.Trim());
    }

    [Fact]
    public void Every_example_stands_in_their_readme()
    {
        var folder = Repository.PathTo("scripts", "examples");
        var readme = File.ReadAllText(Path.Combine(folder, "README.md"));
        var unnamed = Directory.GetFiles(folder).Select(Path.GetFileName).Where(f => f is not ("README.md" or "lib.sh") && !readme.Contains($"`{f}", StringComparison.Ordinal));
        Assert.Empty(unnamed);
    }

    private static (string, string)[] At(RealServer server) => [("REBUILD_URL", server.Address), ("REBUILD_TOKEN", server.Token)];

    private static async Task<Script> Good(Task<Script> run)
    {
        var done = await run;
        Assert.True(done.Code == 0, done.Errors + done.Output);
        return done;
    }

    private static async Task Planned(HttpClient http)
    {
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Load()));
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Shop()));
        await http.Make("/v1/units/sl-1047/plans", """{ "person": "Wren" }""");
        await http.Make("/v1/units/sl-1047/quote", """{ "person": "Wren" }""");
        await http.Make("/v1/units/sl-1047/quote/approvals", """{ "number": 1, "by": "Ferry Lane Farm", "person": "Wren" }""");
        await http.Make("/v1/units/sl-1047/invoice-lines", """{ "person": "Wren" }""");
    }
}
