using System.Globalization;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire.Stages;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>Where a gearbox is on its way, what its next gate still wants, and the forms that move it on, back or away.</summary>
public sealed class StageSection(StagesWire stages, Spoken named, GateWords gates, PageWords w)
{
    private const int MostSubjects = 6;

    /// <summary>The section.</summary>
    public string Write() => $"""
        <ol class="way" aria-label="{Page.Safe(w["stage.way"])}">{string.Concat(stages.Way.Select(Step))}</ol>
        {(stages.Stage == UnitStages.Returned ? $"<p class=\"big\">{Page.Safe(w["stage." + stages.Stage])}</p>" : "")}
        {(stages.LeftOut.IsEmpty ? "" : $"<ul class=\"left\">{string.Concat(stages.LeftOut.Select(LeftOut))}</ul>")}
        {(stages.Next is { } next ? Gate(next) : "")}
        {Elsewhere()}
        """;

    private string Step(StageWire step)
    {
        var who = step is { State: "passed", Time: { } time, Person: { } person } ? $"<small>{Page.Safe($"{person}, {PaperHead.Minute(time)}")}</small>" : "";
        return $"<li class=\"{step.State}\"{(step.State == "here" ? " aria-current=\"step\"" : "")}><span>{Page.Safe(w["stage." + step.Stage])}</span>{who}</li>";
    }

    private string LeftOut(LeftOutWire left) => $"<li><span class=\"o o-conditional\">{Page.Safe(w["unit.left-out", ("what", gates.Requirement(left.Requirement)), ("reason", left.Reason ?? ""), ("person", left.Person ?? "")])}</span></li>";

    private string Gate(GateWire gate)
    {
        var isOpen = gate.Requirements.All(r => r.Met || r.MayLeave);
        var send = isOpen
            ? $"<div><label for=\"step-note\">{Page.Safe(w["gate.note"])}</label><input id=\"step-note\" name=\"note\" maxlength=\"2000\" autocomplete=\"off\"></div><button class=\"main\">{Page.Safe(w["gate.pass", ("to", w["stage." + gate.To])])}</button>"
            : $"<p class=\"o o-inconclusive\">{Page.Safe(w["gate.shut"])}</p>";
        return $"""
            <form id="pass" class="card stack noprint" data-to="{gate.To}"><h3>{Page.Safe(w["unit.gate", ("to", w["stage." + gate.To])])}</h3>
            <ul class="gate">{string.Concat(gate.Requirements.Select(Requirement))}</ul>{send}</form>
            """;
    }

    private string Requirement(RequirementWire asked)
    {
        var name = Page.Safe(gates.Requirement(asked.Requirement));
        return asked.Met
            ? $"<li><span class=\"o o-conforming\">{name}</span></li>"
            : $"<li><span class=\"o o-nonconforming\">{name}</span> {Page.Safe(gates.Fix(asked.Requirement))}{Subjects(asked)}{(asked.MayLeave ? Leave(asked) : "")}</li>";
    }

    private string Subjects(RequirementWire asked)
    {
        var about = asked.Unmet.Where(u => u.Subject is not null && u.Subject != asked.Requirement).ToArray();
        var more = about.Length - MostSubjects;
        return about.Length == 0 ? "" : $"<br><span class=\"soft\">{Page.Safe(string.Join(", ", about.Take(MostSubjects).Select(u => named.Subject(u.Subject!))))}{(more > 0 ? " " + Page.Safe(w["shop.more", ("n", Count(more))]) : "")}</span>";
    }

    private string Leave(RequirementWire asked)
    {
        var (id, isException) = (asked.Requirement, asked.Leave == "exception");
        var signed = isException ? $"<div><label for=\"by-{id}\">{Page.Safe(w["gate.signed-by"])}</label><input id=\"by-{id}\" name=\"by\" maxlength=\"100\" autocomplete=\"off\"></div>" : "";
        return $"""
            <div class="row leave" data-requirement="{id}" data-leave="{asked.Leave}"><div><label for="why-{id}">{Page.Safe(w[isException ? "gate.excepted" : "gate.not-available"])}</label>
            <input id="why-{id}" name="why" maxlength="500" autocomplete="off"></div>{signed}</div>
            """;
    }

    private string Elsewhere()
    {
        var to = stages.MayGoTo.Where(s => s != stages.Next?.To).ToArray();
        return to.Length == 0 || stages.WhyNot is not null ? "" : $"""
            <details class="noprint"><summary>{Page.Safe(w["gate.elsewhere"])}</summary><form id="elsewhere" class="card stack">
            <div><label for="elsewhere-to">{Page.Safe(w["gate.to"])}</label><select id="elsewhere-to" name="to">{string.Concat(to.Select(s => $"<option value=\"{s}\">{Page.Safe(w["stage." + s])}</option>"))}</select></div>
            <div><label for="elsewhere-why">{Page.Safe(w["gate.why"])}</label><input id="elsewhere-why" name="note" required maxlength="2000" autocomplete="off"></div>
            <button>{Page.Safe(w["gate.go"])}</button></form></details>
            """;
    }

    private static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);
}
