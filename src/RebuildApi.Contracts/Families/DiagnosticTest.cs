using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Something that can be tried to tell causes apart.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>engine-off-shift</c>.</param>
/// <param name="Name">What is tried, put so that "shown" or "not shown" answers it.</param>
/// <param name="Stage">When it can be tried.</param>
/// <param name="Minutes">Bench time.</param>
/// <param name="Shows">The causes that it shows, and how surely.</param>
/// <param name="Otherwise">How likely it shows although none of them is there.</param>
/// <param name="Source">Where this comes from.</param>
public sealed record DiagnosticTest(
    string Id, Text Name, TestStage Stage, decimal Minutes, ImmutableArray<TestLink> Shows, Likelihood Otherwise, Source Source);

/// <summary>How likely a test shows a cause that is there.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Shown">How likely.</param>
public sealed record TestLink(string Cause, Likelihood Shown);

/// <summary>When a test can be tried.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<TestStage>))]
public enum TestStage
{
    /// <summary>While the gearbox is whole, mostly still in the car.</summary>
    BeforeStripDown,

    /// <summary>On the bench, while it is apart or going together.</summary>
    Teardown,
}
