using System.Collections.Immutable;

namespace RebuildApi.Server.Pages;

/// <summary>Something to print, said once: a page of the browser and a PDF are both made from it.</summary>
/// <param name="Title">What stands at its head.</param>
/// <param name="Blocks">What is on it, from the top.</param>
public sealed record Paper(string Title, ImmutableArray<Block> Blocks);

/// <summary>A piece of a paper.</summary>
public abstract record Block;

/// <summary>A heading.</summary>
/// <param name="Text">Its words.</param>
public sealed record Heading(string Text) : Block;

/// <summary>A paragraph.</summary>
/// <param name="Text">Its words.</param>
/// <param name="IsSoft">Whether it is a remark.</param>
public sealed record Prose(string Text, bool IsSoft = false) : Block;

/// <summary>A list.</summary>
/// <param name="Items">Its items.</param>
public sealed record Bullets(ImmutableArray<string> Items) : Block;

/// <summary>A drawing.</summary>
/// <param name="Drawing">The drawing.</param>
public sealed record Picture(Drawn Drawing) : Block;

/// <summary>Lines to sign on.</summary>
/// <param name="Words">What each is for.</param>
public sealed record Signatures(ImmutableArray<string> Words) : Block;

/// <summary>A table. Its head stands again on every page.</summary>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows.</param>
/// <param name="Empty">What stands there when it has none.</param>
public sealed record Grid(ImmutableArray<Column> Columns, ImmutableArray<Row> Rows, string Empty) : Block;

/// <summary>A column.</summary>
/// <param name="Head">Its heading.</param>
/// <param name="Share">How wide it is beside the others.</param>
/// <param name="IsNumber">Whether it holds numbers, which stand to the right.</param>
public sealed record Column(string Head, double Share, bool IsNumber = false);

/// <summary>A row.</summary>
/// <param name="Cells">One for each column; those that are missing are empty.</param>
/// <param name="IsHead">Whether it stands above the rows that follow.</param>
public sealed record Row(ImmutableArray<Cell> Cells, bool IsHead = false)
{
    /// <summary>A row of plain words.</summary>
    public static Row Of(params string[] cells) => new([.. cells.Select(c => new Cell(c))]);
}

/// <summary>One cell.</summary>
/// <param name="Text">Its words.</param>
/// <param name="Outcome">The outcome that it tells, which gives it its sign.</param>
public sealed record Cell(string Text, string? Outcome = null)
{
    /// <summary>The sign of its outcome, for paper.</summary>
    public string Sign => Outcome switch
    {
        null => "",
        "conforming" or "compatible" => "✓ ",
        "nonconforming" or "incompatible" => "✕ ",
        "inconclusive" or "conditional" => "◆ ",
        _ => "○ ",
    };
}
