using FamilyFiles.Yaml;

namespace FamilyFiles.Writing;

/// <summary>Puts nodes together; what is nothing is left out.</summary>
internal static class Build
{
    public static ScalarNode Say(string text) => new(text);

    public static ScalarNode? SayIf(string? text) => text is null ? null : new ScalarNode(text);

    public static ScalarNode? Unless(string text, string usual) => text == usual ? null : new ScalarNode(text);

    public static ScalarNode? Word<T>(T value, T usual)
        where T : struct, Enum => value.Equals(usual) ? null : Word(value);

    public static ScalarNode Word<T>(T value)
        where T : struct, Enum => new(Forms.ChoiceForm<T>.WordOf(value));

    public static ScalarNode? WordIf<T>(T? value)
        where T : struct, Enum => value is { } word ? Word(word) : null;

    public static ScalarNode Number(double value) => new(value.ToString("R", CultureInfo.InvariantCulture));

    public static ScalarNode Whole(int value) => new(value.ToString(CultureInfo.InvariantCulture));

    public static ListNode? Names(IEnumerable<string> names) => List(names.Select(n => new ScalarNode(n)));

    public static ListNode? List(IEnumerable<Node> items) => items.ToImmutableArray() is { IsEmpty: false } all ? new ListNode(all) : null;

    public static MapNode Map(params IEnumerable<(string Name, Node? Value)> fields) =>
        new([.. fields.Where(f => f.Value is not null).Select(f => new Entry(new ScalarNode(f.Name), f.Value!))]);

    public static MapNode? MapIf(IEnumerable<(string Name, Node? Value)> fields) => Map(fields) is { Entries.IsEmpty: false } map ? map : null;

    /// <summary>Words: one text when they are English under the usual key.</summary>
    public static Node Words(Text text, string usual) => text.Key == usual && text.ByCulture is { Count: 1 } && text.ByCulture.TryGetValue("en", out var english)
        ? new ScalarNode(english)
        : Map([("key", Unless(text.Key, usual)), .. text.ByCulture.OrderBy(w => w.Key, StringComparer.Ordinal).Select(w => (w.Key, (Node?)new ScalarNode(w.Value)))]);

    public static Node? WordsIf(Text? text, string usual) => text is null ? null : Words(text, usual);
}
