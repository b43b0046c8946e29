using System.Text;
using FamilyFiles;

namespace RebuildApi.Families.Tests;

/// <summary>What is wrong in the tightening list, the oil and the gates of a family file is named with line, column and code.</summary>
public sealed class BuildingFileTests
{
    private static readonly string s_file = File.ReadAllText(Repository.PathTo("plugins", "family-files", "examples", "brackenmere-4.yaml"));

    /// <summary>What is written, what is written instead, and the code of what is then wrong where that stands.</summary>
    [Theory]
    [InlineData("torque: 55 to 65 N.m", "torque: 65 to 55 N.m", "window-upside-down")]
    [InlineData("torque: 55 to 65 N.m", "torque: 55 to 65 stone", "limits-form")]
    [InlineData("torque: 55 to 65 N.m", "torque: tight", "limits-form")]
    [InlineData("quantity: 1.7 to 1.9 L", "quantity: 1.9 to 1.7 L", "window-upside-down")]
    [InlineData("before-leaving: final-test", "before-leaving: lunch", "word-unknown")]
    public void A_wrong_value_is_named_where_it_stands(string right, string wrong, string code)
    {
        var (text, line, column) = With(right, wrong);

        var found = Assert.Single(Read(text).Diagnostics);

        Assert.Equal((code, line, column + wrong.IndexOf(": ", StringComparison.Ordinal) + 2), (found.Code, found.Line, found.Column));
    }

    [Fact]
    public void A_name_that_is_not_known_is_named_with_the_nearest_that_is()
    {
        var (text, line, column) = With("torque: 55 to 65 N.m", "torqeu: 55 to 65 N.m");

        var found = Read(text).Diagnostics;

        Assert.Contains(found, d => d.Code == "field-unknown" && (d.Line, d.Column) == (line, column) && d.Message.Contains("Did you mean 'torque'?", StringComparison.Ordinal));
        Assert.Contains(found, d => d.Code == "field-missing");
    }

    [Theory]
    [InlineData("    read: counter-end-play\n", "")]
    [InlineData("read: counter-end-play", "tried: engine-off-shift\n    read: counter-end-play")]
    public void A_gate_wants_one_thing(string right, string wrong)
    {
        var found = Assert.Single(Read(With(right, wrong).Text).Diagnostics, d => d.Code == "demand-form");

        Assert.True(found is { Line: > 0, Column: > 0, Field: "gates.counter-end-play-read" });
    }

    private static ReadResult Read(string text) => new FamilyFilesPlugin().Read("broken.yaml", Encoding.UTF8.GetBytes(text));

    private static (string Text, int Line, int Column) With(string right, string wrong)
    {
        var at = s_file.IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0, right);
        return (s_file[..at] + wrong + s_file[(at + right.Length)..], s_file[..at].Count(c => c == '\n') + 1, at - s_file.LastIndexOf('\n', at));
    }
}
