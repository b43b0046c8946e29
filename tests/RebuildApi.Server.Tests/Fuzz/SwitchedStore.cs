using System.Reflection;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>Records that do what they should until they are told to fail, or to keep everybody waiting.</summary>
public class SwitchedStore : DispatchProxy
{
    private IStore _real = null!;
    private Exception? _fault;
    private bool _late;

    public static (IStore Store, SwitchedStore Switch) Over(IStore real)
    {
        var store = Create<IStore, SwitchedStore>();
        var made = (SwitchedStore)(object)store;
        made._real = real;
        return (store, made);
    }

    /// <summary>From now on everything fails like this; null for nothing.</summary>
    public void Fail(Exception? fault) => _fault = fault;

    /// <summary>From now on whatever is asked never comes, except who may come in.</summary>
    public void Wait() => _late = true;

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
    {
        if (_fault is not null)
            throw _fault;
        var isOfTokens = targetMethod!.IsGenericMethod && targetMethod.GetGenericArguments()[0] == typeof(AccessToken);
        if (!_late || isOfTokens || !targetMethod.ReturnType.IsGenericType)
            return targetMethod.Invoke(_real, BindingFlags.DoNotWrapExceptions, null, args, null);
        var never = typeof(SwitchedStore).GetMethod(nameof(Never), BindingFlags.NonPublic | BindingFlags.Static)!.MakeGenericMethod(targetMethod.ReturnType.GetGenericArguments()[0])
            .Invoke(null, [args!.OfType<CancellationToken>().FirstOrDefault()]);
        return targetMethod.ReturnType.GetGenericTypeDefinition() == typeof(ValueTask<>) ? Activator.CreateInstance(targetMethod.ReturnType, never) : never;
    }

    private static async Task<T> Never<T>(CancellationToken cancellation)
    {
        await Task.Delay(Timeout.Infinite, cancellation);
        throw new InvalidOperationException();
    }
}
