using System.Text.Json;
using Polly;
using Polly.CircuitBreaker;
using RebuildApi.Contracts;
using RebuildApi.PluginHost.Loading;

namespace RebuildApi.PluginHost.Hooks;

/// <summary>
/// The only way into a plug-in's rules. Bytes in, bytes out, within a budget; faults are counted, and a plug-in that keeps failing is left alone for a
/// while, each time twice as long.
/// </summary>
internal sealed class HookDoor
{
    private readonly IPluginCode _code;
    private readonly TimeSpan _longest;
    private readonly TimeSpan _read;
    private readonly ResiliencePipeline<HookAnswerResult> _breaker;
    private readonly CircuitBreakerStateProvider _circuit = new();
    private long _faults;
    private int _users = 1;

    /// <summary>A door to one loaded plug-in.</summary>
    /// <param name="code">Its code; let go when the door is closed and the last call has come out.</param>
    /// <param name="options">Budgets and suspension.</param>
    public HookDoor(IPluginCode code, PluginHostOptions options)
    {
        _code = code;
        _longest = options.LongestHookBudget;
        _read = options.ReadBudget;
        _breaker = new ResiliencePipelineBuilder<HookAnswerResult> { TimeProvider = options.Time }
            .AddCircuitBreaker(Breaker(options.Suspension))
            .Build();
    }

    /// <summary>How often a call failed.</summary>
    public long Faults => Interlocked.Read(ref _faults);

    /// <summary>Whether its hooks are left alone for now.</summary>
    public bool IsSuspended => _circuit.CircuitState is CircuitState.Open or CircuitState.Isolated;

    /// <summary>Runs a hook, or gives null when the door is closed: the plug-in has been replaced, and its successor is to be asked.</summary>
    public HookAnswerResult? Run(LoadedFamily family, HookScope scope, UnitSnapshot snapshot)
    {
        if (!Enter())
            return null;
        try
        {
            return Ask(family, scope, snapshot);
        }
        finally
        {
            Leave();
        }
    }

    /// <summary>Reads a family file, or gives null when the door is closed.</summary>
    /// <exception cref="PluginFault">It broke, was late, or its answer is not complete.</exception>
    public byte[]? Read(string fileName, byte[] utf8) => Inside(code => code.Read(fileName, utf8, _read));

    /// <summary>Writes a family, given as JSON, as a file, or gives null when the door is closed.</summary>
    /// <exception cref="PluginFault">It can't write this one, broke, or was late.</exception>
    public byte[]? Write(byte[] family) => Inside(code => code.Write(family, _read));

    /// <summary>Lets nobody in any more; calls that are inside finish. Called once.</summary>
    public void Close() => Leave();

    private byte[]? Inside(Func<IPluginCode, byte[]> work)
    {
        if (!Enter())
            return null;
        try
        {
            return work(_code);
        }
        finally
        {
            Leave();
        }
    }

    private bool Enter()
    {
        var users = Volatile.Read(ref _users);
        while (users > 0)
        {
            var before = Interlocked.CompareExchange(ref _users, users + 1, users);
            if (before == users)
                return true;
            users = before;
        }

        return false;
    }

    private void Leave()
    {
        if (Interlocked.Decrement(ref _users) == 0)
            _code.Dispose();
    }

    private HookAnswerResult Ask(LoadedFamily family, HookScope scope, UnitSnapshot snapshot)
    {
        var cut = JsonSerializer.SerializeToUtf8Bytes(SnapshotCut.To(scope, snapshot), ContractJson.Default.UnitSnapshot);
        try
        {
            var result = _breaker.Execute(() => Call(family, scope, cut));
            Interlocked.Add(ref _faults, result.Dropped.Length);
            return result;
        }
        catch (BrokenCircuitException)
        {
            return HookAnswerResult.None(HookReason.Of("hook-suspended", family.Plugin, scope.Id));
        }
        catch (PluginFault fault)
        {
            Interlocked.Increment(ref _faults);
            return HookAnswerResult.None(HookReason.Of(fault.Code, family.Plugin, scope.Id, ("error", fault.Message)));
        }
    }

    private HookAnswerResult Call(LoadedFamily family, HookScope scope, byte[] snapshot)
    {
        var asked = TimeSpan.FromMilliseconds(scope.BudgetMilliseconds);
        var budget = asked > TimeSpan.Zero && asked < _longest ? asked : _longest;
        return HookAnswerCheck.Read(_code.Judge(scope.Id, snapshot, budget), scope, family);
    }

    private CircuitBreakerStrategyOptions<HookAnswerResult> Breaker(SuspensionOptions suspension) => new()
    {
        ShouldHandle = new PredicateBuilder<HookAnswerResult>().Handle<PluginFault>().HandleResult(r => !r.Dropped.IsEmpty),
        FailureRatio = 0.5,
        MinimumThroughput = suspension.AfterFaults,
        SamplingDuration = suspension.Window,
        BreakDurationGenerator = broken => ValueTask.FromResult(Doubling(suspension, broken.HalfOpenAttempts)),
        StateProvider = _circuit,
    };

    private static TimeSpan Doubling(SuspensionOptions suspension, int attempts)
    {
        var length = suspension.First * Math.Pow(2, Math.Min(attempts, 30));
        return length < suspension.Longest ? length : suspension.Longest;
    }
}
