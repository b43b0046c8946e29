using System.Reflection;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>Records that fail in one way whatever they are asked; until they are told to begin they are only not there yet.</summary>
public class FaultyStore : DispatchProxy
{
    private Func<CancellationToken, Exception> _fault = _ => new StorageUnavailableException("locked", "Not yet.");

    public static IStore New() => Create<IStore, FaultyStore>();

    public static void Begin(IStore store, Func<CancellationToken, Exception> fault) => ((FaultyStore)(object)store)._fault = fault;

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args) => targetMethod!.Name == nameof(IAsyncDisposable.DisposeAsync)
        ? ValueTask.CompletedTask
        : throw _fault(args?.OfType<CancellationToken>().FirstOrDefault() ?? default);
}
