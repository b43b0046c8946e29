using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>How a characteristic follows from others: <see cref="Linear"/> or a <see cref="Named"/> function of the engine's library.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(Linear), "linear")]
[JsonDerivedType(typeof(Named), "named")]
public abstract record Derivation
{
    private protected Derivation()
    {
    }
}

/// <summary>A sum of terms, as in a clearance.</summary>
/// <param name="Terms">Signed terms; addresses without a position mean the same part.</param>
public sealed record Linear(ImmutableArray<Term> Terms) : Derivation;

/// <summary>A function that the engine knows by name. Families never bring their own arithmetic.</summary>
/// <param name="Function">Its name in the engine's library: <c>flank-angle-from-two-depths</c>.</param>
/// <param name="Arguments">Argument name to the characteristic that feeds it.</param>
public sealed record Named(string Function, IReadOnlyDictionary<string, Address> Arguments) : Derivation;
