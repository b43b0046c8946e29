using System.Globalization;
using System.Text;
using CsCheck;
using FamilyFiles;

namespace RebuildApi.Families.Tests;

/// <summary>No file takes the reader down or keeps it busy: whatever it gets, it answers with a family or with words. Computed here, no source.</summary>
public class FamilyFileFuzzTests
{
    private const string Seed = "0N0XIzNsQ0O2";
    private static readonly string[] s_pieces = ["", "x", ": ", "- ", "[", "}", "&a ", "*a", "!!int ", "\n", "9e999 mm", "0 mm", "-1", "\u0000", "like: gear"];
    private static readonly string[] s_depth = ["nested-too-deep", "yaml-form", "name-form"];
    private static readonly int s_rounds = int.Parse(Environment.GetEnvironmentVariable("REBUILD_SOAK_FILES") ?? "150", CultureInfo.InvariantCulture);
    private static readonly string s_sound = File.ReadAllText(Repository.PathTo("src", "RebuildApi.Server", "Authoring", "Scaffold", "yaml", "ID-OF-FAMILY.yaml"))
        .Replace("ID-OF-FAMILY", "marsh-1", StringComparison.Ordinal);

    [Fact]
    public void The_file_to_start_from_is_sound() => Assert.Empty(Read(s_sound).Diagnostics);

    [Fact]
    public void Any_bytes_at_all_are_answered() =>
        Gen.Byte.Array[0, 400].Sample(bytes => IsAnswer(new FamilyFilesPlugin().Read("any.yaml", bytes)), iter: s_rounds, seed: Seed, threads: 1);

    [Fact]
    public void Any_text_at_all_is_answered() =>
        Gen.String[Gen.Char["abc:-[]{}&*!|>'\"#\n \t0,?%@`"], 0, 200].Sample(text => IsAnswer(Read(text)), iter: s_rounds, seed: Seed, threads: 1);

    [Fact]
    public void A_sound_file_with_a_piece_exchanged_is_answered() =>
        Gen.Select(Gen.Int[0, s_sound.Length - 1], Gen.Int[0, 40], Gen.Int[0, s_pieces.Length - 1])
            .Sample((at, length, piece) => IsAnswer(Read(s_sound[..at] + s_pieces[piece] + s_sound[Math.Min(s_sound.Length, at + length)..])), iter: s_rounds, seed: Seed, threads: 1);

    [Theory]
    [InlineData("a: &a [1]\nb: *a\n", "alias-refused")]
    [InlineData("a: !!python/object:os.system x\n", "tag-refused")]
    [InlineData("a: 1\na: 2\n", "name-twice")]
    [InlineData("a: 1\n---\nb: 2\n", "second-document")]
    [InlineData("", "file-empty")]
    [InlineData("a: [1, 2\n", "yaml-form")]
    [InlineData("? [a]\n: b\n", "name-form")]
    public void A_trick_is_refused_in_words(string yaml, string code) => Assert.Equal(code, Assert.Single(Read(yaml).Diagnostics).Code);

    [Fact]
    public void A_file_that_would_unfold_without_end_is_refused_at_its_first_mark()
    {
        var bomb = "a: &a [x, x, x, x, x, x, x, x, x]\n" + string.Concat(Enumerable.Range('b', 20).Select(c => $"{(char)c}: &{(char)c} [{string.Join(", ", Enumerable.Repeat("*" + (char)(c - 1), 9))}]\n"));

        Assert.Equal(("alias-refused", 1), (Assert.Single(Read(bomb).Diagnostics).Code, Read(bomb).Diagnostics[0].Line));
    }

    [Theory]
    [InlineData('[')]
    [InlineData('{')]
    public void Deep_nesting_is_refused(char open) => Assert.Contains(Assert.Single(Read("a: " + new string(open, 50_000)).Diagnostics).Code, s_depth);

    [Fact]
    public void A_huge_value_is_refused() => Assert.Equal("value-too-long", Assert.Single(Read("family: " + new string('a', 500_000)).Diagnostics).Code);

    [Fact]
    public void A_huge_file_is_refused() => Assert.Equal("file-too-large", Assert.Single(Read("# " + new string('a', 1 << 20)).Diagnostics).Code);

    [Fact]
    public void Entries_that_are_like_each_other_cost_what_they_would_cost_written_out()
    {
        var model = "  m:\n    name: M\n    measures:\n" + string.Concat(Enumerable.Range(0, 2_000).Select(i => $"      c{i}: {{name: C}}\n"));
        var alike = string.Concat(Enumerable.Range(0, 2_000).Select(i => $"  k{i}: {{like: m}}\n"));

        var read = Read("family: a\nversion: 1.0.0\nname: A\nsources: {}\nkinds:\n" + model + alike + "positions: {}\n");

        Assert.Contains("file-too-large", read.Diagnostics.Select(d => d.Code));
    }

    private static ReadResult Read(string text) => new FamilyFilesPlugin().Read("any.yaml", Encoding.UTF8.GetBytes(text));

    private static bool IsAnswer(ReadResult read) =>
        read.Family is not null || (read.Diagnostics.Any(d => d.IsError) && read.Diagnostics.All(d => d.Message.Length > 0 && d.Line >= 0));
}
