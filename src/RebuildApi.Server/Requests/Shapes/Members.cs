using System.Text.Json;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests.Shapes;

/// <summary>The members of an object, each once.</summary>
public static class Members
{
    /// <summary>Reads the members; a name that stands twice is complained of.</summary>
    public static Dictionary<string, JsonElement> Of(JsonElement json, string pointer, Complaints complaints)
    {
        var members = new Dictionary<string, JsonElement>(StringComparer.Ordinal);
        foreach (var member in json.EnumerateObject())
        {
            if (!members.TryAdd(member.Name, member.Value))
                complaints.Add(Pointer.Member(pointer, member.Name), FieldProblems.DuplicateField, $"The field {member.Name} is there twice.");
        }

        return members;
    }
}
