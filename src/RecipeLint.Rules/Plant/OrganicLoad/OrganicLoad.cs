using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>So much that microbes eat in what the plants get that slime grows and roots run short of air.</summary>
internal sealed class OrganicLoad : RecipeRule<OrganicLoad.Load>
{
    public const string RuleName = "organic-load";

    /// <summary>mg/L of oxygen in water at 20 °C under air (CRC Handbook, recalled).</summary>
    private const double Oxygen = 9.1;

    /// <summary>g/mol of O2, from CIAAW weights.</summary>
    private const double OxygenGramsPerMole = 31.998;

    public override string Name => RuleName;

    protected override IEnumerable<Load> Judge(RecipeFacts recipe, RuleContext context)
    {
        List<Food> foods =
        [
            .. Holding.Of(recipe).Items
                .Where(i => i.Substance.FeedsMicrobes || i.Substance.IsPreservative)
                .Select(i => new Food(i, Rounding.SixDigits(1000 * i.PureGrams / recipe.FinalVolume.Litres), PerGram(i.Substance)))
                .Where(f => f.OxygenPerGram > 0 && f.MilligramsPerLitre > 0)
                .OrderByDescending(f => f.Oxygen),
        ];
        if (foods.Count == 0)
        {
            yield return new Load(recipe, [], 0) { Checks = [Check.That("something that microbes eat goes into it", false)] };
            yield break;
        }

        var found = Rounding.SixDigits(foods.Sum(f => f.Oxygen));
        yield return new Load(recipe, foods, found)
        {
            Checks =
            [
                new Check(
                    "more than stirring makes up for", found, Relation.AtLeast, context.Options<OrganicLoadOptions>().NoteFrom, "mg/L"),
            ],
        };
    }

    protected override Finding Describe(Load verdict, RuleContext context)
    {
        var options = context.Options<OrganicLoadOptions>();
        var most = verdict.Foods[0];
        var place = most.Held.Place is { } own && own.File == verdict.Recipe.Recipe.Place.File ? own : RecipePlaces.Doses(verdict.Recipe);
        var acid = most.Held.Substance.Kind == SubstanceKind.Acid;
        var from = verdict.Foods.Count == 1 ? "from" : "most of it from";
        var message = $"The final solution carries {Say.Number(verdict.Foods.Sum(f => f.MilligramsPerLitre))} mg/L that microbes eat, "
            + $"{from} {most.Held.Substance.Name}: using it up takes {Say.Number(verdict.Found)} mg/L of oxygen, and water holds "
            + $"{Say.Number(Oxygen)} mg/L. "
            + "In a solution that is used again slime grows on it, pipes clog and roots run short of air"
            + (acid ? ", and the pH climbs back as the acid is eaten. Set the pH with nitric, phosphoric or sulfuric acid instead."
                : most.Held.Substance.IsPreservative
                    ? ", and what is not eaten holds back roots. Preserve concentrates and not the tank."
                : ". Leave it out, or give it to soil.");
        return context.Find(place, message, Harm.Damage, verdict.Found >= options.HarmFrom ? Odds.Certain : Odds.Possible) with
        {
            Measured = new Measured("oxygen to use it up", verdict.Found, options.NoteFrom, "mg/L"),
            Values =
            [
                new NamedValue("oxygen to use it up", verdict.Found, "mg/L"),
                new NamedValue(most.Held.Substance.Name, most.MilligramsPerLitre, "mg/L"),
            ],
            Related = [.. verdict.Foods.Select(f => f.Held.Place).OfType<Place>().Distinct().Where(p => p != place).Take(3)
                .Select(p => new RelatedPlace(p, "is eaten too"))],
        };
    }

    protected override Working Work(Load verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"food for microbes in '{verdict.Recipe.Recipe.Name}'");
        if (verdict.Foods.Count == 0)
        {
            return work.Statements(verdict).Done();
        }

        var parts = verdict.Foods.Select(f =>
        {
            var amount = work.Given(f.Held.Substance.Name, f.MilligramsPerLitre, "mg/L", From.Amounts);
            var each = work.Given("oxygen that a gram of it takes", f.OxygenPerGram, "g/g", "formula");
            return work.Result("oxygen", "amount × oxygen a gram", amount * each, "mg/L");
        }).ToList();
        var found = parts.Count == 1 ? parts[0] : work.Result("oxygen to use it up", "sum", Term.Sum(parts), "mg/L");
        return work.Check(verdict.Checks[0], found, work.Option("limit", context.Options<OrganicLoadOptions>().NoteFrom))
            .Statements(verdict).Done(found);
    }

    /// <summary>
    /// g of oxygen that burning a gram takes, to carbon dioxide, water and ammonia (theoretical oxygen demand, OECD guideline 301, annex
    /// IV); a metal counts as the hydrogen it stands for. 0 where the composition is not known.
    /// </summary>
    private static double PerGram(Substance substance)
    {
        if (substance.Formula is not { } formula)
        {
            return 0;
        }

        double Of(string symbol) => formula.Atoms.GetValueOrDefault(new Element(symbol));
        var hydrogen = Of("H") + Of("K") + Of("Na") + (2 * (Of("Ca") + Of("Mg") + Of("Fe") + Of("Mn") + Of("Zn") + Of("Cu")));
        var moles = Of("C") + (hydrogen / 4) - (Of("O") / 2) - (3 * Of("N") / 4);
        return Math.Max(0, Rounding.SixDigits(OxygenGramsPerMole * moles / formula.MolarMass.GramsPerMole));
    }

    /// <summary>One thing that microbes eat.</summary>
    /// <param name="MilligramsPerLitre">Of the compound itself in the final solution.</param>
    /// <param name="OxygenPerGram">g/g.</param>
    internal sealed record Food(Held Held, double MilligramsPerLitre, double OxygenPerGram)
    {
        /// <summary>mg/L.</summary>
        public double Oxygen => MilligramsPerLitre * OxygenPerGram;
    }

    /// <summary>All food in a final solution, most first.</summary>
    /// <param name="Found">mg/L of oxygen.</param>
    internal sealed record Load(RecipeFacts Recipe, IReadOnlyList<Food> Foods, double Found) : Verdict;
}
