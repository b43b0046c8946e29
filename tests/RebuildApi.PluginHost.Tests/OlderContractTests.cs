using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.PluginHost.Tests;

/// <summary>
/// Plug-ins as they were compiled against earlier minor versions of the contract, kept byte for byte: they load, answer and are named as what they are. A
/// file is added to <c>Older</c> before each rise of the minor version, and never changed.
/// </summary>
public sealed class OlderContractTests : IDisposable
{
    private readonly PluginBench _bench = new();

    public static TheoryData<string> Versions => ["1.0", "1.1"];

    [Theory]
    [MemberData(nameof(Versions))]
    public void A_plug_in_compiled_against_an_earlier_contract_loads_and_answers(string version)
    {
        var catalog = Dropped(version).Open();

        var answer = catalog.Run("shelf-good", "side").Verdicts.Single();

        Assert.Equal((PluginState.Loaded, version), (catalog.Of("good-with-hook").State, catalog.Of("good-with-hook").ContractVersion));
        Assert.Equal(Compatibility.Compatible, answer.Outcome);
        Assert.Equal(ContractVersion.Current, answer.Rules.Contract);
        Assert.NotEqual(version, ContractVersion.Current);
    }

    [Theory]
    [MemberData(nameof(Versions))]
    public void It_answers_from_a_worker_too(string version)
    {
        var catalog = Dropped(version).OpenWithWorkers();

        Assert.Equal(Compatibility.Compatible, catalog.Run("shelf-good", "side").Verdicts.Single().Outcome);
    }

    public void Dispose() => _bench.Dispose();

    private PluginBench Dropped(string version) => _bench
        .Dropped("good-with-hook", File.ReadAllBytes(Repository.PathTo("tests", "RebuildApi.PluginHost.Tests", "Older", $"good-with-hook.contract-{version}.bin")))
        .Listed("good-with-hook");
}
