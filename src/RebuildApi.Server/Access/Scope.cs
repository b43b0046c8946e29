using System.Collections.Immutable;
using System.Text.Json.Serialization;
using RebuildApi.Contracts;

namespace RebuildApi.Server.Access;

/// <summary>What a token may do. Each scope includes those before it; what each adds stands in the table of scopes.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Scope>))]
public enum Scope
{
    /// <summary>See.</summary>
    Read,

    /// <summary>Work at a bench.</summary>
    Bench,

    /// <summary>Charge, order, set the rules.</summary>
    Office,

    /// <summary>Let programs and people in.</summary>
    Administrator,
}

/// <summary>Scopes in words: the one place that says who may do what. Routes name the least scope that they ask for.</summary>
public static class Scopes
{
    /// <summary>Every scope, from the least, with what it adds to the one before.</summary>
    public static ImmutableArray<(Scope Scope, string May)> All { get; } =
    [
        (Scope.Read, "see everything of the shop, follow what happens, and ask anything that stores nothing: calculations, checks, what-if"),
        (Scope.Bench, "take units in, record parts, readings, findings, trials, tests, decisions, work and comebacks, work plans out, keep things on the shelf"),
        (Scope.Office, "prices, shelf, instruments, policy, priors and editions; choose a plan, quotes and their approvals, invoice lines, a customer's records"),
        (Scope.Administrator, "plug-ins, tokens, webhooks, backups, and whatever else lets programs or people in"),
    ];

    /// <summary>The word for a scope.</summary>
    public static string Word(this Scope scope) => scope.ToString().ToLowerInvariant();

    /// <summary>The scope that a word stands for; null when it is none.</summary>
    public static Scope? Of(string word) => All.Select(s => (Scope?)s.Scope).FirstOrDefault(s => s!.Value.Word() == word);
}
