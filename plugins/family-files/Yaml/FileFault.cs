namespace FamilyFiles.Yaml;

/// <summary>The file can't be read any further, and why. Becomes one diagnostic.</summary>
internal sealed class FileFault(int line, int column, string code, string message) : Exception(message)
{
    public int Line { get; } = line;

    public int Column { get; } = column;

    public string Code { get; } = code;
}
