using PublicApiGenerator;
using RebuildApi.TestKit;

namespace RebuildApi.Contracts.Tests;

public sealed class PublicApiTests
{
    private static readonly string Approved = Repository.PathTo("tests", "RebuildApi.Contracts.Tests", "RebuildApi.Contracts.approved.txt");

    /// <summary>Every plug-in depends on this surface: a change of it is a change for people who are not here.</summary>
    [Fact]
    public void The_public_face_of_the_contract_is_the_reviewed_one()
    {
        var options = new ApiGeneratorOptions { IncludeAssemblyAttributes = false };
        var now = typeof(Family).Assembly.GeneratePublicApi(options).ReplaceLineEndings("\n") + "\n";
        var approved = File.Exists(Approved) ? File.ReadAllText(Approved).ReplaceLineEndings("\n") : "";
        var received = Path.ChangeExtension(Approved, ".received.txt");

        if (now != approved)
            File.WriteAllText(received, now);

        Assert.True(
            now == approved,
            $"The public face of the contract has changed. Compare {received} with {Approved}. If the change is meant, move the first over the second, "
            + "raise the AssemblyVersion of the contract (minor when only something was added, major when a plug-in could break) and say why in the commit.");
    }
}
