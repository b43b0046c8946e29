namespace Ostrand5;

/// <summary>Cup and cone seats, needle tracks, forks, rails and the interlock.</summary>
internal static class Fits
{
    public static ClearanceLoop[] All =>
    [
        Cup("input-cup-fit", "Cup of the input shaft in the case", "main-case/input-cup-bore", "input-bearing-front/outside-diameter"),
        Cup("output-cup-fit", "Cup of the output shaft in the case", "main-case/output-cup-bore", "output-bearing-front/outside-diameter"),
        Cone("input-cone-fit", "Cones on the input shaft", "input-bearing-front/bore", "input-shaft/bearing-seat"),
        Cone("output-cone-fit", "Cones on the output shaft", "output-bearing-front/bore", "output-shaft/bearing-seat"),
        Needles("first-radial-play", "First gear on its needles", "first-gear/bore", "output-shaft/first-journal", "needles-1"),
        Needles("second-radial-play", "Second gear on its needles", "second-gear/bore", "output-shaft/second-journal", "needles-2"),
        Needles("third-radial-play", "Third gear on its needles", "third-gear/bore", "input-shaft/third-journal", "needles-3"),
        Needles("fourth-radial-play", "Fourth gear on its needles", "fourth-gear/bore", "input-shaft/fourth-journal", "needles-4"),
        Needles("fifth-radial-play", "Fifth gear on its needles", "fifth-gear/bore", "input-shaft/fifth-journal", "needles-5"),
        Clearance("idler-clearance", "Reverse idler on its shaft", "selector", Mm(0.02m, 0.10m)).Opens("reverse-idler/bore").Closes("idler-shaft/diameter").Ordinary()
            .Else("The idler seizes on its shaft.", "Reverse is noisy."),
        Pad("fork-1-2-play", "First and second fork in its groove", "sleeve-1-2", "fork-1-2"),
        Pad("fork-3-4-play", "Third and fourth fork in its groove", "sleeve-3-4", "fork-3-4"),
        Pad("fork-5-play", "Fifth fork in its groove", "sleeve-5", "fork-5"),
        Clearance("rail-1-2-play", "First and second rail in its bore", "selector", Mm(0.015m, 0.130m)).Opens("main-case/rail-bore").Closes("rail-1-2/diameter").Ordinary(),
        Clearance("rail-3-4-play", "Third and fourth rail in its bore", "selector", Mm(0.015m, 0.130m)).Opens("main-case/rail-bore").Closes("rail-3-4/diameter").Ordinary(),
        Clearance("interlock-hold", "How far the interlock plunger still holds the second rail", "selector", Mm(1.20m, 2.20m))
            .Opens("interlock-plunger/length").Closes("main-case/rail-spacing").Counts(1, 2, "rail-1-2/diameter", "rail-3-4/diameter").SafetyCritical()
            .Else("Two gears can go in at once and the wheels lock.", "The plunger is too long and no gear goes in."),
        Clearance("interlock-freedom", "Room for the interlock plunger when one rail moves", "selector", Mm(0.10m, 0.80m))
            .Opens("main-case/rail-spacing", "rail-1-2/interlock-notch").Counts(-1, 2, "rail-1-2/diameter", "rail-3-4/diameter").Closes("interlock-plunger/length").SafetyCritical()
            .Else("No gear goes in.", "The plunger does not hold the other rail and two gears can go in at once."),
    ];

    private static ClearanceLoop Cup(string id, string name, string bore, string outside) => Clearance(id, name, "case", Mm(-0.060m, -0.015m))
        .Opens(bore).Closes(outside).BetweenCelsius(-30, 90, Mm(-0.100m, 0.000m), Mm(-0.060m, 0.040m))
        .Else("The cup is squeezed, or the case cracks.", "Hot, the cup creeps in the aluminium.");

    private static ClearanceLoop Cone(string id, string name, string bore, string seat) => Clearance(id, name, "case", Mm(-0.040m, -0.010m))
        .Opens(bore).Closes(seat).Else("The cone is stretched.", "The cone creeps on its seat.");

    private static ClearanceLoop Needles(string id, string name, string bore, string journal, string needles) => Clearance(id, name, "input-shaft", Mm(0.008m, 0.060m))
        .Opens(bore).Closes(journal).Counts(-2, 1, $"{needles}/diameter")
        .Else("The needles bind.", "The gear rocks and walks the sleeve out.");

    private static ClearanceLoop Pad(string id, string name, string sleeve, string fork) => Clearance(id, name, "selector", Mm(0.30m, 0.90m))
        .Opens($"{sleeve}/groove-width").Closes($"{fork}/pad-thickness").Ordinary()
        .Else("The pad drags in the groove and burns.", "Lever travel is lost and the gear is not fully in.");
}
