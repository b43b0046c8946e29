using System.Buffers.Binary;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace RebuildApi.PluginHost.Tests;

/// <summary>Makes a plug-in look as if it had been compiled against another version of the contract.</summary>
internal static class ContractReference
{
    /// <summary>
    /// The same assembly with another version in its reference to the contract. A row of the AssemblyRef table begins with major and minor version as
    /// two 16-bit numbers (ECMA-335, II.22.5).
    /// </summary>
    public static byte[] Rewritten(byte[] assembly, ushort major, ushort minor)
    {
        using var image = new PEReader(new MemoryStream(assembly));
        var metadata = image.GetMetadataReader();
        var row = metadata.AssemblyReferences.Single(r => metadata.GetString(metadata.GetAssemblyReference(r).Name) == "RebuildApi.Contracts");
        var offset = image.PEHeaders.MetadataStartOffset
            + metadata.GetTableMetadataOffset(TableIndex.AssemblyRef)
            + ((MetadataTokens.GetRowNumber(row) - 1) * metadata.GetTableRowSize(TableIndex.AssemblyRef));
        var rewritten = assembly.ToArray();
        BinaryPrimitives.WriteUInt16LittleEndian(rewritten.AsSpan(offset), major);
        BinaryPrimitives.WriteUInt16LittleEndian(rewritten.AsSpan(offset + 2), minor);
        return rewritten;
    }
}
