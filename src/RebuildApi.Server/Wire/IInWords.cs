namespace RebuildApi.Server.Wire;

/// <summary>Lists of this are written in words in a table.</summary>
public interface IInWords
{
    /// <summary>The words.</summary>
    string InWords();
}
