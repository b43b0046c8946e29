using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace RebuildApi.PluginHost.Workers;

/// <summary>One running worker, asked one thing at a time by its owner. The first fault that is not a plain answer ends it.</summary>
internal sealed class WorkerProcess : IDisposable
{
    private static readonly TimeSpan TimeToLeave = TimeSpan.FromSeconds(2);
    private readonly Process _process;
    private readonly Task _exited;
    private readonly int _longestAnswer;

    /// <summary>Starts a worker.</summary>
    /// <exception cref="PluginFault">It can't be started.</exception>
    public WorkerProcess(WorkerLauncher launcher)
    {
        _process = launcher.Start();
        _longestAnswer = launcher.LongestAnswer;
        _exited = _process.WaitForExitAsync(CancellationToken.None);
        // Read and thrown away, so that a worker that dies with many words does not wait for a reader.
        _ = _process.StandardError.BaseStream.CopyToAsync(Stream.Null);
    }

    /// <summary>Whether it can be asked.</summary>
    public bool IsAlive => !_exited.IsCompleted;

    /// <summary>Asks and waits for the answer, but no longer than the budget.</summary>
    /// <exception cref="PluginFault">It was late, ended, or wrote something else; it is gone then.</exception>
    public Message Ask(Message question, TimeSpan budget)
    {
        var answer = Task.Run(() => Exchange(question));
        var first = Task.WaitAny([answer, _exited], budget);
        if (first == 0 && answer.IsCompletedSuccessfully && answer.Result is { } reply)
            return reply;
        Kill();
        throw first < 0 ? PluginFault.Late("It did not answer in time.") : answer.Exception?.InnerException is InvalidDataException wrong
            ? PluginFault.Invalid(wrong.Message)
            : Crashed();
    }

    /// <summary>Ends it: by closing its input, and by force when it does not leave.</summary>
    public void Dispose()
    {
        try
        {
            _process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It is gone already.
        }

        if (!_exited.Wait(TimeToLeave))
            Kill();
        _process.Dispose();
    }

    private Message? Exchange(Message question)
    {
        question.Write(_process.StandardInput.BaseStream);
        return Message.Read(_process.StandardOutput.BaseStream, _longestAnswer);
    }

    private PluginFault Crashed()
    {
        var how = _process.HasExited ? string.Create(CultureInfo.InvariantCulture, $" with exit code {_process.ExitCode}") : "";
        return new PluginFault(PluginState.Failed, "hook-crashed", $"It ended its process{how}.");
    }

    private void Kill()
    {
        try
        {
            _process.Kill(entireProcessTree: true);
            _exited.Wait(TimeToLeave);
        }
        catch (Exception e) when (e is InvalidOperationException or Win32Exception or AggregateException)
        {
            // It went by itself in the meantime.
        }
    }
}
