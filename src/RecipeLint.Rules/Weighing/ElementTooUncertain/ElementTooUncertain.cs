using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>
/// An element the recipe supplies whose concentration is not known well enough, by the law of propagation of uncertainty; one finding for
/// each cause, with the elements it spoils.
/// </summary>
internal sealed class ElementTooUncertain : WorkspaceRule<ElementTooUncertain.Cause>, IProposesRepairs, IGathersByPlace
{
    public const string RuleName = "element-too-uncertain";

    /// <summary>Part of an element that has to come from the doses for the recipe to answer for it.</summary>
    private const double SuppliedFrom = 0.5;

    /// <summary>Sources that a working shows one by one.</summary>
    private const int MostSources = 6;

    public override string Name => RuleName;

    /// <summary>
    /// One weight or dose that alone may be off by more than an element may be: the plants do not get what the file says.
    /// </summary>
    /// <param name="relative">How far it may be off, as a share.</param>
    /// <param name="file">Where it stands; the shop of that file sets the limit.</param>
    internal static Harm HarmOf(double relative, RuleContext context, string file) => relative * 100
        > (context.Neighbour(RuleName, file)?.Options<ElementTooUncertainOptions>() ?? new ElementTooUncertainOptions()).Limit
            ? Harm.Loss
            : Harm.Damage;

    protected override IEnumerable<Cause> Judge(Facts facts, RuleContext context)
    {
        var looked = context.OfEachRecipeAlone(r => Of(facts, r, context.For(r.Recipe.File)).Select(e => Together([e]))).ToList();
        var speaks = looked.Where(k => k.Fires).GroupBy(k => k.Same[0].Place).Select(g => Together(g.SelectMany(k => k.Same)));
        return speaks.Concat(looked.Where(k => !k.Fires));
    }

    protected override Finding Describe(Cause verdict, RuleContext context)
    {
        var same = verdict.Same;
        var worst = same[0];
        var keys = same.Select(s => s.Key).Distinct().Order(StringComparer.Ordinal).ToList();
        var milligrams = worst.Known!.Concentration.MilligramsPerLitre;
        var (low, high) = (milligrams * Math.Max(0, 1 - worst.Relative), milligrams * (1 + worst.Relative));
        var others = keys.Count == 1 ? "" : $" ({Say.List(keys.Where(k => k != worst.Key))} from the same place)";
        var message =
            $"{worst.Key} in '{worst.Recipe.Recipe.Name}' is only known to ±{Say.Percent(worst.Relative)}, somewhere between "
                + $"{Say.Number(low)} and {Say.Number(high)} mg/L{others}. "
            + $"{Say.Percent(worst.Fraction)} of that (as variance) is {worst.Source!.Name}. "
            + ErrorKinds.Advice(worst.Source!);
        return context.Find(worst.Place!, message, worst.Relative * 100 >= 2 * worst.Limit ? Harm.Loss : Harm.Damage, Odds.Certain) with
        {
            Measured = new Measured("relative expanded uncertainty", worst.Relative * 100, worst.Limit, "%"),
            Values =
            [
                .. same.DistinctBy(s => s.Key)
                    .OrderBy(s => s.Key, StringComparer.Ordinal)
                    .Select(s => new NamedValue(s.Key, s.Relative * 100, "%")),
                new NamedValue("share of the variance", worst.Fraction * 100, "%"),
            ],
            Related = worst.Source!.Place is { } place && place != worst.Place ? [new RelatedPlace(place, worst.Source!.Name)] : [],
        };
    }

