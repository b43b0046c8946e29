using RebuildApi.Contracts;
using RebuildApi.Engine.Fits;

namespace RebuildApi.Engine.Tests.Fits;

public class AnsiFitsTests
{
    [Theory] // ANSI/ASME B4.1-1967 (R2009), Machinery's Handbook, 31st ed., table 8a; thousandths of an inch, arithmetic checked.
    [InlineData("RC1", 1.00, 0.3, 0.95)]
    [InlineData("RC2", 1.00, 0.3, 1.2)]
    [InlineData("RC3", 1.00, 0.8, 2.1)]
    [InlineData("RC4", 1.00, 0.8, 2.8)]
    [InlineData("RC4", 1.50, 1.0, 3.6)]
    [InlineData("RC4", 1.19, 0.8, 2.8)]
    public void Running_fits_have_their_clearances(string fits, double size, double least, double most)
    {
        var fit = AnsiFits.Of(Length.Inches((decimal)size), fits);

        Assert.Equal(Length.Inches((decimal)least / 1000), fit.LeastClearance);
        Assert.Equal(Length.Inches((decimal)most / 1000), fit.MostClearance);
    }

    [Theory]
    [InlineData("RC1", 4.74)]
    [InlineData("RC4", 0)]
    [InlineData("LC1", 1.00)]
    public void What_is_not_held_is_refused_and_not_guessed(string fits, double size) =>
        Assert.Throws<ArgumentException>("class", () => AnsiFits.Of(Length.Inches((decimal)size), fits));

    [Theory] // The sizes that were not read in a copy of the table say so.
    [InlineData("RC1", 1.00, SourceKind.Published)]
    [InlineData("RC4", 1.50, SourceKind.Published)]
    [InlineData("RC3", 1.50, SourceKind.Judgement)]
    [InlineData("RC4", 2.50, SourceKind.Judgement)]
    public void A_size_from_memory_says_so(string fits, double size, SourceKind kind) =>
        Assert.Equal(kind, AnsiFits.Of(Length.Inches((decimal)size), fits).Hole.Source.Kind);

    [Fact] // Computed here, no source: the build of any table of running fits.
    public void Every_looser_class_leaves_at_least_as_much_clearance_and_so_does_every_larger_size()
    {
        decimal[] sizes = [0.1m, 0.2m, 0.3m, 0.5m, 1.0m, 1.5m, 2.5m, 4.0m];
        string[] classes = ["RC1", "RC2", "RC3", "RC4"];
        var most = classes.Select(c => sizes.Select(s => AnsiFits.Of(Length.Inches(s), c).MostClearance).ToArray()).ToArray();
        var least = classes.Select(c => sizes.Select(s => AnsiFits.Of(Length.Inches(s), c).LeastClearance).ToArray()).ToArray();
        Assert.All(most.Concat(least), row => Assert.Equal(row.Order(), row));
        for (var size = 0; size < sizes.Length; size++)
        {
            var byClass = most.Select(row => row[size]).ToArray();
            Assert.Equal(byClass.Order().Distinct(), byClass);
            Assert.All(least, row => Assert.True(row[size] > Length.Zero));
        }
    }
}
