using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition.Customers;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Json;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire.Customers;
using RebuildApi.Storage;

namespace RebuildApi.Server.Commands;

/// <summary><c>erase</c>: erases what names a customer, on the data folder itself, whether or not the service runs.</summary>
public static class EraseCommand
{
    /// <summary>The command.</summary>
    public static Command Make()
    {
        var customer = new Argument<string>("customer") { Description = "The name that units bear, letter for letter." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Say exactly what would go, what would stay and where copies lie; erase nothing." };
        var invoiced = new Option<bool>("--invoiced") { Description = "Units that were invoiced too, once the law of the place no longer asks for their invoices." };
        var files = new Option<bool>("--files") { Description = "Photos and documents too." };
        var person = new Option<string?>("--person") { Description = "Who signs for it; the user of this machine when not said.", HelpName = "name" };
        return ToldCommand.OnShop("erase", "Erases the texts that name a customer, for good; the chain stays whole and says that they were erased. Copies made before still hold them.", """
            Examples:
              erase "Ferry Lane Farm" --dry-run
              erase "Ferry Lane Farm" --invoiced --files --person Ada
            """, [customer, dryRun, invoiced, files, person],
            (shop, asked, cancellation) => Run(
                shop,
                new ErasureRequest(asked.GetValue(customer)!, asked.GetValue(person) ?? Environment.UserName, asked.GetValue(invoiced) ? "erase" : "keep", asked.GetValue(files)),
                asked.GetValue(dryRun), asked.InvocationConfiguration.Output, cancellation));
    }

    internal static async Task<int> Run(ShopFolder shop, ErasureRequest asked, bool dryRun, TextWriter output, CancellationToken cancellation)
    {
        await using var store = shop.OpenToWrite();
        var desk = new ErasureDesk(
            store, new OldCopies(shop.Backups(null), shop.Path, shop.Settings.BackupsKept), new AttachmentFolder(shop.Settings.Attachments), new SortableIds(TimeProvider.System));
        try
        {
            var answer = await desk.Run(TokenDesk.ByCommand("erase") with { DryRun = dryRun }, asked, cancellation);
            await Say(JsonSerializer.Deserialize<ErasureWire>(answer.Body.Span, WireJson.Options)!, dryRun, output);
            return 0;
        }
        catch (ProblemException unknown)
        {
            throw new ArgumentException(unknown.Message, unknown);
        }
    }

    private static async Task Say(ErasureWire said, bool dryRun, TextWriter output)
    {
        foreach (var unit in said.Units)
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{(dryRun ? "would go" : "erased"),-9}{unit.Unit}: {string.Join(", ", unit.Entries.Select(e => $"{e.Kind} {string.Join("+", e.Fields)} (entry {e.Sequence})"))}; {unit.Files.Length} files"));
        foreach (var kept in said.Kept)
            await output.WriteLineAsync($"kept     {kept.Unit}: {kept.Words}");
        foreach (var mention in said.Mentions)
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"stays    {mention.Unit}: the name stands in the words of {mention.Kind} {mention.Id} (entry {mention.Sequence})"));
        foreach (var copy in said.Copies)
            await output.WriteLineAsync($"copy     {copy.Path}: {copy.Goes}");
        await output.WriteLineAsync(said.Note);
    }
}
