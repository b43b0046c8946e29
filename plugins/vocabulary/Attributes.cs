namespace FamilyWords;

/// <summary>What is seen on parts, asked in the same words in every family. The values are those that the pairing templates know.</summary>
internal static class Attributes
{
    private static readonly string[] s_flank =
    [
        "sound: even, full contact", "dark: dark and untouched", "worn: bright, metal left", "leaned: leaned over, metal left",
        "rounded: rounded", "short: short", "spent: metal gone",
    ];

    private static readonly string[] s_pad = ["fresh: fresh", "light: light, even wear", "worn: badly worn", "burnt: burnt"];

    public static readonly AttributeDefinition Vintage = Seen("vintage", "Which vintage is it?",
        "early: early, straight teeth throughout", "late: late, back-tapered teeth");

    public static readonly AttributeDefinition RatioSet = Seen("ratio-set", "Which ratio set do the teeth belong to?",
        "wide: wide ratios", "close: close ratios");

    public static readonly AttributeDefinition DogForm = Seen("dog.form", "What form have the engagement teeth?",
        "straight: straight", "back-tapered: back-tapered (back-cut, torque-locking)");

    public static readonly AttributeDefinition DriveFlank = Seen("dog.drive-flank", "How do the drive flanks of the engagement teeth look?", s_flank);

    public static readonly AttributeDefinition CoastFlank = Seen("dog.coast-flank", "How do the coast flanks of the engagement teeth look?", s_flank);

    public static readonly AttributeDefinition DogStop = Seen("dog.stop", "Have the engagement teeth a raised stop for the sleeve?",
        "none: none", "present: a raised stop");

    public static readonly AttributeDefinition DogTeeth = Seen("dog.teeth", "How many engagement teeth?", "n36: 36", "n39: 39");

    public static readonly AttributeDefinition SleeveForm = Seen("form", "What form have the sleeve's teeth?",
        "straight: straight", "back-tapered: back-tapered (back-cut, torque-locking)");

    public static readonly AttributeDefinition Teeth = Seen("teeth", "How many teeth?", "n36: 36", "n39: 39");

    public static readonly AttributeDefinition Lining = Seen("lining", "What lines the ring?",
        "yellow-metal: yellow metal, threaded", "sprayed: sprayed metal", "paper: paper", "carbon: carbon");

    public static readonly AttributeDefinition Grip = Seen("grip", "Oiled, pressed on its cone by hand and twisted: does it grip?",
        "grips: grips at once", "slips: slips");

    public static readonly AttributeDefinition KeySlot = Seen("key-slot", "How do the edges of the key slots look?",
        "sharp: sharp", "opened: opened up");

    public static readonly AttributeDefinition KeyNotch = Seen("notch", "How many identifying notches has the key?",
        "none: none, the longer key", "one: one, the shorter key");

    public static readonly AttributeDefinition InputPad = Seen("input-pad", "How are the pad faces toward the input?", s_pad);

    public static readonly AttributeDefinition OutputPad = Seen("output-pad", "How are the pad faces toward the output?", s_pad);

    public static readonly AttributeDefinition BearingType = Seen("type", "Which type of bearing is it?",
        "deep-groove: deep groove", "filling-slot: filling slot, more balls");

    public static readonly AttributeDefinition TaperedType = Seen("type", "Which type of bearing is it?",
        "tapered: tapered roller", "deep-groove: deep groove", "cylindrical: cylindrical roller");

    public static readonly AttributeDefinition Supplied = Seen("supplied", "How was it supplied?",
        "as-set: with its mates, as one set", "single: by itself");

    public static readonly AttributeDefinition Grade = Seen("grade", "Which grade is on the can?",
        "marsh-75: Marsh 75 (invented)", "marsh-85: Marsh 85 (invented)");

    public static readonly AttributeDefinition BearingFeel = Seen("feel", "How does it turn by hand? (Never evidence that it is good.)",
        "smooth: smooth", "rough: rough or gritty");

    public static readonly AttributeDefinition ClearanceGroup = Seen("clearance-group", "Which internal clearance group is marked?",
        "c2: C2", "cn: normal, no mark", "c3: C3");

    public static readonly AttributeDefinition WasherMaterial = Seen("material", "What is the washer made of?",
        "bronze: bronze", "steel-backed: steel, bronze faced", "polymer: polymer");

    public static readonly AttributeDefinition Surface = Seen("surface", "Is the ring as it was made?",
        "as-made: as made", "ground: someone ground it to fit");

    public static readonly AttributeDefinition Supply = Seen("supply", "How was this ring chosen?",
        "selected: from the series, by its thickness", "kit: out of a small-parts kit");

    public static readonly AttributeDefinition Additive = Seen("additive", "What is the oil dosed with?",
        "none: nothing", "mild: mild additives", "extreme-pressure: sulfur-phosphorus, extreme pressure", "friction-modified: friction modifier");

    public static AttributeDefinition HandOf(string id, string question) => Seen(id, question, "right: right hand", "left: left hand");
}
