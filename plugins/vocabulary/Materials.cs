namespace FamilyWords;

/// <summary>What parts are made of. Expansion coefficients are customary ones; each melt differs, hence the half-width.</summary>
internal static class Materials
{
    public const string Steel = "steel";
    public const string GreyIron = "grey-iron";
    public const string Aluminium = "aluminium";
    public const string Bronze = "bronze";

    public static ImmutableArray<Material> With(string caseMaterial) =>
    [
        new(Steel, Text.English("material.steel", "Steel"), 11.5e-6, 1.0e-6, FromMemory),
        caseMaterial == Aluminium
            ? new(Aluminium, Text.English("material.aluminium", "Aluminium"), 23.0e-6, 1.5e-6, FromMemory)
            : new(GreyIron, Text.English("material.grey-iron", "Grey cast iron"), 10.5e-6, 1.0e-6, FromMemory),
        new(Bronze, Text.English("material.bronze", "Bronze"), 19.0e-6, 1.5e-6, FromMemory),
    ];
}
