namespace RebuildApi.Server.Errors;

/// <summary>What the engine refuses, as a problem that names the field.</summary>
public static class Refusal
{
    /// <summary>A part of a calculation whose refusal is one field's fault.</summary>
    /// <exception cref="ProblemException">It was refused.</exception>
    public static T At<T>(string field, Func<T> part)
    {
        try
        {
            return part();
        }
        catch (ArgumentException refused)
        {
            throw Of(field, refused);
        }
        catch (ArithmeticException)
        {
            throw TooLarge(field);
        }
    }

    /// <summary>The problem of values that make no sense together.</summary>
    public static ProblemException Of(string pointer, ArgumentException refused) => Problem(pointer, Words(refused));

    /// <summary>The problem of a result beyond what can be written.</summary>
    public static ProblemException TooLarge(string pointer) => Problem(pointer, "The result is too large to be written.");

    // The framework adds the name of its parameter, and on a second line the value, which are the engine's and not the request's.
    private static string Words(ArgumentException refused) => refused.Message.Split(" (Parameter", StringSplitOptions.None)[0];

    private static ProblemException Problem(string pointer, string words) =>
        new(Problems.NotComputable, words, [new FieldError(pointer, FieldProblems.OutOfRange.Code, words)]);
}
