using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Access;

/// <summary>What it takes before other machines may come in.</summary>
public sealed class NetworkTests
{
    private static readonly string[] Named = [.. ServerOptions.OwnHosts, "shop-pc"];

    [Theory]
    [InlineData("tokens", false, true, "Rebuild:Lan=true")]
    [InlineData("tokens", true, false, "Set Rebuild:Hosts")]
    [InlineData("this-machine", true, true, "only loopback addresses are taken")]
    [InlineData("nobody", true, true, "Rebuild:Access is nobody")]
    public void An_address_that_others_reach_is_taken_only_when_everything_it_takes_is_set(string access, bool lan, bool named, string says)
    {
        foreach (var listen in new[] { "http://0.0.0.0:5280", "http://192.0.2.1:5280", "http://shop-pc:5280", "http://[::]:5280", "http://127.0.0.1:5280;http://192.0.2.1:5280" })
        {
            var options = new ServerOptions { Access = access, Lan = lan, Listen = listen, Hosts = named ? Named : ServerOptions.OwnHosts };
            Assert.Contains(says, Assert.Throws<InvalidOperationException>(() => Listening.Checked(options)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_goes_over_the_network_without_TLS_is_named()
    {
        var options = new ServerOptions { Lan = true, Hosts = Named, Certificate = "shop.pfx", Listen = "http://127.0.0.1:5280;http://192.0.2.1:5280;https://192.0.2.1:5281" };
        Listening.Checked(options);
        Assert.Equal(["http://192.0.2.1:5280"], Listening.Readable(options));
        Assert.Throws<InvalidOperationException>(() => Listening.Checked(options with { Certificate = null }));
    }

    [Fact]
    public async Task On_the_network_it_warns_and_answers_only_to_the_names_it_was_told()
    {
        await using var shop = await RunningShop.Start("--Rebuild:Listen=http://0.0.0.0:0", "--Rebuild:Lan=true", "--Rebuild:Hosts:0=shop-pc");
        using var http = shop.Client(shop.Token);
        Assert.Contains(shop.Log, line => line.Contains("without TLS", StringComparison.Ordinal));
        using var known = await http.Send(HttpMethod.Get, "/v1/access", null, ("Host", "shop-pc"));
        using var strange = await http.Send(HttpMethod.Get, "/v1/access", null, ("Host", "rebound.example"));
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.BadRequest), (known.StatusCode, strange.StatusCode));
    }

    [Theory]
    [InlineData("pfx")]
    [InlineData("pem")]
    public async Task A_given_certificate_serves_TLS_and_the_cookie_goes_over_nothing_else(string form)
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-certificate-test-");
        await using var shop = await RunningShop.Start([.. Given(folder, form), "--Rebuild:Listen=https://127.0.0.1:0"]);
        using var http = shop.Client();
        using var answer = await http.Send(HttpMethod.Post, "/sign-in", $$"""{ "token": "{{shop.Token}}" }""");
        Assert.Contains("; secure", answer.Headers.GetValues("Set-Cookie").Single(), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(shop.Log, line => line.Contains("without TLS", StringComparison.Ordinal));
        folder.Delete(recursive: true);
    }

    [Fact]
    public void A_certificate_that_can_not_be_read_is_named()
    {
        var refusal = Assert.Throws<InvalidOperationException>(() => Certificate.Read(new ServerOptions { Certificate = "/no/such.pfx" }));
        Assert.Contains("/no/such.pfx", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_token_has_a_limit_of_its_own()
    {
        await using var server = ShopServer.Open().With("Rebuild:RequestsPerMinute", "3");
        using var one = await server.ClientOf(Scope.Read);
        using var two = await server.ClientOf(Scope.Bench);
        for (var i = 0; i < 3; i++)
            await one.Read("/v1/access");
        using var more = await one.GetAsync("/v1/access");
        Assert.Equal(HttpStatusCode.TooManyRequests, more.StatusCode);
        await two.Read("/v1/access");
    }

    private static string[] Given(DirectoryInfo folder, string form)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256);
        using var certificate = request.CreateSelfSigned(new DateTimeOffset(2020, 1, 1, 0, 0, 0, TimeSpan.Zero), new DateTimeOffset(2099, 1, 1, 0, 0, 0, TimeSpan.Zero));
        var file = Path.Combine(folder.FullName, "shop." + form);
        if (form == "pfx")
        {
            File.WriteAllBytes(file, certificate.Export(X509ContentType.Pkcs12, "oil"));
            return ["--Rebuild:Certificate=" + file, "--Rebuild:CertificatePassword=oil"];
        }

        var keyFile = Path.Combine(folder.FullName, "shop.key");
        File.WriteAllText(file, certificate.ExportCertificatePem());
        File.WriteAllText(keyFile, key.ExportPkcs8PrivateKeyPem());
        return ["--Rebuild:Certificate=" + file, "--Rebuild:CertificateKey=" + keyFile];
    }
}
