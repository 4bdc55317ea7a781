using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>
/// Heavy metals that a certificate declares, against limits for fertilisers and, in the final solution, for irrigation water.
/// </summary>
internal sealed class ContaminantLoad : WorkspaceRule<DeclaredContaminant>
{
    public const string RuleName = "contaminant-load";

    public override string Name => RuleName;

    protected override IEnumerable<DeclaredContaminant> Judge(Facts facts, RuleContext context)
    {
        var declared = facts.Workspace.SubstanceFiles
            .SelectMany(f => f.Substances.Select(s => (f.File, Entry: s)))
            .Where(s => Declared(s.Entry.Substance, s.File).Any())
            .ToList();
        var files = declared.Select(s => s.File).ToHashSet(StringComparer.Ordinal);
        return declared.SelectMany(s => Products(s.File, s.Entry))
            .Concat<DeclaredContaminant>(files.Count == 0 ? [] : facts.Recipes.SelectMany(r => Solutions(r, files)));
    }

    protected override Finding Describe(DeclaredContaminant verdict, RuleContext context) => verdict switch
    {
        ContaminantOfProduct product => Describe(product, context),
        var solution => Describe((ContaminantOfSolution)solution, context),
    };

    protected override Working Work(DeclaredContaminant verdict, RuleContext context) => verdict switch
    {
        ContaminantOfProduct product => Work(product),
        var solution => Work((ContaminantOfSolution)solution),
    };

    /// <summary>What the shop wrote, not the typical impurities that a strength of a catalogue substance inherits.</summary>
    private static IEnumerable<Impurity> Declared(Substance substance, string file)
    {
        const string Stated = "stated in ";
        return substance.Impurities.Where(i => i.Content.Source is { } source && source.Length == Stated.Length + file.Length
            && source.StartsWith(Stated, StringComparison.Ordinal) && source.EndsWith(file, StringComparison.Ordinal));
    }

    private static IEnumerable<ContaminantOfProduct> Products(string file, ShopSubstance entry)
    {
        foreach (var (limit, per) in ContaminantLimits.For(entry.Substance))
        {
            var content = Declared(entry.Substance, file)
                .Where(i => i.Element.Symbol == limit.Element)
                .Select(i => i.Content.Value.Value)
                .DefaultIfEmpty()
                .Max();
            if (content <= 0)
            {
                continue;
            }

            var over = new Check("over the limit for fertilisers", Rounding.SixDigits(content * 1e6 / per), Relation.Over,
                limit.Milligrams, "mg");
            yield return new ContaminantOfProduct(limit, over, entry, content, per) { Checks = [over], Files = [file] };
        }
    }

    private static IEnumerable<ContaminantOfSolution> Solutions(RecipeFacts recipe, HashSet<string> files)
    {
        foreach (var limit in ContaminantLimits.InWater)
        {
            var shares = recipe.Doses
                .SelectMany(Additions)
                .Where(a => a.Addition.Substance.Impurities.Count > 0)
                .Select(a => new ContaminantShare(
                    a.Addition,
                    a.Part,
                    files.SelectMany(f => Declared(a.Addition.Substance, f))
                        .Where(i => i.Element.Symbol == limit.Element)
                        .Select(i => i.Content.Value.Value)
                        .DefaultIfEmpty()
                        .Max()))
                .Where(s => s.Milligrams > 0)
                .OrderByDescending(s => s.Milligrams)
                .ToList();
            if (shares.Count == 0)
            {
                continue;
            }

            var found = Rounding.SixDigits(shares.Select(s => s.Milligrams).Order().Sum() / recipe.FinalVolume.Litres);
            var over = new Check("over the limit for irrigation water", found, Relation.Over, limit.Milligrams, "mg/L");
            yield return new ContaminantOfSolution(limit, over, recipe, shares)
            {
                Checks = [over, .. recipe.IsComplete ? [] : new[] { Check.That("the recipe could be read whole", false) }],
                Files = [recipe.Recipe.File],
            };
        }
    }

    /// <summary>What is weighed for a dose, with the part of it that reaches the solution.</summary>
    private static IEnumerable<(AdditionFacts Addition, double Part)> Additions(DoseFacts dose) =>
        dose.Direct is { } direct
            ? [(direct, 1)]
            : dose.Stock is { } stock ? stock.Additions.Select(a => (a, dose.Volume / stock.Volume)) : [];

    /// <summary>Twice a limit that was read is certain; a recalled one, or less past it, is what years of use may do.</summary>
    private static Odds OddsOf(ContaminantLimit limit, Check over) => over.IsTwice && !limit.Recalled ? Odds.Certain : Odds.Possible;

