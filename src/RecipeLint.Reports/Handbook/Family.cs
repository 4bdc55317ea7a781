namespace RecipeLint.Reports.Handbook;

/// <summary>A family of rules as the handbook introduces it.</summary>
/// <param name="Name">As in the rule folders.</param>
internal sealed record Family(string Name, string Title, string Blurb)
{
    /// <summary>In the order of the rule numbers.</summary>
    public static IReadOnlyList<Family> All { get; } =
    [
        new("documents", "Files and words", "What cannot be read, or can be read in two ways, before any chemistry is asked."),
        new("precipitation", "What settles", "Solids that fall out of a bottle or a tank, and how much of them."),
        new("chelation", "Chelates", "Whether the iron stays held, in the bottle and in the feed."),
        new("preservation", "Keeping and pH", "Mould, acid, and how long a stock lasts on the shelf."),
        new("weighing", "Weighing and dosing", "Scales, measures and syringes, and what they can really do."),
        new("plant", "Plant and water", "What the crop gets, from the stocks and from the water."),
        new("procedure", "Mixing and labels", "The order of the steps, the water to dissolve in, and what stands on the bottle."),
        new("people", "People", "What can hurt whoever mixes, stores or pours away."),
    ];

    public static Family Of(string name) => All.Single(f => f.Name == name);
}
