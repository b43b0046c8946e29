using System.Reflection;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.OpenApi;
using NSwag.CodeGeneration.CSharp;
using NSwag.CodeGeneration.OperationNameGenerators;
using RebuildApi.TestKit;

namespace RebuildApi.Client.Tests;

/// <summary>A client that a generator made from the reviewed document, compiled in memory.</summary>
public sealed class GeneratedClient
{
    private readonly Lazy<Task<CSharpCompilation>> _compilation = new(Compile);

    /// <summary>What the compiler says of it.</summary>
    public async Task<string[]> Errors() =>
        [.. (await _compilation.Value).GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error).Select(d => d.ToString())];

    /// <summary>The client, and what was written against it, ready to run.</summary>
    public async Task<Assembly> Assembly()
    {
        using var bytes = new MemoryStream();
        var emitted = (await _compilation.Value).Emit(bytes);
        Assert.True(emitted.Success, string.Join('\n', emitted.Diagnostics.Take(20)));
        return System.Reflection.Assembly.Load(bytes.ToArray());
    }

    // The generator reads OpenAPI 3.0; the document says the same in either version.
    private static async Task<string> Source()
    {
        await using var reviewed = File.OpenRead(Repository.PathTo("openapi", "rebuild-api.v1.json"));
        var read = await OpenApiDocument.LoadAsync(reviewed, "json");
        Assert.Empty(read.Diagnostic!.Errors);
        var older = await read.Document!.SerializeAsync(OpenApiSpecVersion.OpenApi3_0, "json");
        var document = await NSwag.OpenApiDocument.FromJsonAsync(older);
        var settings = new CSharpClientGeneratorSettings
        {
            ClassName = "RebuildClient",
            OperationNameGenerator = new SingleClientFromOperationIdOperationNameGenerator(),
            GenerateOptionalParameters = true,
            CSharpGeneratorSettings = { Namespace = "Rebuild.Generated", JsonLibrary = NJsonSchema.CodeGeneration.CSharp.CSharpJsonLibrary.NewtonsoftJson },
        };
        return new CSharpClientGenerator(document, settings).GenerateFile();
    }

    // With the serializer that reads words such as not-assessed into names; the other one that the generator knows does not.
    private static async Task<CSharpCompilation> Compile()
    {
        using var bench = new StreamReader(typeof(GeneratedClient).Assembly.GetManifestResourceStream("Bench.cs")!, Encoding.UTF8);
        var trees = new[] { await Source(), await bench.ReadToEndAsync() }.Select(text => CSharpSyntaxTree.ParseText(text));
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => Path.GetFileName(path).StartsWith("System.", StringComparison.Ordinal) || Path.GetFileName(path) is "netstandard.dll" or "mscorlib.dll" or "Newtonsoft.Json.dll")
            .Select(path => MetadataReference.CreateFromFile(path));
        return CSharpCompilation.Create("Rebuild.Generated", trees, references, new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
    }
}
