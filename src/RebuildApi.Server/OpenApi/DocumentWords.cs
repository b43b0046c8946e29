using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RebuildApi.Server.OpenApi;

/// <summary>Puts the tags in the order of the work and says what each is about.</summary>
public sealed class DocumentWords : IDocumentFilter
{
    /// <summary>Tag to words, in the order of the work.</summary>
    public static readonly (string Name, string Words)[] Tags =
    [
        ("families", "Gearbox designs with their rules, and the sheet to fill in when stripping one."),
        ("units", "Gearboxes in the shop, from intake to hand-over."),
        ("parts", "What is in a unit: components, what was read of them, what was seen on them."),
        ("labels", "Short codes on units and parts, and what they stand for."),
        ("trials", "Clearances read directly with known pieces fitted."),
        ("events", "What happens in the shop, as it happens."),
        ("answers", "Is this part good, will these clearances come right, may these parts run together; each with reasons."),
        ("diagnosis", "What may lie behind a complaint, what was tried, and which check would tell the most for its minutes."),
        ("decisions", "What a person chose against or within a verdict, and why."),
        ("shop", "The shop's own prices, parts to order and what lies on the shelf."),
        ("plans", "The best complete set of decisions for a unit: plan, kit, quote, approval, invoice lines; and which unit gets what."),
        ("papers", "What is printed: teardown and assembly sheet, quote, hand-over record, as PDF made here."),
        ("calculations", "Each calculation by itself; nothing is stored."),
        ("policy", "The shop's own rules: how a doubtful value is decided, and its own limits. Signed, edition by edition."),
        ("instruments", "Measuring instruments, their calibrations and gauge studies."),
        ("stations", "Benches, and whether they agree."),
        ("statistics", "What the shop's own records say of wear and comebacks."),
        ("plugins", "The assemblies that bring families: their state, approval and reloading."),
        ("customers", "What is kept of whom, to be given out on request and looked at when it is old."),
        ("audit", "Who did what and when, chained by hash so that tampering shows."),
        ("backups", "Copies of everything, made while benches work and checked before they count."),
        ("branches", "What shops that share a database have opened to each other, to read and never to write."),
        ("webhooks", "Receivers that are told of what happens, signed, in order, each event at least once."),
        ("access", "Who may come in, and what they may do."),
        ("service", "Whether the service runs, and what its problems mean."),
    ];

    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context) =>
        swaggerDoc.Tags = Tags.Select(t => new OpenApiTag { Name = t.Name, Description = t.Words }).ToHashSet();
}
