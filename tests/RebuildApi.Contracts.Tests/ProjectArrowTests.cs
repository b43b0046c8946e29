using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Xml.Linq;
using RebuildApi.TestKit;

namespace RebuildApi.Contracts.Tests;

/// <summary>Who may know whom: Server → PluginHost, Storage, Engine → Contracts; plug-ins → Contracts; nothing else.</summary>
public sealed class ProjectArrowTests
{
    private static readonly IReadOnlyDictionary<string, string[]> Allowed = new Dictionary<string, string[]>
    {
        ["RebuildApi.Contracts"] = [],
        ["RebuildApi.Engine"] = ["RebuildApi.Contracts"],
        ["RebuildApi.PluginHost"] = ["RebuildApi.Contracts"],
        ["RebuildApi.Storage"] = ["RebuildApi.Contracts"],
        ["RebuildApi.Server"] = ["RebuildApi.Contracts", "RebuildApi.Engine", "RebuildApi.PluginHost", "RebuildApi.Storage"],
    };

    public static TheoryData<string> Sources => [.. Projects("src")];

    public static TheoryData<string> Plugins => [.. Projects("plugins")];

    [Fact]
    public void Every_room_of_the_house_has_its_arrows_written_down() =>
        Assert.Equal(Allowed.Keys.ToHashSet(), Projects("src").Select(p => Path.GetFileNameWithoutExtension(p)).ToHashSet());

    [Theory]
    [MemberData(nameof(Sources))]
    public void A_room_knows_only_the_rooms_it_may_know(string project) =>
        Assert.Empty(ReferencesOf(project).Except(Allowed[Path.GetFileNameWithoutExtension(project)]));

    [Theory]
    [MemberData(nameof(Plugins))]
    public void A_plugin_knows_the_contract_alone(string project) => Assert.Equal(["RebuildApi.Contracts"], ReferencesOf(project));

    [Fact]
    public void The_contract_needs_no_package() =>
        Assert.Empty(Items(Repository.PathTo("src", "RebuildApi.Contracts", "RebuildApi.Contracts.csproj"), "PackageReference"));

    [Theory]
    [InlineData("RebuildApi.Contracts")]
    [InlineData("RebuildApi.Engine")]
    public void What_was_compiled_knows_no_more_than_what_was_written(string assembly)
    {
        using var image = new PEReader(File.OpenRead(Path.Combine(AppContext.BaseDirectory, assembly + ".dll")));
        var metadata = image.GetMetadataReader();

        var ours = metadata.AssemblyReferences.Select(r => metadata.GetString(metadata.GetAssemblyReference(r).Name))
            .Where(n => n.StartsWith("RebuildApi.", StringComparison.Ordinal));

        Assert.Empty(ours.Except(Allowed[assembly]));
    }

    private static IEnumerable<string> Projects(string folder) =>
        Directory.EnumerateFiles(Repository.PathTo(folder), "*.csproj", SearchOption.AllDirectories)
            .Select(p => Path.GetRelativePath(Repository.Root, p)).Order(StringComparer.Ordinal);

    private static IEnumerable<string> ReferencesOf(string project) => Items(Repository.PathTo(project), "ProjectReference")
        .Where(r => (string?)r.Attribute("ReferenceOutputAssembly") != "false")
        .Select(r => Path.GetFileNameWithoutExtension((string)r.Attribute("Include")!));

    private static IEnumerable<XElement> Items(string project, string name) => XDocument.Load(project).Descendants(name);
}
