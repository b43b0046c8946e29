using System.CommandLine;
using System.Globalization;
using RebuildApi.Storage;

namespace RebuildApi.Server.Commands;

/// <summary><c>export</c>: the whole shop as one file of JSON lines that belongs to no database engine.</summary>
public static class ExportCommand
{
    /// <summary>The command.</summary>
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "The file to write; must not exist." };
        return ToldCommand.OnShop("export", "Writes every record of the shop to one file: JSON lines, a header, the rows table by table, then the sums and where the hash chain ends. The service may run.", """
            Attachments are files of their own: copy the attachments folder beside it.

            Example:
              export shop-2026-03-02.ndjson
            """, [file],
            (shop, asked, cancellation) => Say(PortableFile.Export(shop.Database, asked.GetValue(file)!, Bar.On("rows"), cancellation), asked.InvocationConfiguration.Output));
    }

    internal static async Task<int> Say(ExportReport report, TextWriter output)
    {
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"rows     {report.Rows}\nentries  {report.Entries}\nhead     {report.Head}\nsha256   {report.Sha256}"));
        return 0;
    }
}
