namespace RebuildApi.Contracts;

/// <summary>A family reader that can also write a family as a file of its form. What it writes reads back as the same family, by canonical hash.</summary>
public interface IFamilyWriter
{
    /// <summary>Writes one family.</summary>
    /// <returns>The file's bytes, UTF-8.</returns>
    /// <exception cref="NotSupportedException">The family holds something that the form of file can't say; the message names it.</exception>
    byte[] Write(Family family);
}