    private static Finding Describe(ContaminantOfProduct verdict, RuleContext context)
    {
        var (limit, entry, found) = (verdict.Limit, verdict.Entry, verdict.Over.Value);
        return context.Find(
            entry.Place.Child("impurities").Child(limit.Element).Key,
            $"'{entry.Substance.Name}' is declared with {Say.Number(found)} mg of {limit.Element} per {limit.Per}; the limit for such "
                + $"a fertiliser is {Say.Number(limit.Milligrams)} mg. "
            + "It stays in the substrate and in the crop, and no later step takes it out. Ask the supplier for a purer grade, and "
            + "check the law that holds where you are.",
            Harm.Person,
            OddsOf(limit, verdict.Over),
            limit.Recalled ? Certainty.Practice : Certainty.Computed) with
        {
            Measured = new Measured(limit.Element, found, limit.Milligrams, "mg/kg"),
            Values = [new NamedValue(limit.Element, found, "mg/kg"), new NamedValue("limit", limit.Milligrams, "mg/kg")],
        };
    }

    private static Finding Describe(ContaminantOfSolution verdict, RuleContext context)
    {
        var (limit, recipe, found) = (verdict.Limit, verdict.Recipe, verdict.Over.Value);
        var place = RecipePlaces.Doses(recipe);
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#{limit.Element}",
            $"The declared impurities bring {Say.Number(found)} mg/L {limit.Element} into the final solution; irrigation water should "
                + $"not hold more than {Say.Number(limit.Milligrams)} mg/L. "
            + "Plants take it up, or it poisons their roots. Use a purer grade of the product that brings most.",
            Harm.Person,
            OddsOf(limit, verdict.Over),
            limit.Recalled ? Certainty.Practice : Certainty.Computed) with
        {
            Measured = new Measured(limit.Element, found, limit.Milligrams, "mg/L"),
            Values = [new NamedValue(limit.Element, found, "mg/L"), new NamedValue("limit", limit.Milligrams, "mg/L")],
            Related =
            [
                .. verdict.Shares.DistinctBy(s => s.Addition.Place).Take(3)
                    .Select(s => new RelatedPlace(s.Addition.Place, $"{s.Addition.Substance.Name} brings "
                        + $"{Say.Number(s.Milligrams / recipe.FinalVolume.Litres)} mg/L {limit.Element}")),
            ],
        };
    }

    private static Working Work(ContaminantOfProduct verdict)
    {
        var limit = verdict.Limit;
        var work = new WorkingBuilder($"{limit.Element} in '{verdict.Entry.Substance.Name}'");
        var content = work.Given($"{limit.Element} declared", verdict.Content * 1e6, "mg/kg", From.File);
        var counted = work.Given($"a kg of it counts as, {limit.Per}", verdict.KilogramsPerKilogram, "kg/kg", "formula or label");
        var found = work.Result($"per {limit.Per}", "declared / counted", content / counted, "mg");
        return work.Check(verdict.Over, found, work.Given("limit", limit.Milligrams, "mg", "ordinance")).Done(found);
    }

    private static Working Work(ContaminantOfSolution verdict)
    {
        var (element, recipe) = (verdict.Limit.Element, verdict.Recipe);
        var work = new WorkingBuilder($"{element} from declared impurities in '{recipe.Recipe.Name}'");
        var parts = new List<Term>();
        foreach (var share in verdict.Shares)
        {
            var mass = work.Given($"{share.Addition.Substance.Name} that reaches the tank", share.Addition.Mass.Grams * share.Part, "g",
                From.Amounts);
            var content = work.Given($"{element} declared for it", share.Content * 1e6, "mg/kg", "substances file");
            parts.Add(work.Result($"{element} with it", "mass × mg/kg / 1000", mass * content / 1000, "mg"));
        }

        var sum = parts.Count == 1 ? parts[0] : work.Result($"{element} in all", "sum", Term.Sum(parts), "mg");
        var found = work.Result($"{element} in the solution", "sum / final volume",
            sum / work.Given("final volume", recipe.FinalVolume.Litres, "L", From.File), "mg/L");
        return work.Check(verdict.Over, found, work.Given("limit", verdict.Limit.Milligrams, "mg/L",
            "FAO paper 29")).Statements(verdict).Done(found);
    }
}

/// <summary>A declared impurity against a limit.</summary>
internal abstract record DeclaredContaminant(ContaminantLimit Limit, Check Over) : Verdict;

/// <summary>Of a product, against the limit for fertilisers.</summary>
/// <param name="Content">g/g.</param>
/// <param name="KilogramsPerKilogram">What a kg of it counts as (of product, of P2O5 or of trace nutrients).</param>
internal sealed record ContaminantOfProduct(
    ContaminantLimit Limit, Check Over, ShopSubstance Entry, double Content, double KilogramsPerKilogram)
    : DeclaredContaminant(Limit, Over);

/// <summary>Of a final solution, against the limit for irrigation water.</summary>
/// <param name="Shares">What brings it, the most first.</param>
internal sealed record ContaminantOfSolution(ContaminantLimit Limit, Check Over, RecipeFacts Recipe, IReadOnlyList<ContaminantShare> Shares)
    : DeclaredContaminant(Limit, Over);

/// <summary>What one addition brings of a contaminant.</summary>
/// <param name="Part">Of the addition that reaches the solution.</param>
/// <param name="Content">g/g.</param>
internal sealed record ContaminantShare(AdditionFacts Addition, double Part, double Content)
{
    public double Milligrams => Part * Addition.Mass.Grams * 1000 * Content;
}
