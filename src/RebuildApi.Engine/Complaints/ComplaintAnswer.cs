using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Complaints;

/// <summary>Whether what was found explains one symptom.</summary>
/// <param name="Symptom">The symptom as taken down.</param>
/// <param name="Explanations">Causes whose signs were found, the likeliest to bring this symptom first; empty when nothing found explains it.</param>
/// <param name="Reasons">The same in codes.</param>
public sealed record ComplaintAnswer(SymptomSeen Symptom, ImmutableArray<Explanation> Explanations, ImmutableArray<Reason> Reasons);

/// <summary>A cause that the bench has signs of.</summary>
/// <param name="Cause">The family's cause.</param>
/// <param name="Signs">The signs that were found.</param>
public sealed record Explanation(Cause Cause, ImmutableArray<string> Signs);
