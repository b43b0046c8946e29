using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Requests.Tables;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Takes a list over, inside one change: every row or, when that was chosen, every row without faults.</summary>
/// <param name="Session">What may be done.</param>
/// <param name="Take">Makes the record of a row; what is wrong is complained of.</param>
/// <param name="VersionOf">The version that a row was exported at, if it says so.</param>
/// <param name="Bare">A record without what changes by itself: its version, and when it was written.</param>
/// <typeparam name="TRow">One row.</typeparam>
/// <typeparam name="T">What it becomes.</typeparam>
public sealed record Takeover<TRow, T>(IWriteSession Session, Func<TRow, Func<string, string>, Complaints, T> Take, Func<TRow, int?> VersionOf, Func<T, T> Bare)
    where TRow : class
    where T : class, IShopRecord<T>
{
    /// <summary>Takes the rows over.</summary>
    /// <exception cref="ProblemException">A row has a fault, and such rows are not to be skipped.</exception>
    public ImportWire Of(ImmutableArray<SentRow<TRow>> rows, bool skipsBad)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var ready = rows.Select(row => (Row: row, Record: Ready(row, seen))).ToArray();
        var all = new Complaints();
        foreach (var error in rows.SelectMany(r => r.Complaints.Errors))
            all.Add(error.Pointer, error);
        if (!skipsBad)
            all.ThrowIfAny(Problems.InvalidContent);
        var good = ready.Where(r => !r.Row.Complaints.Any).Select(r => r.Record!).ToArray();
        var changed = good.Where(IsChanged).ToArray();
        foreach (var record in changed)
            Session.Put(record, null);
        return new ImportWire(rows.Length, changed.Length, good.Length - changed.Length, rows.Length - good.Length, all.Errors);
    }

    private T? Ready(SentRow<TRow> row, HashSet<string> seen)
    {
        if (row.Value is null || row.Complaints.Any)
            return null;
        var record = Take(row.Value, row.Path, row.Complaints);
        if (!seen.Add(record.Id))
            row.Complaints.Add(row.Path("/id"), FieldProblems.DuplicateField, $"{record.Id} is there twice.", record.Id);
        var stands = Session.Find<T>(record.Id)?.Version ?? 0;
        if (VersionOf(row.Value) is { } version && version != stands)
            row.Complaints.Add(row.Path("/version"), FieldProblems.Contradiction, $"{record.Id} was changed since this list was made: it is at version {stands}.", $"{version}");
        return record;
    }

    private bool IsChanged(T record) =>
        Session.Find<T>(record.Id) is not { } stands || Text(Bare(stands)) != Text(Bare(record));

    private static string Text(T record) => JsonSerializer.Serialize(record);
}
