using FamilyFiles.Values;

namespace FamilyFiles.Forms;

/// <summary>The plain values that occur in many places.</summary>
internal static class Plain
{
    private static readonly string[] s_text = ["string", "number"];

    /// <summary>A name that refers to something declared elsewhere, or a word of a closed list that only the whole family can check.</summary>
    public static Form<string> Name { get; } = new ScalarForm<string>("name-form", "A name such as third-gear.", s_text, NotEmpty);

    public static Form<ImmutableArray<string>> Names { get; } = new ListForm<string>(Name);

    public static Form<string> Phrase { get; } = new ScalarForm<string>("words-form", "Words.", s_text, NotEmpty);

    public static Form<bool> YesNo { get; } = new ScalarForm<bool>("yes-no-form", "true or false.", ["boolean"], t => t switch
    {
        "true" => true,
        "false" => false,
        _ => throw new FormatException($"'{Short(t)}' is neither"),
    });

    public static Form<int> Whole { get; } = new ScalarForm<int>("number-form", "A whole number such as 4.", ["integer"], WholeOf);

    public static Form<int?> WholeIfAny { get; } = new ScalarForm<int?>("number-form", "A whole number such as 4.", ["integer"], t => WholeOf(t));

    public static Form<double> Number { get; } = new ScalarForm<double>("number-form", "A number such as 0.15.", ["number"], QuantityText.Number);

    public static Form<double?> NumberIfAny { get; } = new ScalarForm<double?>("number-form", "A number such as 0.15.", ["number"], t => QuantityText.Number(t));

    public static Form<decimal> Minutes { get; } = new ScalarForm<decimal>("number-form", "Minutes such as 35.", ["number"], QuantityText.Decimal);

    public static Form<decimal?> MinutesIfAny { get; } = new ScalarForm<decimal?>("number-form", "Minutes such as 35.", ["number"], t => QuantityText.Decimal(t));

    public static Form<Length> Length { get; } = new ScalarForm<Length>("length-form", "A length with its unit, such as 0.0005 in or 0.01 mm.", ["string"], QuantityText.Length);

    public static Form<Quantity> Quantity { get; } = new ScalarForm<Quantity>("quantity-form", "A number with its unit: 0.015 in, 0.01 mm, 3 deg, 52 N, 400 N.m, 680 HV, 36 pcs; a plain number is a ratio.", s_text, QuantityText.Read);

    public static Form<double> Angle { get; } = new ScalarForm<double>("quantity-form", "An angle such as 24.8116 deg.", ["string"], t => QuantityText.Real(t, Dimension.Angle));

    public static Form<double> Kelvin { get; } = new ScalarForm<double>("quantity-form", "A temperature such as 90 degC or 363.15 K.", ["string"], t => QuantityText.Real(t, Dimension.Temperature));

    /// <summary>A foreign text short enough for a message.</summary>
    public static string Short(string text) => text.Length <= 60 ? text : text[..60] + "…";

    private static string NotEmpty(string text) => text.Length > 0 ? text : throw new FormatException("There is nothing here");

    private static int WholeOf(string text) => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
        ? value
        : throw new FormatException($"'{Short(text)}' is not a whole number");
}
