using System.Text.Json;

namespace RebuildApi.Server.Demo;

/// <summary>The demo teardown: requests as a bench would send them. All of it is invented data of the invented shop Saltmarsh Lane Gearboxes.</summary>
/// <param name="Note">That it is invented.</param>
/// <param name="Unit">Id of the demo unit.</param>
/// <param name="Steps">The requests, in order.</param>
public sealed record Teardown(string Note, string Unit, IReadOnlyList<TeardownStep> Steps)
{
    /// <summary>The teardown of the demo unit.</summary>
    public static Teardown Load() => Load("demo/teardown.json");

    /// <summary>What the shop charges, can order and has on its shelf.</summary>
    public static Teardown Shop() => Load("demo/shop.json");

    private static Teardown Load(string resource)
    {
        using var stream = typeof(Teardown).Assembly.GetManifestResourceStream(resource)!;
        return JsonSerializer.Deserialize<Teardown>(stream, JsonSerializerOptions.Web)!;
    }
}

/// <summary>One request.</summary>
/// <param name="Say">What happens, in plain words.</param>
/// <param name="Method">HTTP method.</param>
/// <param name="Path">Path on the service.</param>
/// <param name="Body">What is sent.</param>
public sealed record TeardownStep(string Say, string Method, string Path, JsonElement Body);
