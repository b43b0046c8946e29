using System.CommandLine;
using RebuildApi.Storage;

namespace RebuildApi.Server.Commands;

/// <summary><c>import</c>: takes an exported shop over into an empty folder.</summary>
public static class ImportCommand
{
    /// <summary>The command.</summary>
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "The file that export wrote." };
        return ToldCommand.OnShop("import", "Takes an exported shop over where no database is yet, and checks all of it.", """
            It is held against the sums of the file and its hash chain before it counts. After a cut, run it again: it goes on where it was. Until then it waits
            beside the database's place as FILE.importing, and goes when another file is taken over; of a file that does not fit nothing is kept.

            Example:
              import shop-2026-03-02.ndjson --data /srv/new-shop
            """, [file],
            (shop, asked, cancellation) =>
            {
                Directory.CreateDirectory(shop.Path);
                return ExportCommand.Say(PortableFile.Import(shop.Database, asked.GetValue(file)!, Bar.On("rows"), cancellation), asked.InvocationConfiguration.Output);
            });
    }
}
