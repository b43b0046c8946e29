namespace FamilyFiles.Forms;

/// <summary>Where a value stands: by the names of the file (<c>clearances.third-end-play</c>) and by those of the contract (<c>loops[third-end-play]</c>).</summary>
/// <param name="Written">Path by the names of the file.</param>
/// <param name="Field">Path by the names of the contract.</param>
/// <param name="Id">The nearest id on the way here.</param>
/// <param name="Owner">The id before it.</param>
internal sealed record Place(string Written, string Field, string Id, string Owner)
{
    public static Place Root { get; } = new("", "", "", "");

    /// <summary>A field of an entry; an empty contract name stands for the entry itself.</summary>
    public Place Member(string name, string field) => this with { Written = Join(Written, name), Field = field.Length == 0 ? Field : Join(Field, field) };

    /// <summary>An entry that is called by its id.</summary>
    public Place Entry(string id) => new(Join(Written, id), $"{Field}[{id}]", id, Id);

    /// <summary>An item of a list, from 0.</summary>
    public Place Item(int index) => this with { Written = string.Create(CultureInfo.InvariantCulture, $"{Written}[{index}]"), Field = string.Create(CultureInfo.InvariantCulture, $"{Field}[{index}]") };

    /// <summary>The same place under another name of the contract.</summary>
    public Place As(string field) => this with { Field = field };

    private static string Join(string path, string name) => path.Length == 0 ? name : path + "." + name;
}
