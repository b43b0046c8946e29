using System.Collections.Immutable;

namespace RebuildApi.Engine.Planning;

/// <summary>Prices, labour and risks in whole minor units, each rounded by itself before anything is compared, so that "the best" is a claim about whole numbers.</summary>
internal sealed class PlanMoney
{
    private readonly PlanRates _rates;
    private readonly long _unknownPrice;

    /// <summary>Takes the rates of a request.</summary>
    /// <exception cref="ArgumentException">A rate or a chance is no such thing.</exception>
    public PlanMoney(PlanRequest request, IEnumerable<PlanPlace> places)
    {
        _rates = request.Rates;
        if (_rates.LabourPerHour < 0 || _rates.ComebackCost < 0 || _rates.UnknownPrice < 0 || _rates.NegligibleRisk < 0)
            throw new ArgumentException("rates: money is not negative.", nameof(request));
        if (new[] { _rates.OpenPartRisk, _rates.OpenPairingRisk, _rates.ConditionalRisk }.Any(r => r is not (>= 0 and <= 1)))
            throw new ArgumentException("rates: a chance lies between 0 and 1.", nameof(request));
        _unknownPrice = _rates.UnknownPrice ?? (1 + places.SelectMany(p => p.Fits).Max(f => f.Price) ?? 1);
    }

    /// <summary>The step in which the most conservative plan counts risks; at least 1.</summary>
    public long NegligibleRisk => Math.Max(1, _rates.NegligibleRisk ?? _rates.ComebackCost / 100);

    /// <summary>What the parts of a fit count at.</summary>
    public long PriceOf(Fit fit) => fit.Price ?? _unknownPrice;

    /// <summary>Minutes at the shop's rate; each operation rounded by itself, halves up.</summary>
    public long LabourOf(ImmutableArray<PlanWork> work) => work.Sum(w => LabourOf(w.Minutes));

    public long LabourOf(decimal minutes) => (long)Math.Round(minutes * _rates.LabourPerHour / 60, MidpointRounding.AwayFromZero);

    /// <summary>Expected cost of a comeback of this chance.</summary>
    public long Expected(double chance) => (long)Math.Round((decimal)chance * _rates.ComebackCost, MidpointRounding.AwayFromZero);
}
