using System.Globalization;
using RebuildApi.PluginHost.Trust;

namespace RebuildApi.PluginHost.Loading;

/// <summary>A plug-in's code in the service's own process: quick, and contained by nothing but a watch on its answers.</summary>
internal sealed class InProcessCode(PluginFiles files) : IPluginCode
{
    private volatile LoadedCode? _code;

    /// <inheritdoc/>
    public DeclaredBytes Declare(TimeSpan budget) => TimeLimit.Run(
        budget,
        string.Create(CultureInfo.InvariantCulture, $"It did not declare its families within {budget.TotalSeconds} s."),
        () => (_code = LoadedCode.Load(files)).Declare());

    /// <inheritdoc/>
    public byte[] Judge(string hook, byte[] snapshot, TimeSpan budget)
    {
        var code = _code ?? throw new ObjectDisposedException(nameof(InProcessCode));
        return TimeLimit.Run(budget, "It did not answer in time.", () => code.Judge(hook, snapshot));
    }

    /// <inheritdoc/>
    public byte[] Read(string fileName, byte[] utf8, TimeSpan budget)
    {
        var code = _code ?? throw new ObjectDisposedException(nameof(InProcessCode));
        return TimeLimit.Run(budget, "It did not answer in time.", () => code.Read(fileName, utf8));
    }

    /// <inheritdoc/>
    public byte[] Write(byte[] family, TimeSpan budget)
    {
        var code = _code ?? throw new ObjectDisposedException(nameof(InProcessCode));
        return TimeLimit.Run(budget, "It did not answer in time.", () => code.Write(family));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _code?.Dispose();
        _code = null;
    }
}
