using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Chelation;

/// <summary>Peroxide in one vessel with the metals that split it and the agents that it tears up.</summary>
internal sealed class PeroxideWithMetals : WorkspaceRule<PeroxideWithMetals.Meeting>
{
    public const string RuleName = "peroxide-with-metals";

    private const string Peroxide = HydrogenPeroxide.Component;

    private static readonly Element[] _catalysts = [Element.Fe, Element.Cu, Element.Mn];

    public override string Name => RuleName;

    protected override IEnumerable<Meeting> Judge(Facts facts, RuleContext context)
    {
        return context.OfEachStockAlone<Meeting>(s => [OfStock(s)]).Concat(context.OfEachRecipeAlone(OfRecipe));

        Meeting OfStock(StockFacts stock)
        {
            var (metal, peroxide) =
                (_catalysts.Sum(e => stock.Concentration(e).MilligramsPerLitre), stock.Concentration(Peroxide).MolesPerLitre);
            var place = stock.SuppliersOf(Peroxide).FirstOrDefault()?.Place ?? stock.Stock.Place;
            return Of(stock.Stock.File, stock.Stock.Name, place, metal, peroxide, context.For(stock.Stock.File)) with
            {
                Bursts = peroxide > 0
                    && HazardGate.Of(Holding.Of(stock)).Find(HazardKind.OxygenPressure) is { Grade: >= HazardGrade.Present },
            };
        }

        IEnumerable<Meeting> OfRecipe(RecipeFacts recipe)
        {
            // A bottle that holds both is spoken of there, once.
            if (recipe.Doses.Any(d => d.Stock is { } stock
                && stock.ComponentMoles.GetValueOrDefault(Peroxide) > 0
                && _catalysts.Any(e => stock.Totals[e].Grams > 0)))
            {
                yield break;
            }

            var metal = _catalysts.Sum(e => recipe.MilligramsPerLitre(e.Symbol));
            var peroxide = recipe.ComponentMoles.GetValueOrDefault(Peroxide) / recipe.FinalVolume.Litres;
            var dose = recipe.Doses.FirstOrDefault(d => d.ComponentMoles.GetValueOrDefault(Peroxide) > 0);
            yield return Of(
                recipe.Recipe.File,
                recipe.Recipe.Name,
                dose?.Entry.Place ?? recipe.Recipe.Place,
                metal,
                peroxide,
                context.For(recipe.Recipe.File));
        }
    }

    protected override Finding Describe(Meeting verdict, RuleContext context)
    {
        var message =
            $"{Say.Number(verdict.Peroxide)} mg/L of hydrogen peroxide stands in '{verdict.Vessel}' beside {Say.Number(verdict.Metal)} "
                + "mg/L of iron, copper and manganese. "
            + "The metals split it within hours, and what comes of it tears up the chelating agents, so that iron falls out as rust; in a "
                + "closed bottle the oxygen builds up pressure. "
            + "Leave the peroxide out: clean lines and tanks with it between crops and flush them, and do not cap a bottle in which the "
                + "two have met.";
        return context.Find(verdict.Place, message, verdict.Bursts ? Harm.Person : Harm.Damage, Odds.Certain) with
        {
            Measured = new Measured("peroxide", verdict.Peroxide, verdict.Checks[0].Limit, "mg/L"),
            Values = [new NamedValue("iron, copper and manganese", verdict.Metal, "mg/L")],
        };
    }

    protected override Working Work(Meeting verdict, RuleContext context)
    {
        var own = context.For(verdict.Files[0]);
        var work = new WorkingBuilder($"peroxide and metals in '{verdict.Vessel}'");
        if (verdict.Peroxide <= 0)
        {
            return work.Statements(verdict).Done();
        }

        var peroxide = work.Given("peroxide", verdict.Peroxide, "mg/L", "amounts in the file");
        work.Check(verdict.Checks[0], peroxide, work.Option("from", own.Options<PeroxideWithMetalsOptions>().LeastPeroxide));
        var metal = work.Given("iron, copper and manganese", verdict.Metal, "mg/L", "amounts in the file");
        return work.Check(verdict.Checks[1], metal, work.Option("from", own.Options<PeroxideWithMetalsOptions>().LeastMetal))
            .Done(peroxide);
    }

    private static Meeting Of(string file, string vessel, Place place, double metal, double molesPerLitre, RuleContext own)
    {
        if (molesPerLitre <= 0 || metal <= 0)
        {
            return new Meeting(vessel, place, 0, 0)
            {
                Files = [file],
                Checks = [Check.That("peroxide stands beside iron, copper or manganese", false)],
            };
        }

        var options = own.Options<PeroxideWithMetalsOptions>();
        var (peroxide, metals) = (Rounding.SixDigits(1000 * HydrogenPeroxide.GramsPerMole * molesPerLitre), Rounding.SixDigits(metal));
        return new Meeting(vessel, place, peroxide, metals)
        {
            Files = [file],
            Checks =
            [
                new Check("enough peroxide to matter", peroxide, Relation.AtLeast, options.LeastPeroxide, "mg/L"),
                new Check("enough metal to split it", metals, Relation.AtLeast, options.LeastMetal, "mg/L"),
            ],
        };
    }

    /// <summary>What stands together, mg/L.</summary>
    internal sealed record Meeting(string Vessel, Place Place, double Peroxide, double Metal) : Verdict
    {
        /// <summary>So much oxygen comes of it in a bottle that a closed one bursts.</summary>
        public bool Bursts { get; init; }
    }
}
