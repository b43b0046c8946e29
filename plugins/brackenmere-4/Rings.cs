namespace Brackenmere4;

/// <summary>Rings and washers that exist in several thicknesses. A ring is fitted once.</summary>
internal static class Rings
{
    public static PartKind Selective(string id, string name, Limits thickness) => Kind(id, name).Made(Materials.Steel).SingleUse()
        .Measures(Size("thickness", "Thickness, at 3 points").New(thickness).Averaged(3).By("outside-micrometer").Functional())
        .Shows(Attributes.Surface, Attributes.Supply)
        .LookFor("hand-ground", "dished");

    public static PartKind Washer(string id, string name, Limits @new, Limits service) => Kind(id, name).Made(Materials.Steel)
        .Measures(Size("thickness", "Thickness, thinnest of 4").New(@new).Service(service).Thinnest(4).By("outside-micrometer").Functional())
        .Shows(Attributes.WasherMaterial)
        .LookFor("scuffing", "sliding-wear", "overheating", "debris-indentation");

    public static PartKind Gasket(string id, string name) => Kind(id, name).SingleUse()
        .Measures(Size("thickness", "Thickness when compressed").New(In(0.0095m, 0.0185m)).Averaged(4).By("outside-micrometer"));
}
