using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Substances;

/// <summary>What a substance is on the bench; decides which rules look at it.</summary>
public enum SubstanceKind
{
    Salt,
    Chelate,
    ChelatingAgent,
    Acid,
    Base,
    Preservative,
    Dye,
    Organic,
    Oxidiser,
    Silicate,

    /// <summary>A product known by its label only (a bag of premixed fertiliser, a liquid chelate).</summary>
    Product,

    /// <summary>Something pressed, boiled or digested out of plants, animals or peat, whose composition nobody states.</summary>
    Extract,
}

public enum PhysicalForm
{
    Solid,
    Liquid,
}

/// <summary>How surely a stored value is known; the same three words stand in every data file.</summary>
public enum Confidence
{
    /// <summary>Read in the named source.</summary>
    Found,

    /// <summary>Recalled from the named work, not seen again.</summary>
    Memory,

    /// <summary>Arithmetic from other values.</summary>
    Derived,
}

/// <summary>A value with where it comes from.</summary>
public sealed record Sourced<T>(T Value, string Source, Confidence Confidence);

/// <summary>
/// Moles of one solution component (named as in the constants, such as "Ca+2") set free by one gram of the substance as bought.
/// </summary>
public sealed record ComponentYield(string Component, double MolesPerGram);

/// <summary>A declared or typical impurity, as mass fraction of the substance as bought.</summary>
public sealed record Impurity(Element Element, Sourced<MassFraction> Content);

/// <summary>GHS classification as printed by the source named; the supplier's safety data sheet decides.</summary>
/// <param name="Statements">H and EUH codes, in ascending order; empty when the source finds nothing to classify.</param>
/// <param name="Harmonised">True for an entry of Annex VI of the EU CLP regulation, false for what suppliers usually state
/// themselves.</param>
/// <param name="Source">Where the list of statements stands.</param>
/// <param name="Confidence">How surely it is known.</param>
public sealed record Hazards(IReadOnlyList<string> Statements, bool Harmonised, string Source, Confidence Confidence)
{
    /// <summary>Codes that suppliers usually add to a harmonised entry, such as H290 on acids; from memory, no source.</summary>
    public IReadOnlyList<string> SupplierAdds { get; init; } = [];
}

/// <summary>
/// One thing that can be weighed or poured: from the built-in catalogue or from a shop's own list.
/// All contents are per gram of the substance as bought at its nominal strength, before a declared assay is applied.
/// </summary>
public sealed record Substance
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>CAS registry number with a valid check digit, where one is known.</summary>
    public string? Cas { get; init; }

    /// <summary>The same CAS number with its source, where one is recorded.</summary>
    public Sourced<string>? CasRecord { get; init; }

    public required SubstanceKind Kind { get; init; }

    public PhysicalForm Form { get; init; } = PhysicalForm.Solid;

    /// <summary>Null for label-only products and mixtures of unknown composition.</summary>
    public Formula? Formula { get; init; }

    /// <summary>The name that all hydrates of one salt share ("magnesium sulfate"); null where no other hydrate is sold.</summary>
    public string? HydrateFamily { get; init; }

    /// <summary>Mass fractions of the elements, nitrogen also by form.</summary>
    public required ElementContent Content { get; init; }

    /// <summary>
    /// What goes into solution, for the equilibrium; names as <see cref="SolutionComponent"/> explains. Charges cancel; water is left out.
    /// Empty when the composition is unknown (dyes of unknown make).
    /// </summary>
    public IReadOnlyList<ComponentYield> Dissolves { get; init; } = [];

    /// <summary>
    /// Nominal content of the named compound in the substance as bought: 1 for a pure salt, 0.38 for nitric acid 38 %.
    /// Already inside <see cref="Content"/>.
    /// </summary>
    public MassFraction Strength { get; init; } = MassFraction.One;

    /// <summary>The strength where a grade states it, with its source; null for pure compounds.</summary>
    public Sourced<string>? StrengthRecord { get; init; }

    /// <summary>True when a file states the strength of what stands on the shelf; false for the nominal one of a catalogue.</summary>
    public bool StatesItsStrength { get; init; }

    /// <summary>
    /// True when purity varies enough between lots that a recipe should declare the assay (technical grades, household acids).
    /// </summary>
    public bool NeedsAssay { get; init; }

    /// <summary>Typical assay in words of the trade ("98-99.5 %"), for messages only.</summary>
    public Sourced<string>? TypicalAssay { get; init; }

    /// <summary>At 20 °C; present for every liquid.</summary>
    public Sourced<Density>? Density { get; init; }

    /// <summary>Carbon that microbes can eat (organic acids and their salts, sugars, chelating agents count separately).</summary>
    public bool FeedsMicrobes { get; init; }

    /// <summary>True for benzoate and sorbate and their acids.</summary>
    public bool IsPreservative => Kind == SubstanceKind.Preservative;

    public IReadOnlyList<Impurity> Impurities { get; init; } = [];

    public Hazards? Hazards { get; init; }

    /// <summary>
    /// What it does to other contents of a vessel, as the id of a row of the hazard gate's table (roles.json); null for what a shop brings
    /// of its own, which is told from its composition.
    /// </summary>
    public string? BehavesAs { get; init; }

    /// <summary>Colour of a solution as it is used ("blue", "pale green"), null for colourless.</summary>
    public string? Colour { get; init; }

    /// <summary>What it is kept apart from, where that is known.</summary>
    public Sourced<IReadOnlyList<KeepApart>>? KeepApartFrom { get; init; }

    /// <summary>What an extract was made of, with what throws it out of solution; null for everything else.</summary>
    public ExtractOrigin? Extract { get; init; }

    /// <summary>
    /// True where only a word of its name says that it is an extract: what such products can do is held against it, and nothing is advised
    /// as if its kind were known.
    /// </summary>
    public bool IsExtractByNameOnly { get; init; }

    /// <summary>How the iron is bound, for iron chelates sold by label; null otherwise.</summary>
    public IronForms? Iron { get; init; }

    /// <summary>A trap or fact of this substance worth a sentence in a message.</summary>
    public Sourced<string>? Note { get; init; }

    /// <summary>
    /// Solubility in pure water: grams of this substance that dissolve in 100 g of added water, rising temperature, where a table is known.
    /// For a hydrate the water of the crystal counts as solvent; points where the hydrate would melt in its own water are left out.
    /// </summary>
    public Sourced<IReadOnlyList<SolubilityPoint>>? Solubility { get; init; }

    /// <summary>
    /// What a stated assumption supplied (a counter-ion of a label-only product, that nitrite stays nitrite), in a sentence or two; null
    /// when nothing was assumed.
    /// </summary>
    public string? Assumption { get; init; }

    /// <summary>
    /// Charge that was closed with ions of which nothing is stated, moles per gram: the pH of a solution hangs on the guess. 0 where the
    /// label closes but for its rounding, or its counter-ion is declared.
    /// </summary>
    public double GuessedCharge { get; init; }

    /// <summary>True where urea is among what it dissolves only because the label does not say in which forms its nitrogen is.</summary>
    public bool IsUreaTaken { get; init; }
}

/// <summary>One row of a solubility table.</summary>
public sealed record SolubilityPoint(Temperature Temperature, double GramsPer100GramsWater);
