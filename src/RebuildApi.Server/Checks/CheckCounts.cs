using RebuildApi.Contracts;

namespace RebuildApi.Server.Checks;

/// <summary>How many rows came to what.</summary>
public struct CheckCounts
{
    /// <summary>Rows in all.</summary>
    public long Rows;

    /// <summary>Rows whose value conforms.</summary>
    public long Conforming;

    /// <summary>Rows whose value does not.</summary>
    public long Nonconforming;

    /// <summary>Rows that can't be told.</summary>
    public long Inconclusive;

    /// <summary>Rows with a fault.</summary>
    public long Faults;

    /// <summary>Counts a judged row.</summary>
    public void Count(Outcome outcome)
    {
        Rows++;
        switch (outcome)
        {
            case Outcome.Conforming: Conforming++; break;
            case Outcome.Nonconforming: Nonconforming++; break;
            default: Inconclusive++; break;
        }
    }

    /// <summary>Counts a row with a fault.</summary>
    public void CountFault()
    {
        Rows++;
        Faults++;
    }

    /// <summary>Both together.</summary>
    public static CheckCounts operator +(CheckCounts a, CheckCounts b) => new()
    {
        Rows = a.Rows + b.Rows,
        Conforming = a.Conforming + b.Conforming,
        Nonconforming = a.Nonconforming + b.Nonconforming,
        Inconclusive = a.Inconclusive + b.Inconclusive,
        Faults = a.Faults + b.Faults,
    };
}
