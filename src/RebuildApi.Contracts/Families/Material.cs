namespace RebuildApi.Contracts;

/// <summary>What a part is made of, as far as its length depends on temperature.</summary>
/// <param name="Id">Referred to by <see cref="PartKind.Material"/>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="ExpansionPerKelvin">Linear expansion coefficient, 1/K.</param>
/// <param name="ExpansionHalfWidth">Half-width of the interval in which the coefficient lies (rectangular), 1/K.</param>
/// <param name="Source">Where the numbers come from.</param>
public sealed record Material(string Id, Text Name, double ExpansionPerKelvin, double ExpansionHalfWidth, Source Source);
