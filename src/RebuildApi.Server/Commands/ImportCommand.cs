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
        var data = ShopFolder.Option();
        var command = new ToldCommand("import", "Takes an exported shop over where no database is yet, and checks all of it.", """
            It is held against the sums of the file and its hash chain before it counts. After a cut, run it again: it goes on where it was.

            Example:
              import shop-2026-03-02.ndjson --data /srv/new-shop
            """)
        {
            file, data,
        };
        command.SetAction((asked, cancellation) =>
        {
            var shop = ShopFolder.Of(asked.GetValue(data));
            Directory.CreateDirectory(shop.Path);
            return ExportCommand.Say(PortableFile.Import(shop.Database, asked.GetValue(file)!, Bar.On("rows"), cancellation), asked.InvocationConfiguration.Output);
        });
        return command;
    }
}
