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

    /// <summary>g of oxygen that burning a gram of carbon of sugar takes (CH2O, CIAAW weights); protein and fat take more.</summary>
    private const double OxygenPerCarbon = 2.664;

    /// <summary>How much less of an extract may be food than is taken where nothing says what is in it.</summary>
    private const double Doubt = 2;

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<Load> Judge(RecipeFacts recipe, RuleContext context)
    {
        List<Food> foods =
        [
            .. Holding.OfWhatIsRead(recipe).Items
                .Select(i => Origin(i.Substance) is { } origin ? OfExtract(i, origin, recipe) : OfCompound(i, recipe))
                .OfType<Food>()
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
        var message = $"{Carried(verdict)} using it up takes {Say.Number(verdict.Found)} mg/L of oxygen, and water holds "
            + $"{Say.Number(Oxygen)} mg/L. "
            + "In a solution that is used again slime grows on it, pipes clog and roots run short of air"
            + (acid ? ", and the pH climbs back as the acid is eaten. Set the pH with nitric, phosphoric or sulfuric acid instead."
                : ". Leave it out, or give it to soil.");
        return context.Find(place, message, Harm.Damage, verdict.Least >= options.HarmFrom ? Odds.Certain : Odds.Possible) with
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

    /// <summary>"The final solution carries 280 mg/L that microbes eat, from citric acid:".</summary>
    private static string Carried(Load verdict)
    {
        var most = verdict.Foods[0];
        var name = most.Held.Substance.Name;
        if (most.Carbon is { } carbon)
        {
            return $"The final solution carries {Say.Number(most.MilligramsPerLitre)} mg/L of {name}"
                + $"{(verdict.Foods.Count == 1 ? "" : " and other food of microbes")}. "
                + (most.IsStated ? $"With its {Say.Percent(carbon)} of carbon"
                    : $"Nothing says what is in it: with {Say.Percent(carbon)} of carbon that microbes eat, taken for its kind "
                        + "and good to a factor of two,");
        }

        var known = verdict.Foods.Where(f => f.Carbon is null).Sum(f => f.MilligramsPerLitre);
        return $"The final solution carries {Say.Number(known)} mg/L that microbes eat, "
            + $"{(verdict.Foods.Count == 1 ? "from" : "most of it from")} {name}:";
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
            var each = f.Carbon is { } carbon
                ? work.Result(
                    "oxygen that a gram of it takes", "carbon × 2.664 g/g",
                    work.Given("carbon in it that microbes eat", carbon, "g/g", f.IsStated ? From.File : "taken for its kind")
                        * OxygenPerCarbon, "g/g")
                : work.Given("oxygen that a gram of it takes", f.OxygenPerGram, "g/g", "formula");
            return work.Result("oxygen", "amount × oxygen a gram", amount * each, "mg/L");
        }).ToList();
        var found = parts.Count == 1 ? parts[0] : work.Result("oxygen to use it up", "sum", Term.Sum(parts), "mg/L");
        return work.Check(verdict.Checks[0], found, work.Option("limit", context.Options<OrganicLoadOptions>().NoteFrom))
            .Statements(verdict).Done(found);
    }

    /// <summary>What it was pressed or boiled out of; null for a compound and for salts, whatever they are called.</summary>
    private static ExtractOrigin? Origin(Substance substance) => substance.Extract
        ?? (substance is { Kind: SubstanceKind.Product or SubstanceKind.Organic, Formula: null }
            ? ExtractOrigins.In(substance.Name) ?? ExtractOrigins.In(substance.Id) : null);

    /// <summary>By the carbon that its label states, else by what is usual for its kind.</summary>
    private static Food OfExtract(Held held, ExtractOrigin origin, RecipeFacts recipe)
    {
        var stated = held.Substance.Content[Element.C];
        var carbon = Rounding.SixDigits(origin.Eaten
            * (stated > 0 ? stated : held.Substance.Form == PhysicalForm.Solid ? ExtractOrigins.CarbonOfDryMatter : origin.Carbon.Value));
        return new Food(
            held, Rounding.SixDigits(1000 * held.Grams / recipe.FinalVolume.Litres), Rounding.SixDigits(OxygenPerCarbon * carbon))
        {
            Carbon = carbon,
            IsStated = stated > 0,
        };
    }

    /// <summary>By its formula; null for what microbes do not eat. Of preservatives the rule on biocides speaks.</summary>
    private static Food? OfCompound(Held held, RecipeFacts recipe) => held.Substance.FeedsMicrobes
        ? new Food(held, Rounding.SixDigits(1000 * held.PureGrams / recipe.FinalVolume.Litres), PerGram(held.Substance))
        : null;

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
    /// <param name="MilligramsPerLitre">Of the compound itself in the final solution; of an extract as it is sold.</param>
    /// <param name="OxygenPerGram">g/g.</param>
    internal sealed record Food(Held Held, double MilligramsPerLitre, double OxygenPerGram)
    {
        /// <summary>Mass fraction of carbon that microbes eat, of an extract; null for a compound.</summary>
        public double? Carbon { get; init; }

        /// <summary>True where a label states the carbon.</summary>
        public bool IsStated { get; init; }

        /// <summary>mg/L.</summary>
        public double Oxygen => MilligramsPerLitre * OxygenPerGram;
    }

    /// <summary>All food in a final solution, most first.</summary>
    /// <param name="Found">mg/L of oxygen.</param>
    internal sealed record Load(RecipeFacts Recipe, IReadOnlyList<Food> Foods, double Found) : Verdict
    {
        /// <summary>mg/L of oxygen that is sure: of what nothing is stated half.</summary>
        public double Least => Foods.Sum(f => f.Oxygen / (f.Carbon is not null && !f.IsStated ? Doubt : 1));
    }
}
