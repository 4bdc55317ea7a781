using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Hazards;

/// <summary>One substance in a vessel.</summary>
/// <param name="Grams">As bought.</param>
/// <param name="PureGrams">Of the named compound itself.</param>
/// <param name="Moles">What it sets free, by component.</param>
/// <param name="Place">Where the file says so; null for a reagent somebody thinks of.</param>
public sealed record Held(Substance Substance, double Grams, double PureGrams, ComponentMoles Moles,
    Place? Place)
{
    private readonly (IReadOnlySet<HazardRole> Roles, RoleSet Set) _does = RolesOf(Substance);

    public string Name => Substance.Name;

    /// <summary>What it does to others.</summary>
    public IReadOnlySet<HazardRole> Roles => _does.Roles;

    /// <summary>The same as bits.</summary>
    internal RoleSet RoleSet => _does.Set;

    /// <summary>Per cent of the compound in what is poured.</summary>
    public double Strength => Grams > 0 ? Rounding.SixDigits(100 * PureGrams / Grams) : 0;

    public bool Is(HazardRole role) => RoleSet.Has(role);

    /// <summary>True when not even its kind is known; of an extract it is, unless a word of its name is all that says so.</summary>
    public bool IsNameless => Is(HazardRole.Unknown) && (Substance.Extract is null || Substance.IsExtractByNameOnly);

    public double MolesOf(string component) => Moles.GetValueOrDefault(component);

    /// <summary>Made once for each addition: every step of a stock asks for all that went in before it.</summary>
    public static Held Of(AdditionFacts addition) => addition.Derived.Of(addition, static a =>
        new Held(a.Substance, a.Mass.Grams, VesselContents.PureGrams(a), a.ComponentMoles, a.Place));

    /// <summary>A reagent of full assay.</summary>
    /// <param name="grams">As bought.</param>
    public static Held Of(Substance substance, double grams, Place? place = null) => new(
        substance,
        grams,
        grams * substance.Strength.Value,
        ComponentMoles.Of(substance.Dissolves.Select(d => KeyValuePair.Create(d.Component, d.MolesPerGram * grams))),
        place);

    private static (IReadOnlySet<HazardRole> Roles, RoleSet Set) RolesOf(Substance substance)
    {
        var roles = HazardRoles.Of(substance);
        return (roles, RoleSet.Of(roles));
    }
}
