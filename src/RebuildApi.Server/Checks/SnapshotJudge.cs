using System.Buffers;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Json;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Checks;

/// <summary>A line that is the snapshot of a whole unit, to its whole judgement. Nothing is stored.</summary>
public sealed class SnapshotJudge(IPluginCatalog catalog, FamilyBook families, Display show) : ILineJudge
{
    /// <summary>The longest snapshot, bytes.</summary>
    public const int LongestLine = 1 << 22;

    /// <inheritdoc/>
    public void Judge(ReadOnlySpan<byte> line, long number, IBufferWriter<byte> to, ref CheckCounts counts)
    {
        if ((Read(line, out var view) ?? Judge(view!, number, to, ref counts)) is not { } fault)
            return;
        counts.CountFault();
        Write(to, new JudgedLine(number, view?.Snapshot.Unit, fault.Wire(), null));
    }

    /// <inheritdoc/>
    public void End(IBufferWriter<byte> to, CheckCounts counts, CheckFault? fault) => new JsonVerdicts().End(to, counts, fault);

    private CheckFault? Read(ReadOnlySpan<byte> line, out UnitView? view)
    {
        view = null;
        UnitSnapshot? snapshot;
        try
        {
            snapshot = JsonSerializer.Deserialize(line, ContractJson.Default.UnitSnapshot);
        }
        catch (Exception broken) when (broken is JsonException or ArgumentException or FormatException or NotSupportedException)
        {
            return CheckFault.In((broken as JsonException)?.Path ?? "", Problems.MalformedJson, line, "a unit as GET /v1/units/{unit}/snapshot gives it: " + broken.Message);
        }

        if (snapshot is null || HasNothingInAList(line))
            return CheckFault.In("", FieldProblems.WrongType, line, "an object, and something in every entry of its lists");
        if (families.Find(snapshot.Family.Id) is not { } family)
            return CheckFault.Unknown("family/id", Problems.UnknownFamily, System.Text.Encoding.UTF8.GetBytes(snapshot.Family.Id), families.All.Select(f => f.Family.Version.Id));
        if (SnapshotCheck.FirstFault(snapshot, family) is { } wrong)
            return new CheckFault(FieldProblems.NotAllowed, wrong.Field, wrong.Got, wrong.Allowed);
        view = new UnitView(snapshot, family);
        return null;
    }

    /// <summary>The reader of the contract takes null for an entry of a list, which nothing behind it expects.</summary>
    private static bool HasNothingInAList(ReadOnlySpan<byte> line)
    {
        var reader = new Utf8JsonReader(line);
        var before = JsonTokenType.None;
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.Null && before != JsonTokenType.PropertyName)
                return true;
            before = reader.TokenType;
        }

        return false;
    }

    private CheckFault? Judge(UnitView view, long number, IBufferWriter<byte> to, ref CheckCounts counts)
    {
        Judged judged;
        try
        {
            judged = new Judged(FileOf(view.Snapshot), view, UnitJudge.Judge(view, new CatalogHooks(catalog, view.Family)));
        }
        catch (Exception odd) when (odd is ArgumentException or OverflowException or KeyNotFoundException)
        {
            return new CheckFault(Problems.NotComputable, "", view.Snapshot.Unit, odd.Message);
        }

        Write(to, new JudgedLine(number, view.Snapshot.Unit, null, new AnswerSheet(judged, show).Whole));
        counts.Count(Worst(judged.Answers));
        return null;
    }

    /// <summary>The worst of its parts and clearances: a unit with anything open is not a conforming one.</summary>
    private static Outcome Worst(Engine.Judging.Judgement answers) =>
        Outcomes.Worst(answers.Parts.Select(p => p.Outcome).Concat(answers.Clearances.Select(c => c.Verdict.Outcome)));

    private static UnitFile FileOf(UnitSnapshot snapshot)
    {
        var unit = new Unit(snapshot.Unit, snapshot.Unit, snapshot.Family, null, snapshot.Complaint, null, "", default, "", 0);
        return new UnitFile(unit, snapshot.Components, snapshot.Placements, snapshot.Measurements, snapshot.Trials, snapshot.Findings, [], []);
    }

    private static void Write(IBufferWriter<byte> to, JudgedLine line)
    {
        using (var json = new Utf8JsonWriter(to))
            JsonSerializer.Serialize(json, line, WireJson.Options);
        to.Write("\n"u8);
    }
}

/// <summary>What became of one line.</summary>
/// <param name="Row">Its number, from 1.</param>
/// <param name="Unit">The unit, when it could be read.</param>
/// <param name="Error">What is wrong with it.</param>
/// <param name="Judgement">All answers.</param>
public sealed record JudgedLine(long Row, string? Unit, FaultWire? Error, WholeJudgementWire? Judgement);
