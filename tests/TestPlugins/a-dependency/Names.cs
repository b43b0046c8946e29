namespace Dependency;

public static class Names
{
    public static string OfFamily { get; } = string.Concat("shelf-", "depends");
}
