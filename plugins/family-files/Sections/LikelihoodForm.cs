using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A judged probability with its range: lowest defensible, best judgement, highest.</summary>
internal sealed class LikelihoodForm : Form<Likelihood>
{
    private static readonly ListForm<double> s_numbers = new(Plain.Number);

    public static LikelihoodForm All { get; } = new();

    /// <inheritdoc/>
    public override Likelihood? Read(Node node, Place place, FileReading reading)
    {
        var before = reading.Errors;
        if (s_numbers.Read(node, place, reading) is [var low, var best, var high])
            return new Likelihood(low, best, high);
        if (reading.Errors == before)
            reading.Error(node, place, "chance-form", "A chance has three numbers: lowest, best, highest, such as [0.6, 0.8, 0.95].");
        return null;
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => book.Refer("chance", () => new JsonObject
    {
        ["description"] = "Lowest defensible probability, best judgement, highest.",
        ["type"] = "array",
        ["minItems"] = 3,
        ["maxItems"] = 3,
        ["items"] = Plain.Number.Schema(book),
    });
}
