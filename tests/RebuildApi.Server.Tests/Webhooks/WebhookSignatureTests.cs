using RebuildApi.Server.Webhooks;

namespace RebuildApi.Server.Tests.Webhooks;

public sealed class WebhookSignatureTests
{
    /// <summary>The message of the reference libraries' own test of signing (Standard Webhooks), which the specification points to.</summary>
    [Fact]
    public void The_published_message_has_the_published_signature() => Assert.Equal(
        "v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=",
        WebhookSignature.Of("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw", "msg_p5jXN8AQM9LWM0D4loKWxJek", DateTimeOffset.FromUnixTimeSeconds(1614265330), """{"test": 2432232314}"""u8));

    /// <summary>The specification asks for 24 to 64 bytes behind <c>whsec_</c>.</summary>
    [Fact]
    public void A_new_secret_has_32_bytes_and_is_nobody_elses()
    {
        var (one, two) = (WebhookSignature.NewSecret(), WebhookSignature.NewSecret());
        Assert.StartsWith("whsec_", one, StringComparison.Ordinal);
        Assert.Equal(32, Convert.FromBase64String(one[6..]).Length);
        Assert.NotEqual(one, two);
    }
}
