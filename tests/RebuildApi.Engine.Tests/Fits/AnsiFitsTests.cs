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
    [InlineData("RC1", 1.50)]
    [InlineData("RC4", 0.71)]
    [InlineData("LC1", 1.00)]
    public void What_is_not_held_is_refused_and_not_guessed(string fits, double size) =>
        Assert.Throws<ArgumentException>("class", () => AnsiFits.Of(Length.Inches((decimal)size), fits));
}
