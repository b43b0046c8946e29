using Polly;
using Polly.CircuitBreaker;
using Polly.Retry;
using Polly.Timeout;

namespace RebuildApi.Server.Webhooks;

/// <summary>
/// How long one receiver is waited for, how often and how soon it is tried again, and when it is left alone. Each receiver has its own, so that one
/// that is down holds up nobody else.
/// </summary>
public sealed class Patience
{
    /// <summary>How often an event is sent before it is given up: over about half a day.</summary>
    public const int MostAttempts = 15;

    /// <summary>How long one attempt may take.</summary>
    public static readonly TimeSpan OneAttempt = TimeSpan.FromSeconds(15);

    private static readonly TimeSpan FirstWait = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan LongestWait = TimeSpan.FromHours(3);
    private static readonly TimeSpan Rest = TimeSpan.FromMinutes(1);

    private readonly CircuitBreakerManualControl _breaker = new();

    /// <summary>Makes it.</summary>
    public Patience(TimeProvider time)
    {
        Single = new ResiliencePipelineBuilder { TimeProvider = time }.AddTimeout(OneAttempt).Build();
        Guarded = new ResiliencePipelineBuilder { TimeProvider = time }.AddCircuitBreaker(Breaker()).AddTimeout(OneAttempt).Build();
        Persistent = new ResiliencePipelineBuilder { TimeProvider = time }.AddRetry(Retry()).Build();
    }

    /// <summary>One attempt within its time, made even while the receiver is left alone: for a person who tries the way.</summary>
    public ResiliencePipeline Single { get; }

    /// <summary>One attempt within its time, refused at once while the receiver is left alone.</summary>
    public ResiliencePipeline Guarded { get; }

    /// <summary>Tries again until it is delivered or given up; what is tried again is the caller's.</summary>
    public ResiliencePipeline Persistent { get; }

    /// <summary>Says that the receiver answers again.</summary>
    public Task Recovered() => _breaker.CloseAsync();

    /// <summary>Whether a later attempt may mend what went wrong.</summary>
    public static bool IsFailure(Exception e) => e is DeliveryFailedException { IsGone: false } or TimeoutRejectedException;

    // Five failures in a row within an hour, then a minute in which nothing is even tried; the waits between retries grow beyond that by themselves.
    private CircuitBreakerStrategyOptions Breaker() => new()
    {
        ShouldHandle = new PredicateBuilder().Handle<Exception>(IsFailure),
        FailureRatio = 1,
        MinimumThroughput = 5,
        SamplingDuration = TimeSpan.FromHours(1),
        BreakDuration = Rest,
        ManualControl = _breaker,
    };

    private static RetryStrategyOptions Retry() => new()
    {
        ShouldHandle = new PredicateBuilder().Handle<Exception>(e => IsFailure(e) || e is BrokenCircuitException),
        MaxRetryAttempts = MostAttempts - 1,
        BackoffType = DelayBackoffType.Exponential,
        Delay = FirstWait,
        MaxDelay = LongestWait,
        UseJitter = true,
    };
}