    protected override Working Work(Cause verdict, RuleContext context)
    {
        var worst = verdict.Same[0];
        if (worst.Known is not { } element)
        {
            return new WorkingBuilder($"'{worst.Recipe.Recipe.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"the uncertainty budget of {element.Key} in '{worst.Recipe.Recipe.Name}'");
        var parts = element.Shares.Take(MostSources)
            .Select(s => work.Given(
                $"standard uncertainty from {s.Source.Name}", 100 * element.RelativeStandard * Math.Sqrt(s.Fraction), "%", "budget"))
            .ToList();
        var rest = element.Shares.Skip(MostSources).Sum(s => s.Fraction);
        if (rest > 0)
        {
            parts.Add(work.Given("all other sources together", 100 * element.RelativeStandard * Math.Sqrt(rest), "%", "budget"));
        }

        var combined = work.Result(
            "combined standard uncertainty",
            "root of the sum of the squares",
            Term.Root(Term.Sum(parts.Select(p => Term.Power(p, 2)))),
            "%");
        work.Result("share of the first", "100 × (its part / combined)^2", 100 * Term.Power(parts[0] / combined, 2), "%");
        var expanded = work.Result("expanded uncertainty", "2 × combined", 2 * combined, "%");
        var found = work.Given($"{element.Key} in the solution", element.Concentration.MilligramsPerLitre, "mg/L", "amounts in the file");
        work.Result("at least", "found × (1 - expanded / 100)", found * (1 - (expanded / 100)), "mg/L");
        work.Result("at most", "found × (1 + expanded / 100)", found * (1 + (expanded / 100)), "mg/L");
        work.Check(verdict.Checks[0], expanded, work.Option("limit", worst.Limit));
        return work.Statements(verdict).Done(expanded);
    }

    /// <summary>Better equipment of the shop, or more of it at once.</summary>
    protected override IEnumerable<RepairProposal> Repair(Cause verdict, Finding finding, RepairContext context) =>
        Equipment.ForWeight(finding, context).Concat(Equipment.OtherMeasures(finding, context));

    /// <summary>The elements of one recipe, those that are known least first.</summary>
    private static IEnumerable<Element> Of(Facts facts, RecipeFacts recipe, RuleContext options)
    {
        var limit = options.Options<ElementTooUncertainOptions>().Limit;
        var known = ElementUncertainty.Of(recipe, facts.FindStock).Elements.Values
            .Where(e => PlantNutrients.Contains(e.Key) && e.HasShares)
            .OrderByDescending(e => e.RelativeExpanded)
            .ThenBy(e => e.Key, StringComparer.Ordinal)
            .ToList();
        if (known.Count == 0)
        {
            yield return new Element(recipe, null, null, limit, [Check.That("it holds a nutrient whose uncertainty can be told", false)]);
        }

        ReportedCauses? causes = null;
        foreach (var element in known)
        {
            var unsure = new Check(
                "less sure than an element should be",
                Rounding.SixDigits(Rounding.SixDigits(element.RelativeExpanded) * 100),
                Relation.Over,
                limit,
                "%");
            List<Check> checks = [unsure];
            if (!recipe.IsComplete || !Supplied(recipe, element.Key))
            {
                checks.Add(Check.That("the doses and not the water bring most of it", false));
            }

            Place? place = null;
            if (checks.TrueForAll(c => c.Holds))
            {
                causes ??= ReportedCauses.Of(options, recipe);
                var source = element.Shares[0].Source;
                place = causes.WhereUsed(source) ?? recipe.Recipe.Place.Child("doses").Key;
                if (causes.Has(source))
                {
                    checks.Add(Check.That("no rule on weights, measures or vessels has reported its largest source already", false));
                }
            }

            yield return new Element(recipe, element, place, limit, checks);
        }
    }

    Verdict IGathersByPlace.Gather(IReadOnlyList<Verdict> verdicts) => Together(verdicts.Cast<Cause>().SelectMany(v => v.Same));

    private static Cause Together(IEnumerable<Element> elements)
    {
        var same = elements.OrderByDescending(e => e.Relative).ThenBy(e => e.Key, StringComparer.Ordinal)
            .ThenBy(e => e.Recipe.Recipe.File, StringComparer.Ordinal).ToList();
        return new Cause(same) { Files = [.. same.Select(e => e.Recipe.Recipe.File).Distinct()], Checks = same[0].Checks };
    }

    private static bool Supplied(RecipeFacts recipe, string key) =>
        recipe.Elements.TryGetValue(key, out var fact)
        && fact.Contributions
            .Where(c => c.Source != "water")
            .Sum(c => c.Concentration.GramsPerLitre) >= SuppliedFrom * fact.Concentration.GramsPerLitre;

    /// <summary>
    /// Elements that are known too little because of the same thing, the least known first; or one that is known well enough.
    /// </summary>
    internal sealed record Cause(IReadOnlyList<Element> Same) : Verdict;

    /// <summary>One element of one final solution.</summary>
    /// <param name="Known">Null for a solution without any.</param>
    /// <param name="Place">Where its largest error arises; null where nothing is said of it.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Element(
        RecipeFacts Recipe, ElementUncertainty? Known, Place? Place, NumberOption Limit, IReadOnlyList<Check> Checks)
    {
        internal string Key => Known?.Key ?? "";

        /// <summary>Expanded uncertainty (k = 2) as a fraction, to six digits.</summary>
        internal double Relative => Rounding.SixDigits(Known?.RelativeExpanded ?? 0);

        /// <summary>The largest source of error.</summary>
        internal ErrorSource? Source => Known?.Shares[0].Source;

        /// <summary>Its share of the variance.</summary>
        internal double Fraction => Known?.Shares[0].Fraction ?? 0;
    }
}
