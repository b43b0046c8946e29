namespace RebuildApi.Server.OpenApi;

/// <summary>Names of schemas: the record's own, without the ending that only tells wire from domain.</summary>
public static class SchemaNames
{
    private const string Ending = "Wire";

    /// <summary>The name of a type: <c>Unit</c>, <c>ListOfUnit</c>.</summary>
    public static string Of(Type type)
    {
        var name = type.IsGenericType ? type.Name[..type.Name.IndexOf('`', StringComparison.Ordinal)] : type.Name;
        if (name.EndsWith(Ending, StringComparison.Ordinal))
            name = name[..^Ending.Length];
        return name + string.Concat(type.GetGenericArguments().Select(Of));
    }
}
