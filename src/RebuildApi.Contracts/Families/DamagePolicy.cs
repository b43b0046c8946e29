namespace RebuildApi.Contracts;

/// <summary>What a class of damage means for a kind. The most particular policy that fits decides; <c>*</c> fits anything.</summary>
/// <param name="Kind">The kind of part, or <c>*</c>.</param>
/// <param name="DamageClass">The standard's class: <c>macropitting</c>.</param>
/// <param name="Extent">How far it has gone: <c>slight</c>, <c>moderate</c>, <c>severe</c>, or <c>*</c>.</param>
/// <param name="Where">The feature or side: <c>thrust-side</c>, or <c>*</c>.</param>
/// <param name="Duty">The duty the gearbox goes back to, or <c>*</c>.</param>
/// <param name="Outcome">Whether a part so damaged conforms.</param>
/// <param name="Disposition">What is done with it.</param>
/// <param name="Advice">What else to look for, in plain words, or none.</param>
/// <param name="Source">Where the policy comes from.</param>
public sealed record DamagePolicy(
    string Kind,
    string DamageClass,
    string Extent,
    string Where,
    string Duty,
    Outcome Outcome,
    Disposition Disposition,
    Text? Advice,
    Source Source);
