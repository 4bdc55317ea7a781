using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>What the three element rules share: one finding for each element past one bound of the crop profile.</summary>
internal abstract class ElementRangeRule : RecipeRule<ElementAgainstRange>, IProposesRepairs
{
    protected override bool OnlyForRoots => true;

    protected override IEnumerable<ElementAgainstRange> Judge(RecipeFacts recipe, RuleContext context)
    {
        foreach (var range in recipe.Profile.Elements)
        {
            var found = Rounding.SixDigits(recipe.MilligramsPerLitre(range.Key));
            if (BoundOf(found, range) is not { } bound)
            {
                continue;
            }

            var past = bound.IsLower
                ? new Check("under the bound", found, Relation.Under, bound.MilligramsPerLitre * Bound.Lower, "mg/L")
                : new Check("over the bound", found, Relation.Over, bound.MilligramsPerLitre * Bound.Upper, "mg/L");
            var checks = new List<Check>(3) { past };
            if (Bound.IsOver(found, range.ToxicAbove) && !IsToxic)
            {
                checks.Add(Check.That("it is not so much that it harms (the rule on toxic amounts speaks of that)", false));
            }

            if (!recipe.IsComplete)
            {
                checks.Add(Check.That("the recipe could be read whole", false));
            }
            else if (IsOwnedElsewhere(recipe, range.Key))
            {
                checks.Add(Check.That("no other rule has more to say of this element here", false));
            }

            yield return new ElementAgainstRange(recipe, range, found, bound, past)
            {
                Checks = checks,
                IsToxic = IsToxic,
                Unheld = past.Holds && IsToxic ? Unheld(recipe, range.Key, found) : found,
            };
        }
    }

    protected override Finding Describe(ElementAgainstRange verdict, RuleContext context)
    {
        var (recipe, key, limit) = (verdict.Recipe, verdict.Range.Key, verdict.Bound.MilligramsPerLitre);
        var message = WithDisagreement(Message(verdict), verdict.Range.Disagreement);
        var place = RecipePlaces.TargetOrDoses(recipe, key);
        var idPath = $"{IdPath.Of(context.Facts.Workspace, place)}#{key}";
        return context.Find(
            place, idPath, message, verdict.Harm, verdict.Odds, verdict.Range.IsPractice ? Certainty.Practice : Certainty.Computed) with
        {
            Related = [.. ElementRatio.LargestSources(recipe, key).Take(3)],
            Measured = new Measured(key, verdict.Found, limit, "mg/L"),
            Values = [new NamedValue(key, verdict.Found, "mg/L"), new NamedValue("limit", limit, "mg/L")],
        };
    }

    protected override Working Work(ElementAgainstRange verdict, RuleContext context)
    {
        var (recipe, range, bound) = (verdict.Recipe, verdict.Range, verdict.Bound);
        var stage = recipe.Profile.Stage == "any" ? "" : $", stage '{recipe.Profile.Stage}'";
        var work = new WorkingBuilder($"{range.Key} in '{recipe.Recipe.Name}' against the '{recipe.Profile.Name}' profile{stage}");
        var found = ElementSteps.Found(work, recipe, range.Key);
        var stated = work.Given(bound.IsLower ? "bound below" : "bound above", bound.MilligramsPerLitre, "mg/L", From.Profile);
        var edge = Bound.Edge(work, stated, "bound", !bound.IsLower, "mg/L");
        return work.Check(verdict.Past, found, edge).Statements(verdict).Done(found);
    }

    /// <summary>More or less of what brings most of it, so that it comes inside the range.</summary>
    protected override IEnumerable<RepairProposal> Repair(ElementAgainstRange verdict, Finding finding, RepairContext context) =>
        context.RecipeOf(finding) is { } recipe
            ? Contributions.ToLimit(
                context, recipe, verdict.Range.Key, verdict.Bound.MilligramsPerLitre,
                verdict.Bound.IsLower ? NitrogenForms.Bringing(recipe, verdict.Range.Key) : null)
            : [];

    /// <summary>
    /// mg/L that no chelating agent holds, of what is put in as a chelate: an agent that happens to be there can be used up, and microbes
    /// eat the fruit acids. Iron is given as a chelate, so its bounds are those of chelates already.
    /// </summary>
    private static double Unheld(RecipeFacts recipe, string key, double found)
    {
        var metals = recipe.Chemistry.Final.Metals
            .Where(m => key != Element.Fe.Symbol && m.Dissolved.MolesPerLitre > 0
                && IonFacts.ElementsOf(m.Metal, 1).Elements.Any(e => e.Symbol == key))
            .ToList();
        if (metals.Count == 0)
        {
            return found;
        }

        var chelated = recipe.Doses.Sum(d => d.Stock is { } stock
            ? stock.Additions.Sum(a => Chelated(a, metals)) * (d.Volume / stock.Volume)
            : d.Direct is { } direct ? Chelated(direct, metals) : 0) / recipe.FinalVolume.Litres;
        double dissolved = metals.Sum(m => m.Dissolved.MolesPerLitre), bare = metals.Sum(m => m.Unchelated.MolesPerLitre);
        return Rounding.SixDigits(found * Math.Max(bare, dissolved - chelated) / dissolved);
    }

