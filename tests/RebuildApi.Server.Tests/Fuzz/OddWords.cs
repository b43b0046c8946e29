namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>Values that have broken programs before.</summary>
internal static class OddWords
{
    public static readonly string[] Numbers =
        ["0", "-0", "1", "-1", "0.5", "1.5101", "1e-9", "1e-400", "1e400", "-1e308", "9007199254740993", "123456789012345678901234567890", "0.1000000000000000000001", "1E+2", "2147483648"];

    public static readonly string[] Texts =
        ["x", " ", "", "Ada", "third-gear", "third-gear/bore", "mm", "=1+1", "+cmd|' /C calc'!A0", "../../etc/passwd", "'; DROP TABLE unit; --", "<script>alert(1)</script>",
            "Zahnrad für Großvater", "齿轮", "🔧", "e\u0301", "\u202Egnp", "a\tb", "line\nend", "%00", "{{7*7}}", "null", "NaN", "2026-02-30", "1,5", "\u0000", "\uFEFF", new('x', 300), new('9', 60)];

    public static readonly string[] Json = ["null", "true", "[]", "{}", "\"\"", "0", "-1", "1e400", "[null]", "[[]]", "{\"\":{}}", "\"\\u0000\"", "{\"value\":1}", "{\"value\":\"1\",\"unit\":\"mm\"}", "[1,\"a\",{}]"];
}
