namespace RebuildApi.Server.Checks;

/// <summary>One row as it was sent, as pieces of the line it stands in. Empty means absent.</summary>
public ref struct CheckRow
{
    /// <summary>Id of the family.</summary>
    public ReadOnlySpan<byte> Family;

    /// <summary>A characteristic (<c>position/characteristic</c>) or a clearance (its id).</summary>
    public ReadOnlySpan<byte> At;

    /// <summary>The number, letter for letter.</summary>
    public ReadOnlySpan<byte> Value;

    /// <summary>Its unit.</summary>
    public ReadOnlySpan<byte> Unit;

    /// <summary>Standard uncertainty in the same unit.</summary>
    public ReadOnlySpan<byte> Uncertainty;

    /// <summary>Id of the instrument.</summary>
    public ReadOnlySpan<byte> Instrument;

    /// <summary>The sender's own name for the row, given back.</summary>
    public ReadOnlySpan<byte> Id;

    /// <summary>The names of the fields, in the order of <see cref="Set"/>.</summary>
    public static readonly string[] Names = ["family", "at", "value", "unit", "uncertainty", "instrument", "id"];

    /// <summary>The number of a field, or −1.</summary>
    public static int IndexOf(ReadOnlySpan<byte> name)
    {
        for (var i = 0; i < Names.Length; i++)
        {
            if (System.Text.Ascii.Equals(name, Names[i]))
                return i;
        }

        return -1;
    }

    /// <summary>Sets a field by its number.</summary>
    public void Set(int field, ReadOnlySpan<byte> text)
    {
        switch (field)
        {
            case 0: Family = text; break;
            case 1: At = text; break;
            case 2: Value = text; break;
            case 3: Unit = text; break;
            case 4: Uncertainty = text; break;
            case 5: Instrument = text; break;
            default: Id = text; break;
        }
    }
}