    /// <summary>mol of a metal that a substance brings together with a strong agent for it.</summary>
    private static double Chelated(AdditionFacts addition, List<DissolvedMetal> metals) => addition.Substance.Dissolves
        .Any(d => IronHolders.Chelators.Any(c => c.Component == d.Component))
        ? metals.Sum(m => addition.ComponentMoles.GetValueOrDefault(m.Metal))
        : 0;

    /// <summary>Whether a toxic amount is this rule's own.</summary>
    protected virtual bool IsToxic => false;

    /// <summary>True when another rule has more to say of this element in this recipe.</summary>
    protected virtual bool IsOwnedElsewhere(RecipeFacts recipe, string key) => false;

    /// <summary>
    /// The bound that is passed at this concentration, else the one that would be; null when the profile has none for this rule.
    /// </summary>
    protected abstract RangeBound? BoundOf(double milligramsPerLitre, ElementRange range);

    /// <summary>What is said of an element past its bound.</summary>
    protected abstract string Message(ElementAgainstRange verdict);

    /// <summary>How the sources differ ends the message, its first sentence: more is for the profile.</summary>
    private static string WithDisagreement(string message, string? disagreement)
    {
        if (disagreement is not { Length: > 1 })
        {
            return message;
        }

        var end = disagreement.IndexOf(". ", StringComparison.Ordinal);
        var first = (end > 0 ? disagreement[..end] : disagreement).TrimEnd('.');
        var start = char.IsLower(first[1]) ? char.ToLowerInvariant(first[0]) : first[0];
        return $"{message.TrimEnd('.')}; {start}{first[1..]}.";
    }
}

/// <summary>One end of what a profile gives for an element.</summary>
/// <param name="IsUsual">True for the end of what is usual, false for the level at which plants go short or are harmed.</param>
internal sealed record RangeBound(double MilligramsPerLitre, bool IsLower, bool IsUsual = false);

/// <summary>An element of a final solution against one end of its range.</summary>
/// <param name="Found">mg/L, to six digits.</param>
internal sealed record ElementAgainstRange(RecipeFacts Recipe, ElementRange Range, double Found, RangeBound Bound, Check Past) : Verdict
{
    /// <summary>Times the bound from which a crop is lost and not just worse: twice a sourced limit, or half of it.</summary>
    private const double Twice = 2;

    /// <summary>
    /// Share of a deficiency bound that companions of other salts bring, such as the potassium of a preservative or of the lye for the pH
    /// (common practice, no source).
    /// </summary>
    private const double OfCompanions = 0.05;

    /// <summary>True where the bound is passed by a factor of two or more.</summary>
    public bool IsFarPast => Bound.IsLower ? Found * Twice <= Bound.MilligramsPerLitre : Found >= Twice * Bound.MilligramsPerLitre;

    /// <summary>
    /// True where a whole feed holds next to nothing of a nutrient: its salt was left out, and that a companion brings a trace of it
    /// makes the crop no safer than nothing at all does.
    /// </summary>
    public bool IsForgotten => Bound is { IsLower: true, IsUsual: false } && Found <= OfCompanions * Bound.MilligramsPerLitre
        && Nutrients.IsForgotten(Recipe, Nutrients.HardlyThere(Recipe, OfCompanions));

    public Harm Harm => IsForgotten || (!Bound.IsUsual && (IsToxic || (IsFarPast && !Range.IsPractice))) ? Harm.Loss : Harm.Damage;

    public Odds Odds => Bound.IsUsual || (Bound.IsLower && !IsFarPast && Nutrients.NamesNoCrop(Recipe)) ? Odds.Possible
        : IsToxic && (((Range.IsPractice || Range.IsToxicToOthers) && !IsFarPast) || IsMostlyHeld) ? Odds.NearTheLimit
        : Odds.Certain;

    /// <summary>mg/L that no chelating agent holds; all of it where nothing is known of that.</summary>
    public required double Unheld { get; init; }

    /// <summary>
    /// True where what no chelating agent holds stays under the bound. What poisons roots follows the bare metal (D. R. Parker and J. F.
    /// Pedler, Reevaluating the free-ion activity model of trace metal availability to higher plants, Plant and Soil 196 (1997) 223,
    /// recalled), and the bounds come from solutions made with salts.
    /// </summary>
    public bool IsMostlyHeld => Unheld < Found && Unheld <= Bound.MilligramsPerLitre;

    /// <summary>Whether the bound is the level that harms.</summary>
    public bool IsToxic { get; init; }
}
