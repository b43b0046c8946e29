using System.Reflection;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>Records where something else happens just before a change begins, as it may when somebody is faster.</summary>
public class RacedStore : DispatchProxy
{
    private IStore _real = null!;

    /// <summary>What happens before each change; nothing when it is none.</summary>
    public Func<Task>? Before { get; set; }

    public static IStore Over(IStore real, out RacedStore raced)
    {
        var store = Create<IStore, RacedStore>();
        raced = (RacedStore)(object)store;
        raced._real = real;
        return store;
    }

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args) => targetMethod!.Name == nameof(IStore.Write) && Before is { } before
        ? After(before, () => (Task<StoredAnswer>)targetMethod.Invoke(_real, BindingFlags.DoNotWrapExceptions, null, args, null)!)
        : targetMethod.Invoke(_real, BindingFlags.DoNotWrapExceptions, null, args, null);

    private static async Task<StoredAnswer> After(Func<Task> before, Func<Task<StoredAnswer>> change)
    {
        await before();
        return await change();
    }
}
