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

    /// <summary>Lets help say it.</summary>
    public static void TellIn(RootCommand root)
    {
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new Help((HelpAction)help.Action!);
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
