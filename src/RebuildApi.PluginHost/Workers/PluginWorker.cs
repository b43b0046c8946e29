using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using RebuildApi.PluginHost.Loading;
using RebuildApi.PluginHost.Trust;
using RebuildApi.PluginHost.Workers;

namespace RebuildApi.PluginHost;

/// <summary>
/// The inside of a worker process: loads one plug-in and answers for it, one question at a time, until its input ends. The service's end is its end: it holds
/// no work of its own that would be worth keeping.
/// </summary>
public static class PluginWorker
{
    private const int LongestQuestion = 64 << 20;

    /// <summary>Runs as a process: questions on standard input, answers on standard output. Does not return.</summary>
    public static int RunProcess()
    {
        var (input, output) = (Console.OpenStandardInput(), Console.OpenStandardOutput());
        // What a plug-in writes to the console must not get between the answers.
        Console.SetOut(TextWriter.Null);
        Console.SetIn(TextReader.Null);
        Run(input, output, LeaveAtOnce);
        LeaveAtOnce();
        return 0;
    }

    /// <summary>Answers questions until the input ends or is not one of ours.</summary>
    /// <param name="input">Questions.</param>
    /// <param name="output">Answers.</param>
    public static void Run(Stream input, Stream output) => Run(input, output, () => { });

    private static void Run(Stream input, Stream output, Action ended)
    {
        using var questions = new BlockingCollection<Message>();
        // Read on a thread of its own: the end of the service must be seen even while a hook loops.
        var reader = new Thread(() => ReadAll(input, questions, ended)) { IsBackground = true };
        reader.Start();
        LoadedCode? code = null;
        foreach (var question in questions.GetConsumingEnumerable())
            Answer(question, ref code).Write(output);
        code?.Dispose();
        reader.Join();
    }

    private static void ReadAll(Stream input, BlockingCollection<Message> questions, Action ended)
    {
        try
        {
            while (Message.Read(input, LongestQuestion) is { } question)
                questions.Add(question);
        }
        catch (Exception e) when (e is IOException or InvalidDataException)
        {
            // The other side has ended in the middle, or is not the host: there is nobody to answer.
        }

        ended();
        questions.CompleteAdding();
    }

    private static Message Answer(Message question, ref LoadedCode? code)
    {
        try
        {
            if (question.Verb == WorkerProtocol.LoadVerb)
                return WorkerProtocol.Declared((code = Load(question.Text(1), question.Text(2))).Declare());
            if (question.Verb == WorkerProtocol.JudgeVerb && code is not null && question.Parts.Length == 3)
                return WorkerProtocol.Answer(code.Judge(question.Text(1), question.Parts[2]));
            if (question.Verb == WorkerProtocol.ReadVerb && code is not null && question.Parts.Length == 3)
                return WorkerProtocol.Answer(code.Read(question.Text(1), question.Parts[2]));
            if (question.Verb == WorkerProtocol.WriteVerb && code is not null && question.Parts.Length == 2)
                return WorkerProtocol.Answer(code.Write(question.Parts[1]));
            throw PluginFault.Invalid("The worker was asked something that it does not know.");
        }
        catch (PluginFault fault)
        {
            return WorkerProtocol.Fault(fault);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or System.Text.Json.JsonException)
        {
            return WorkerProtocol.Fault(PluginFault.Threw(e));
        }
    }

    private static LoadedCode Load(string folder, string sha256)
    {
        var files = PluginFolder.Read(folder, new FolderLimits());
        return files.Sha256 == sha256 ? LoadedCode.Load(files) : throw PluginFault.Refused("Its copy was changed before it could be loaded.");
    }

    // Not Environment.Exit: a plug-in may hang on to that.
    private static void LeaveAtOnce()
    {
        if (OperatingSystem.IsWindows())
            System.Diagnostics.Process.GetCurrentProcess().Kill();
        else
            ExitNow(0);
    }

    [DllImport("libc", EntryPoint = "_exit")]
    private static extern void ExitNow(int status);
}
