using RebuildApi.Server.Results;
using RebuildApi.Server.Wire.Shop;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>A kit as a workbook, a sheet for each person who needs a part of it.</summary>
public static class KitWorkbook
{
    /// <summary>The workbook.</summary>
    public static Workbook Of(KitWire kit) => new(
        $"kit-{kit.Unit}.xlsx",
        WorkbookSheet.Of("Order", kit.Orders.SelectMany(o => o.Lines)),
        WorkbookSheet.Of("Take from the shelf", kit.Picks),
        WorkbookSheet.Of("Ask for", kit.ToAskFor),
        WorkbookSheet.Of("Work", kit.Work),
        WorkbookSheet.Of("Assembly", kit.Assembly),
        WorkbookSheet.Of("Tightening", kit.Tightening),
        WorkbookSheet.Of("Oil", kit.Lubricants),
        WorkbookSheet.Of("Conditions", kit.Conditions),
        WorkbookSheet.Of("Cautions", kit.Cautions.Select(c => new CautionRow(c))));

    private sealed record CautionRow(string Caution);
}
