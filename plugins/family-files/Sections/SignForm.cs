using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Something that can be found on the bench.</summary>
internal sealed class SignForm : ObjectForm<Sign>
{
    private readonly Field<string?> _position;
    private readonly Field<string?> _shows;
    private readonly Field<ImmutableArray<string>> _values;
    private readonly Field<ImmutableArray<string>> _damage;
    private readonly Field<string> _place;
    private readonly Field<string?> _outOfLimits;
    private readonly Field<LimitSide?> _side;
    private readonly Field<Likelihood?> _found;
    private readonly Field<Likelihood?> _otherwise;
    private readonly Field<decimal?> _minutes;

    public SignForm()
        : base("sign", "Something that can be found on the bench: an attribute, damage, or something out of its limits.")
    {
        _position = MayBe("position", Plain.Name, "Where, for an attribute or damage.");
        _shows = MayBe("shows", Plain.Name, "Which attribute.", "attribute");
        _values = Some("values", Plain.Names, "Any of these values of the attribute.");
        _damage = Some("damage", Plain.Names, "Any of these classes of damage.", "classes");
        _place = May("place", Plain.Name, "*", "The feature or side of the damage.");
        _outOfLimits = MayBe("out-of-limits", Plain.Name, "A characteristic (position/characteristic) or a clearance that is nonconforming.", "subject");
        _side = May("side", new ChoiceIfAnyForm<LimitSide>(), null, "Beyond which limit; either when not said.");
        _found = MayBe("found", LikelihoodForm.All, "How likely it is found when the cause is there.");
        _otherwise = MayBe("otherwise", LikelihoodForm.All, "How likely it is found although none of its causes is there.");
        _minutes = May("minutes", Plain.MinutesIfAny, null, "Minutes to look or to read.");
    }

    protected override Sign? Make(Got got, Node node, Place place, FileReading reading)
    {
        if (Seen(got) is { } sign)
            return sign with { Found = got.Of(_found), Otherwise = got.Of(_otherwise), Minutes = got.Of(_minutes) };
        reading.Error(node, place, "sign-form", "A sign is { position, shows, values }, { position, damage, place } or { out-of-limits, side }, and only one of them.");
        return null;
    }

    private Sign? Seen(Got got) => (got.Of(_outOfLimits), got.Of(_position), got.Of(_shows), got.Of(_damage).IsEmpty) switch
    {
        ({ } subject, null, null, true) => new VerdictSign(subject) { Side = got.Of(_side) },
        (null, { } at, { } attribute, true) => new AttributeSign(at, attribute, got.Of(_values)),
        (null, { } at, null, false) => new DamageSign(at, got.Of(_damage), got.Of(_place)),
        _ => null,
    };
}
