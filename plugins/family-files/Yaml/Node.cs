namespace FamilyFiles.Yaml;

/// <summary>A piece of a file, and where it stands: line and column from 1.</summary>
internal abstract record Node(int Line, int Column);

/// <summary>A value, letter for letter. What it means is for whoever asked for it to say: <c>087</c> stays as it is.</summary>
internal sealed record ScalarNode(string Text, int Line = 0, int Column = 0) : Node(Line, Column);

/// <summary>Items in order.</summary>
internal sealed record ListNode(ImmutableArray<Node> Items, int Line = 0, int Column = 0) : Node(Line, Column);

/// <summary>Names with values, in order. No name stands twice.</summary>
internal sealed record MapNode(ImmutableArray<Entry> Entries, int Line = 0, int Column = 0) : Node(Line, Column)
{
    public Node? Find(string name) => Entries.FirstOrDefault(e => e.Key.Text == name)?.Value;
}

/// <summary>One name with its value.</summary>
internal sealed record Entry(ScalarNode Key, Node Value);
