using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace RebuildApi.Server.Commands;

/// <summary>A command whose own help says more than its line in the list: what its exit codes mean, and examples.</summary>
/// <param name="name">Its name.</param>
/// <param name="summary">Its line in the list.</param>
/// <param name="more">What its own help adds at the end.</param>
internal sealed class ToldCommand(string name, string summary, string more) : Command(name, summary)
{
    private readonly string _more = more;

    /// <summary>One that works on a shop, whose folder may be named.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="summary">Its line in the list.</param>
    /// <param name="more">What its own help adds at the end.</param>
    /// <param name="takes">Its arguments and options besides the folder.</param>
    /// <param name="run">What it does with the shop; the exit code.</param>
    public static ToldCommand OnShop(
        string name, string summary, string more, ReadOnlySpan<Symbol> takes, Func<ShopFolder, ParseResult, CancellationToken, Task<int>> run)
    {
        var (command, data) = (new ToldCommand(name, summary, more), ShopFolder.Option());
        foreach (var symbol in takes)
            command.Take(symbol);
        command.Take(data);
        command.SetAction((asked, cancellation) => run(ShopFolder.Of(asked.GetValue(data)), asked, cancellation));
        return command;
    }

    /// <summary>Lets help say it.</summary>
    public static void TellIn(RootCommand root)
    {
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new Help((HelpAction)help.Action!);
    }

    private void Take(Symbol symbol)
    {
        if (symbol is Argument argument)
            Add(argument);
        else
            Add((Option)symbol);
    }

    private sealed class Help(HelpAction usual) : SynchronousCommandLineAction
    {
        // Help is asked for when something is missing, too.
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            var code = usual.Invoke(parseResult);
            if (parseResult.CommandResult.Command is ToldCommand told)
                parseResult.InvocationConfiguration.Output.WriteLine(told._more + Environment.NewLine);
            return code;
        }
    }
}
