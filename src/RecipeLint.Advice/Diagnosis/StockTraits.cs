using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Preservation;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>Whether a stock has a trait that makes a cause likely, and why.</summary>
/// <param name="Holds">Null when it cannot be told.</param>
/// <param name="Because">The end of a sentence on why it holds or does not; empty when nothing is to be said.</param>
/// <param name="RulesOut">True when its absence makes what needs it all but impossible.</param>
/// <param name="IsSlight">True when it holds and yet says little.</param>
internal readonly record struct Trait(bool? Holds, string Because, bool RulesOut = false, bool IsSlight = false);

/// <summary>
/// Traits of a stock that equilibrium does not speak of: what feeds microbes, what light reaches, what a grade brings along.
/// </summary>
/// <param name="iceSeen">True when somebody saw ice in it, wherever it was meant to stand.</param>
internal sealed class StockTraits(
    StockFacts stock, SolutionState mixing, Temperature? seenAt, IReadOnlyList<PutIn> putIn, bool iceSeen = false)
{
    /// <summary>
    /// pH above which a stock counts as alkaline, and below which as acid, for these traits (common practice, no source).
    /// </summary>
    private const double AlkalineFrom = 7.5, AcidBelow = 4.5, CorrosiveBelow = 4;

    /// <summary>pH from which mould, yeast and bacteria hardly grow (common practice, no source).</summary>
    private const double NothingGrowsFrom = 9.5;

    /// <summary>
    /// mol/L of hydrogen carbonate, or of calcium and magnesium, from which a water counts as hard here (5.6 °dH; common practice, no
    /// source).
    /// </summary>
    private const double HardFromMolesPerLitre = 0.001;

    private static readonly Dictionary<string, (string[] Parts, string Has)> Named = new(StringComparer.Ordinal)
    {
        ["humate"] = (["humic", "humate", "fulvic"], "humate"),
        ["oxalate"] = (["oxal", "tartar"], "oxalate or tartrate"),
        ["thiosulfate"] = (["thiosulf", "thiosulph", "lime sulf", "lime sulph"], "thiosulfate or lime sulfur"),
        ["table-salt"] = (["sodium chloride", "potassium chloride"], "a chloride that is sold with anticaking agent"),
    };

    /// <summary>What the gate knows these substances by, so that cause and danger never part.</summary>
    private static readonly Dictionary<string, (HazardRole[] Roles, string Has)> ByRole = new(StringComparer.Ordinal)
    {
        ["peroxide"] = ([HazardRole.Peroxide], "peroxide"),
        ["hypochlorite"] = ([HazardRole.Hypochlorite], "bleach"),
        ["nitric"] = ([HazardRole.NitricAcid, HazardRole.Nitrite], "nitric acid or nitrite"),
        ["sulfide-salt"] = ([HazardRole.Sulfide], "a sulfide"),
    };

    /// <summary>Nitrogen that bacteria take apart within weeks, as that of an amino acid; chelating agents last.</summary>
    private const string Urea = "inert:urea";

    /// <summary>What is known of a trait; a component name asks whether the recipe brings it.</summary>
    /// <exception cref="InvalidOperationException">There is no such trait.</exception>
    public Trait Of(string trait) => trait switch
    {
        _ when trait.Contains('+', StringComparison.Ordinal) || trait.EndsWith('-') || char.IsDigit(trait[^1]) => Holds(trait),
        _ when Named.TryGetValue(trait, out var named) => Any(a => named.Parts.Any(p => NameHas(a, p)), named.Has),
        _ when ByRole.TryGetValue(trait, out var role) => Any(a => HazardRoles.Of(a.Substance).Overlaps(role.Roles), role.Has),
        "carbonate-with-acid" => HazardGate.Of(WithPutIn()).Find(HazardKind.CarbonDioxidePressure) is { } gas
            ? new Trait(true, $"{gas.With?.Name} drives carbon dioxide out of {gas.From?.Name}")
            : new Trait(false, "no acid in the recipe drives carbon dioxide out of a carbonate"),
        "rots-to-ammonia" => FirstOf(
            "neither urea nor an amino acid nor an extract",
            (a => a.ComponentMoles.GetValueOrDefault(Urea) > 0, "urea"),
            (a => a.ComponentMoles.GetValueOrDefault(Component.Glycinate) > 0, "an amino acid"),
            (a => a.Substance.Extract is not null, "an extract")),
        "acid-or-lye" => FirstOf(
            "neither an acid nor a lye",
            (a => HazardRoles.Of(a.Substance).Contains(HazardRole.Acid), "an acid"),
            (a => HazardRoles.Of(a.Substance).Contains(HazardRole.Alkali), "a lye")),
        "dye" => Any(a => a.Substance.Kind == SubstanceKind.Dye, "a dye"),
        "oxidiser" => Any(a => a.Substance.Kind == SubstanceKind.Oxidiser, "an oxidiser"),
        "chelate" => Any(a => a.Substance.Kind == SubstanceKind.Chelate, "a chelate"),
        "iron-chelate" => Any(a => a.Substance.Kind == SubstanceKind.Chelate && HasIron(a), "an iron chelate"),
        "coated" =>
            Any(a => a.Substance.Id == "calcium-nitrate-fertiliser" || NameHas(a, "coated"), "prilled fertiliser with a conditioner"),
        "technical" => Any(a => a.Substance.NeedsAssay && a.Substance.Form == PhysicalForm.Solid, "a technical grade"),
        "feeds" => Feeds(),
        "ferments" => Feeds() is var food && food is { Holds: true, IsSlight: true }
            ? new Trait(false, "it holds nothing that yeast lives on")
            : food,
        "light" => Light(),
        "alkaline" => Ph(p => p > AlkalineFrom, "it is alkaline", "it is not alkaline"),
        "acid" => Ph(p => p < AcidBelow, "it is acid", "it is not acid"),
        "corrosive" => Ph(
            p => p < CorrosiveBelow || Has(Component.Copper),
            Has(Component.Copper) ? "it holds copper, which plates out on iron" : "it is acid",
            "it is neither acid nor does it hold copper"),
        "vinegar" => Any(a => NameHas(a, "vinegar"), "vinegar"),
        "water-not-pure" => Water(),
        "reacts-with-hardness" => Ph(
            p => p > AlkalineFrom || Has(Component.Phosphate) || Has(Component.Silicate) || Has(Component.Oxalate),
            "it holds what hard water clouds with",
            "it holds nothing that hard water clouds with"),
        "frost" => Frost(),
        _ => throw new InvalidOperationException($"There is no trait '{trait}'."),
    };

    /// <summary>True when the recipe brings this component.</summary>
    public bool Has(string component) => stock.ComponentMoles.GetValueOrDefault(component) > 0;

    /// <summary>True when all water is known and pure.</summary>
    public bool WaterIsPure => stock.Waters.All(w => w.ComponentMoles.Count == 0);

    private Trait Holds(string component) => Has(component)
        ? new Trait(true, $"it holds {IonWords.Of(component)}")
        : new Trait(false, $"the recipe brings no {NameOfLacking(component)}");

    /// <summary>
    /// What the recipe does not bring, by a name that is not that of something it does: iron(II) beside iron of a chelate.
    /// </summary>
    public string NameOfLacking(string component) => component switch
    {
        Component.FerrousIron when Has(Component.FerricIron) => "iron(II)",
        Component.FerricIron when Has(Component.FerrousIron) => "iron(III)",
        _ => IonWords.Of(component),
    };

    private Trait Any(Func<AdditionFacts, bool> fits, string what) => FirstOf($"no {WithoutArticle(what)}", (fits, what));

    /// <summary>The first that fits of several sorts, called by what it is.</summary>
    /// <param name="none">What the recipe holds where none does ("no dye").</param>
    private Trait FirstOf(string none, params (Func<AdditionFacts, bool> Fits, string What)[] sorts)
    {
        foreach (var (fits, what) in sorts)
        {
            if (stock.Additions.FirstOrDefault(fits)?.Substance.Name is { } found)
            {
                return new Trait(true, SaysWhatItIs(found, what) ? $"it holds {found}" : $"{found} is {what}");
            }
        }

        return new Trait(stock.IsComplete ? false : null, $"the recipe holds {none}");
    }

    /// <summary>True where the name of what was found says it already, or where nobody could tell which of two things it is.</summary>
    private static bool SaysWhatItIs(string found, string what) => what.Contains(" or ", StringComparison.Ordinal)
        || found.Contains(WithoutArticle(what), StringComparison.OrdinalIgnoreCase);

    private static string WithoutArticle(string what) =>
        what.StartsWith("a ", StringComparison.Ordinal) ? what[2..] : what.StartsWith("an ", StringComparison.Ordinal) ? what[3..] : what;

    /// <summary>
    /// Whether something grows in it, by the one judgement of what keeps a stock; how long it was meant to be kept does not count here.
    /// </summary>
    private Trait Feeds()
    {
        var judged = PreservativeJudgement.Of(stock, PreservationNeeds.Of(stock.Settings));
        var sure = judged.Food.Select(f => f.Addition).FirstOrDefault();
        var food = sure
            ?? stock.Additions.FirstOrDefault(
                a => a.Substance.Kind is SubstanceKind.Chelate or SubstanceKind.ChelatingAgent or SubstanceKind.Organic);
        return (judged.KeptBy, food) switch
        {
            (SelfKeeping.Bleach, _) => new Trait(false, "it holds bleach, in which nothing grows", RulesOut: true),
            (SelfKeeping.Peroxide, _) => new Trait(false, "it holds strong peroxide, in which nothing grows while it lasts"),
            (SelfKeeping.Acid, _) => new Trait(false, "it is too acid for most growth"),
            (SelfKeeping.Salt, _) => new Trait(false, "it is too salty for most growth"),
            (SelfKeeping.Copper, _) => new Trait(false, "it holds so much free copper that hardly anything grows"),
            (SelfKeeping.Vinegar, _) => new Trait(false, "it is as strong in vinegar as a pickle"),
            (_, null) when mixing.IsSolved && mixing.Ph >= NothingGrowsFrom =>
                new Trait(false, "it is too alkaline for growth", RulesOut: true),
            (_, null) => new Trait(false, "nothing in the recipe feeds mould or bacteria"),
            _ when judged.Acids.Count > 0 && judged.Strength >= 1 => new Trait(false, "it holds preservative enough"),
            _ => new Trait(
                true,
                $"{food.Substance.Name} feeds growth{(sure is null ? " a little" : "")} and "
                    + (judged.Dosed.Count > 0 ? "the preservative is weak" : "nothing preserves it"),
                IsSlight: sure is null),
        };
    }

    /// <summary>What is in the bottle with what somebody put in.</summary>
    private Holding WithPutIn() => putIn.Select(p => p.Substance).OfType<Substance>().Aggregate(
        Holding.Of(stock), (now, s) => now.With(Held.Of(s, Holding.TrialGramsPerLitre * now.Litres)));

    private Trait Light() => stock.Stock.Keep?.Light?.Value switch
    {
        LightExposure.Dark => new Trait(false, "it is kept dark"),
        LightExposure.Light => new Trait(true, "it is kept in the light"),
        _ => new Trait(null, ""),
    };

    private Trait Water() => WaterIsPure
        ? new Trait(false, "the recipe takes pure water")
        : stock.Waters.Any(IsHard) ? new Trait(true, "its water is hard") : new Trait(false, "its water is soft");

    private static bool IsHard(WaterFacts water)
    {
        double PerLitre(string component) => water.ComponentMoles.GetValueOrDefault(component) / Math.Max(water.Volume.Litres, 1e-9);
        return PerLitre(Component.Carbonate) >= HardFromMolesPerLitre
            || PerLitre(Component.Calcium) + PerLitre(Component.Magnesium) >= HardFromMolesPerLitre;
    }

    private Trait Ph(Func<double, bool> fits, string yes, string no) =>
        !mixing.IsSolved ? new Trait(null, "") : fits(mixing.Ph) ? new Trait(true, yes) : new Trait(false, no);

    private Trait Frost() => iceSeen ? new Trait(true, "there was ice in it")
        : (seenAt ?? stock.StorageTemperature.Low).Celsius <= 0.5 ? new Trait(true, "it stood at or below freezing")
        : new Trait(false, "it did not stand in frost");

    private static bool HasIron(AdditionFacts addition) =>
        addition.ComponentMoles.GetValueOrDefault(Component.FerricIron) > 0
            || addition.ComponentMoles.GetValueOrDefault(Component.FerrousIron) > 0;

    private static bool NameHas(AdditionFacts addition, string part) =>
        addition.Substance.Name.Contains(part, StringComparison.OrdinalIgnoreCase)
            || addition.Substance.Id.Contains(part, StringComparison.OrdinalIgnoreCase);
}
