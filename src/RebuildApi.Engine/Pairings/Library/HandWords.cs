using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Hands of a helix as attribute values.</summary>
internal static class HandWords
{
    public static string Of(Hand hand) => hand switch
    {
        Hand.Right => "right",
        Hand.Left => "left",
        _ => "spur",
    };

    public static Hand? Parse(string? word) => word switch
    {
        "right" => Hand.Right,
        "left" => Hand.Left,
        "spur" => Hand.Spur,
        _ => null,
    };
}
