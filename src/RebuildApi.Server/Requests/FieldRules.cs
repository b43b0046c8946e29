using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.OpenApi;
using RebuildApi.Contracts;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>A rule for one field of a request, checked on reading and told in the OpenAPI document.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public abstract class FieldRule : Attribute
{
    /// <summary>Checks a value that has the right type.</summary>
    public abstract void Check(object value, string pointer, Complaints complaints);

    /// <summary>Tells the rule in the document.</summary>
    public abstract void Describe(OpenApiSchema schema);
}

/// <summary>Text of one line, or of several.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class WordsAttribute(int most) : FieldRule
{
    /// <summary>The longest text where nothing else is said.</summary>
    public static WordsAttribute Plain { get; } = new(200);

    /// <summary>Whether line ends and tabs may be in it.</summary>
    public bool Lines { get; init; }

    /// <inheritdoc/>
    public override void Check(object value, string pointer, Complaints complaints)
    {
        var text = (string)value;
        if (string.IsNullOrWhiteSpace(text))
            complaints.Add(pointer, FieldProblems.BadText, "The text is empty.", text);
        else if (text.Length > most)
            complaints.Add(pointer, FieldProblems.BadText, $"The text has {text.Length} characters; at most {most} are kept.", text);
        else if (text.Any(c => char.IsControl(c) && !(Lines && c is '\n' or '\r' or '\t')))
            complaints.Add(pointer, FieldProblems.BadText, "The text holds control characters.", null);
    }

    /// <inheritdoc/>
    public override void Describe(OpenApiSchema schema) => (schema.MinLength, schema.MaxLength) = (1, most);
}

/// <summary>An id: letters, digits, dots, hyphens, underscores.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed partial class IdAttribute : FieldRule
{
    /// <summary>Whether a text may be an id.</summary>
    public static bool IsId(string text) => Pattern().IsMatch(text);

    /// <inheritdoc/>
    public override void Check(object value, string pointer, Complaints complaints)
    {
        if (!IsId((string)value))
            complaints.Add(pointer, FieldProblems.BadId, "This can't be an id.", (string)value, null, FieldProblems.BadId.Cause);
    }

    /// <inheritdoc/>
    public override void Describe(OpenApiSchema schema) => schema.Pattern = "^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$";

    [GeneratedRegex(@"\A[A-Za-z0-9][A-Za-z0-9._-]{0,63}\z", RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}

/// <summary>One of a closed list of words.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class OneOfAttribute(params string[] words) : FieldRule
{
    /// <inheritdoc/>
    public override void Check(object value, string pointer, Complaints complaints)
    {
        if (!words.Contains((string)value, StringComparer.Ordinal))
            complaints.AddUnknown(pointer, FieldProblems.NotAllowed, $"This is not one of: {string.Join(", ", words)}.", (string)value, words);
    }

    /// <inheritdoc/>
    public override void Describe(OpenApiSchema schema) => schema.Enum = [.. words.Select(w => System.Text.Json.Nodes.JsonValue.Create(w)!)];
}

/// <summary>A number between two ends, both allowed.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class BetweenAttribute(double low, double high) : FieldRule
{
    /// <inheritdoc/>
    public override void Check(object value, string pointer, Complaints complaints)
    {
        var number = Convert.ToDouble(value, CultureInfo.InvariantCulture);
        if (number < low || number > high)
        {
            var text = Convert.ToString(value, CultureInfo.InvariantCulture);
            complaints.Add(pointer, FieldProblems.OutOfRange, FormattableString.Invariant($"The value lies outside {low} to {high}."), text);
        }
    }

    /// <inheritdoc/>
    public override void Describe(OpenApiSchema schema)
    {
        schema.Minimum = low.ToString("R", CultureInfo.InvariantCulture);
        schema.Maximum = high.ToString("R", CultureInfo.InvariantCulture);
    }
}

/// <summary>How many entries a list has.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class EntriesAttribute(int fewest, int most) : FieldRule
{
    /// <summary>The bounds where nothing else is said.</summary>
    public static EntriesAttribute Plain { get; } = new(0, 1000);

    /// <summary>Checks a count before the entries are read.</summary>
    public bool Holds(int count, string pointer, Complaints complaints)
    {
        if (count >= fewest && count <= most)
            return true;
        complaints.Add(pointer, FieldProblems.BadCount, $"There are {count} entries; {fewest} to {most} make sense here.");
        return false;
    }

    /// <inheritdoc/>
    public override void Check(object value, string pointer, Complaints complaints)
    {
    }

    /// <inheritdoc/>
    public override void Describe(OpenApiSchema schema) => (schema.MinItems, schema.MaxItems) = (fewest, most);
}

/// <summary>What sort of quantity a value is.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class OfAttribute(Dimension dimension) : Attribute
{
    /// <summary>The dimension.</summary>
    public Dimension Dimension { get; } = dimension;

    /// <summary>Which values make sense: any, none below 0, or only those above 0.</summary>
    public SignRule Sign { get; init; }
}

/// <summary>Which values of a quantity make sense.</summary>
public enum SignRule
{
    /// <summary>Any.</summary>
    Any,

    /// <summary>0 or more.</summary>
    NotNegative,

    /// <summary>More than 0.</summary>
    Positive,
}
