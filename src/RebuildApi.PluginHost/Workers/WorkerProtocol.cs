using System.Text;
using RebuildApi.PluginHost.Loading;

namespace RebuildApi.PluginHost.Workers;

/// <summary>
/// What host and worker say to each other: <c>load</c>, <c>judge</c>, <c>read</c> and <c>write</c> one way, <c>declared</c>, <c>answer</c> and <c>fault</c>
/// the other.
/// </summary>
internal static class WorkerProtocol
{
    public const string LoadVerb = "load";
    public const string JudgeVerb = "judge";
    public const string ReadVerb = "read";
    public const string WriteVerb = "write";
    private const string ReadsWord = "reads";
    private const string DeclaredVerb = "declared";
    private const string AnswerVerb = "answer";
    private const string FaultVerb = "fault";

    /// <summary>Load the assemblies in a folder named as the plug-in, if they have this hash.</summary>
    public static Message Load(string folder, string sha256) => Message.Of(LoadVerb, Bytes(folder), Bytes(sha256));

    /// <summary>Run a hook over a snapshot.</summary>
    public static Message Judge(string hook, byte[] snapshot) => Message.Of(JudgeVerb, Bytes(hook), snapshot);

    /// <summary>Read a family file.</summary>
    public static Message Read(string fileName, byte[] utf8) => Message.Of(ReadVerb, Bytes(fileName), utf8);

    /// <summary>Write a family as a file.</summary>
    public static Message Write(byte[] family) => Message.Of(WriteVerb, family);

    /// <summary>What the plug-in declares.</summary>
    public static Message Declared(DeclaredBytes declared) =>
        Message.Of(DeclaredVerb, [declared.Manifest, Bytes(declared.Reads ? ReadsWord : ""), .. declared.Families]);

    /// <summary>What a hook, a reader or a writer answered.</summary>
    public static Message Answer(byte[] answer) => Message.Of(AnswerVerb, answer);

    /// <summary>What went wrong.</summary>
    public static Message Fault(PluginFault fault) =>
        Message.Of(FaultVerb, Bytes(fault.State == PluginState.Refused ? "refused" : "failed"), Bytes(fault.Code), Bytes(fault.Message));

    /// <summary>Reads what came of loading.</summary>
    /// <exception cref="PluginFault">The worker says that it went wrong, or says something else.</exception>
    public static DeclaredBytes ToDeclared(Message reply) => reply.Verb == DeclaredVerb && reply.Parts.Length >= 3
        ? new DeclaredBytes(reply.Parts[1], reply.Parts[3..], reply.Text(2) == ReadsWord)
        : throw ToFault(reply);

    /// <summary>Reads what a hook, a reader or a writer answered.</summary>
    /// <exception cref="PluginFault">The worker says that it went wrong, or says something else.</exception>
    public static byte[] ToAnswer(Message reply) => reply.Verb == AnswerVerb && reply.Parts.Length == 2 ? reply.Parts[1] : throw ToFault(reply);

    private static PluginFault ToFault(Message reply)
    {
        if (reply.Verb != FaultVerb)
            return PluginFault.Invalid("It wrote something of its own where its worker answers.");
        var state = reply.Text(1) == "refused" ? PluginState.Refused : PluginState.Failed;
        // The plug-in shares the worker: a code that we do not know is not passed on.
        var code = reply.Text(2) is "hook-answer-invalid" ? "hook-answer-invalid" : "hook-threw";
        return new PluginFault(state, code, PluginFault.Tame(reply.Text(3)));
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
