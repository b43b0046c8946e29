using System.Reflection;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>Runs one calculation of the engine on values from outside: what it refuses becomes a problem that names the field.</summary>
public static class Calculations
{
    /// <summary>The result with what it rests on.</summary>
    /// <param name="sent">The request, with what was left out filled in.</param>
    /// <param name="formula">The formula.</param>
    /// <param name="calculation">The calculation; whatever it throws as an argument that is wrong is the request's fault.</param>
    /// <param name="field">The field to blame where the engine's own name for it is not one of the request's.</param>
    /// <exception cref="ProblemException">The values make no sense together.</exception>
    public static CalculationWire<TSent, T> Run<TSent, T>(TSent sent, Formula formula, Func<Worked<T>> calculation, string field)
        where TSent : class
    {
        try
        {
            return CalculationWire<TSent, T>.Of(sent, formula, calculation());
        }
        catch (ArgumentException refused)
        {
            throw Refusal.Of(PointerOf<TSent>(refused.ParamName) ?? field, refused);
        }
        catch (ArithmeticException)
        {
            throw Refusal.TooLarge(field);
        }
    }

    // The engine names its own parameters, such as input.EngagementRadius; the request's fields mostly bear the same names.
    private static string? PointerOf<TSent>(string? parameter)
    {
        var name = parameter?.Split('.')[^1];
        var field = name is null ? null : typeof(TSent).GetProperty(name, BindingFlags.Public | BindingFlags.Instance | BindingFlags.IgnoreCase);
        return field is null ? null : "/" + System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(field.Name);
    }
}
