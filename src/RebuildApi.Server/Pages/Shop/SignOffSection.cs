using System.Collections.Immutable;
using RebuildApi.Server.Composition.Stages;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>What was signed for on a gearbox as it is built, and the form to sign for more.</summary>
public sealed class SignOffSection(UnitFile file, ImmutableArray<SignOff> signed, GateWords gates, PageWords w)
{
    private readonly string _build = Build.Sha256(file);

    /// <summary>The section; nothing while the gearbox has not gone together and nobody has signed.</summary>
    public string Write()
    {
        var isTime = file.Unit.Stage is UnitStages.Assembly or UnitStages.FinalTest;
        if (!isTime && signed.IsEmpty)
            return "";
        var rows = signed.Select(s => Tables.Row(Page.Safe(gates.Check(s.Check)), Outcome(s), Page.Safe($"{s.Person}, {s.Bench}"), PaperHead.Minute(s.Time), Page.Safe(s.Note ?? ""))).ToArray();
        var list = rows.Length == 0 ? "" : Tables.Of(w["unit.signed"], [w["sign.check"], w["sign.result"], w["sign.by"], w["sign.when"], w["sign.note"]], rows);
        return $"<h2>{Page.Safe(w["unit.signed"])}</h2>{list}{(isTime ? Form() : "")}";
    }

    private string Outcome(SignOff s) => !s.Passed ? $"<span class=\"o o-nonconforming\">{Page.Safe(w["sign.failed"])}</span>"
        : s.BuildSha256 == _build ? $"<span class=\"o o-conforming\">{Page.Safe(w["sign.passed"])}</span>"
        : $"<span class=\"o o-inconclusive\">{Page.Safe(w["sign.stale"])}</span>";

    private string Form() => $"""
        <form id="sign" class="card stack noprint">
        <div><label for="sign-check">{Page.Safe(w["sign.check"])}</label><select id="sign-check" name="check">{string.Concat(gates.Checks.Select(c => $"<option value=\"{c}\">{Page.Safe(gates.Check(c))}</option>"))}</select></div>
        <ul class="soft">{string.Concat(gates.Checks.Select(c => $"<li>{Page.Safe(gates.Fix(c))}</li>"))}</ul>
        <div><label for="sign-note">{Page.Safe(w["sign.note"])}</label><input id="sign-note" name="note" maxlength="2000" autocomplete="off"></div>
        <div class="row"><button class="main" value="passed">{Page.Safe(w["sign.passed"])}</button><button value="failed">{Page.Safe(w["sign.failed"])}</button></div>
        </form>
        """;
}
