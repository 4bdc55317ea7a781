using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Documents;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>
/// Targets that no mixture of salts can meet because their charges do not cancel, and a final solution whose charges a water analysis or a
/// label leaves open.
/// </summary>
internal sealed partial class ChargeImbalance : RecipeRule<ChargeBalance>
{
    public const string RuleName = "charge-imbalance";

    /// <summary>Targets without which nothing can be said: each can close a gap.</summary>
    private static readonly string[] _needed = ["P", "K", "Ca", "Mg", "S"];

    /// <summary>Charges near pH 5.8, where phosphate is H2PO4-.</summary>
    private static readonly (string Key, int Charge)[] _charges =
        [("K", 1), ("Ca", 2), ("Mg", 2), ("Na", 1), ("NH4-N", 1), ("NO3-N", -1), ("P", -1), ("S", -2), ("Cl", -1)];

    public override string Name => RuleName;

    protected override IEnumerable<ChargeBalance> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (Targets(recipe, context) is { } targets)
        {
            yield return targets;
        }

        yield return Solution(recipe, context);
    }

    protected override Finding Describe(ChargeBalance verdict, RuleContext context) => verdict switch
    {
        TargetCharges targets => Describe(targets, context),
        var solution => Describe((SolutionCharges)solution, context),
    };

    private static TargetCharges? Targets(RecipeFacts recipe, RuleContext context)
    {
        var milligrams = recipe.Recipe.Targets
            .Where(t => t.Concentration is { GramsPerLitre: > 0 })
            .GroupBy(t => t.Key.Value)
            .ToDictionary(g => g.Key, g => g.First().Concentration!.Value.MilligramsPerLitre);
        var byForm = milligrams.ContainsKey("NO3-N");
        if (_needed.Any(n => !milligrams.ContainsKey(n)) || !(byForm || milligrams.ContainsKey("N")))
        {
            return null;
        }

        double Wanted(string key) => milligrams.TryGetValue(key, out var value) ? value / AtomicWeights.Of(NutrientKeys.ElementOf(key)) : 0;
        var cations = _charges.Where(c => c.Charge > 0).Sum(c => c.Charge * Wanted(c.Key));
        var anions = -_charges.Where(c => c.Charge < 0).Sum(c => c.Charge * Wanted(c.Key));
        if (!byForm)
        {
            // Nitrogen without a form is nitrate, as far as ammonium is not stated or not needed to balance.
            var free = Wanted("N") - Wanted("NH4-N");
            var ammonium = milligrams.ContainsKey("NH4-N") ? 0 : Math.Max(0, Math.Min((anions + free - cations) / 2, free));
            cations += ammonium;
            anions += free - ammonium;
        }

        var apart = new Check(
            "too far apart for any mixture of salts",
            Rounding.SixDigits(100 * Math.Abs(cations - anions) / (cations + anions)),
            Relation.Over,
            context.Options<ChargeImbalanceOptions>().TargetTolerance,
            "%");
        return new TargetCharges(recipe, milligrams, byForm, cations, anions, apart) { Checks = [apart] };
    }

    private static SolutionCharges Solution(RecipeFacts recipe, RuleContext context)
    {
        var cations = recipe.Charge.Cations.MilliequivalentsPerLitre;
        if (cations <= 0)
        {
            return new SolutionCharges(recipe, 0, 0, null) { Checks = [Check.That("it holds cations", false)] };
        }

        var open = recipe.Charge.Unexplained.MilliequivalentsPerLitre;
        var share = new Check(
            "too much to compute a pH with",
            Rounding.SixDigits(100 * Math.Abs(open) / cations), Relation.Over, context.Options<ChargeImbalanceOptions>().Tolerance, "%");
        var checks = new List<Check>(3) { share };
        if (!recipe.IsComplete)
        {
            checks.Add(Check.That("the recipe could be read whole", false));
        }

        // An analysis that does not balance is reported at the water.
        if (share.Holds && recipe.Water?.Water is { } water && UnbalancedWater.Reports(context, water))
        {
            checks.Add(Check.That("the water is not reported as unbalanced already", false));
        }

        return new SolutionCharges(recipe, cations, open, share) { Checks = checks };
    }

    private static Finding Describe(TargetCharges verdict, RuleContext context)
    {
        var (cations, anions, apart) = (verdict.Cations, verdict.Anions, verdict.Apart);
        var split = verdict.ByForm ? "" : ", with the nitrogen shared between nitrate and ammonium as it fits best";
        var (more, less) = cations > anions ? ("cations", "anions") : ("anions", "cations");
        return context.Find(
            verdict.Recipe.Recipe.Place.Child("targets").Key,
            $"The targets ask for {Say.Number(cations)} meq/L of cations and {Say.Number(anions)} meq/L of anions{split}: "
                + $"{Say.Percent(apart.Value / 100)} apart. "
            + "Salts bring both in equal measure, so no mixture meets all targets at once; the gap fills with "
            + $"{(cations > anions ? "chloride, bicarbonate or alkali" : "sodium, ammonium or acid")}. "
            + $"Lower the {more} or raise the {less}, or look for a figure on another basis.",
            Harm.Damage,
            Odds.Certain) with
        {
            Measured = new Measured("imbalance of the targets", apart.Value, apart.Limit, "%"),
            Values = [new NamedValue("cations", Rounding.SixDigits(cations), "meq/L"),
                new NamedValue("anions", Rounding.SixDigits(anions), "meq/L")],
        };
    }

    private static Finding Describe(SolutionCharges verdict, RuleContext context)
    {
        var (recipe, open, share) = (verdict.Recipe, verdict.Open, verdict.Share!);
        var place = RecipePlaces.Doses(recipe);
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#charge",
            $"{Say.Number(Math.Abs(open))} meq/L of {(open > 0 ? "anions" : "cations")} are missing from what is known of the final "
                + $"solution, {Say.Percent(share.Value / 100)} of its cations. "
            + "The pH and the conductivity computed for it are off by as much. "
            + "Complete the analysis of the water, or the label of the product that leaves it open.",
            Harm.Damage,
            Odds.Certain) with
        {
            Measured = new Measured("unexplained charge", share.Value, share.Limit, "%"),
            Values = [new NamedValue("unexplained charge", Rounding.SixDigits(open), "meq/L"),
                new NamedValue("cations", Rounding.SixDigits(verdict.Cations), "meq/L")],
            Related = recipe.Water?.Water is { File.Length: > 0 } water
                ? [new RelatedPlace(water.Place, "analysis of the source water")] : [],
        };
    }
}

/// <summary>Cations against anions.</summary>
internal abstract record ChargeBalance(RecipeFacts Recipe) : Verdict;

/// <summary>Those of the targets.</summary>
/// <param name="Milligrams">What is asked for, mg/L by key.</param>
/// <param name="ByForm">Whether nitrate is asked for by itself.</param>
/// <param name="Cations">meq/L.</param>
/// <param name="Anions">meq/L.</param>
internal sealed record TargetCharges(
    RecipeFacts Recipe, IReadOnlyDictionary<string, double> Milligrams, bool ByForm, double Cations, double Anions, Check Apart)
    : ChargeBalance(Recipe);

/// <summary>Those of the solution.</summary>
/// <param name="Cations">meq/L.</param>
/// <param name="Open">Charge that nobody explains, meq/L; positive where anions are missing.</param>
/// <param name="Share">Null where there are no cations.</param>
internal sealed record SolutionCharges(RecipeFacts Recipe, double Cations, double Open, Check? Share) : ChargeBalance(Recipe);
