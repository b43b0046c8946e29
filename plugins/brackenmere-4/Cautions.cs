namespace Brackenmere4;

/// <summary>What can hurt a person or the gearbox whatever the work.</summary>
internal static class Cautions
{
    public static ImmutableArray<Text> All =>
    [
        Say("demo", "All numbers of this family are made up for a demonstration. Never use them on a real gearbox: the maker's data goes first."),
        Say("person", "The service advises; a person decides and signs. Follow local codes and licensed practice."),
        Say("interlock", "Two gears at once lock the wheels: test the interlock with the cover on and have a named person sign for it."),
        Say("tight", "A gear set up tight galls when hot. No ring ground by hand, no gear without end play."),
        Say("dust", "Clutch dust may hold asbestos, old plating cadmium: wet it, gloves, no air line."),
        Say("press", "Press behind a shield; hot parts and springs injure."),
        Say("outside", "Rule out clutch, linkage, mounts and oil before the gearbox comes out."),
    ];

    private static Text Say(string id, string words) => Text.English($"caution.{id}", words);
}
