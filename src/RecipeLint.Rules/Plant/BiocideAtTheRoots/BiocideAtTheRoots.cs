using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Preservation;

namespace RecipeLint.Rules.Plant;

/// <summary>Peroxide, preservatives and what else kills life in water, in what the plants get.</summary>
internal sealed class BiocideAtTheRoots : RecipeRule<BiocideAtTheRoots.Dose>
{
    public const string RuleName = "biocide-at-the-roots";

    private const string NoPreservative = "preservative goes into it that no rule on its stock speaks of";

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<Dose> Judge(RecipeFacts recipe, RuleContext context)
    {
        var holding = Holding.OfWhatIsRead(recipe);
        yield return Peroxide(recipe, holding, context);
        yield return Preservative(recipe, holding);
        if (holding.Items.FirstOrDefault(i => BiocideNames.Has(i.Substance)) is { } named)
        {
            var share = Rounding.SixDigits(1000 * named.Grams / recipe.FinalVolume.Litres);
            yield return new Dose(DoseKind.Named, recipe, named, share)
            {
                Checks = [new Check("any of it", share, Relation.Over, 0, "mg/L")],
            };
        }
    }

    /// <summary>All peroxide that goes in: what iron or roots take away of it on the way is not counted.</summary>
    private static Dose Peroxide(RecipeFacts recipe, Holding holding, RuleContext context)
    {
        var found = Rounding.SixDigits(1000 * HydrogenPeroxide.GramsPerMole * HazardGate.PeroxidePerLitre(holding));
        return new Dose(DoseKind.Peroxide, recipe, holding.First(HazardRole.Peroxide), found)
        {
            Checks = found > 0
                ? [new Check("more than roots bear", found, Relation.AtLeast, context.Options<BiocideAtTheRootsOptions>().NoteFrom, "mg/L")]
                : [Check.That("peroxide goes into it", false)],
        };
    }

    /// <summary>
    /// Preservative of all doses together, but for stocks that bring too much each by itself: of these the rule on the stock speaks.
    /// </summary>
    private static Dose Preservative(RecipeFacts recipe, Holding holding)
    {
        double Carried(DoseFacts dose) =>
            1e6 * PreservativeAcids.Components.Sum(c => dose.ComponentMoles.GetValueOrDefault(c)) / recipe.FinalVolume.Litres;
        if (!recipe.Doses.Any(d => Carried(d) > 0))
        {
            return new Dose(DoseKind.Preservative, recipe, null, 0) { Checks = [Check.That(NoPreservative, false)] };
        }

        var limits = PreservativeAtTheRoots.Of(recipe.Settings);
        var counted = recipe.Doses.Where(d => d.Stock is null || !limits.Check(Rounding.SixDigits(Carried(d))).Holds).ToList();
        var found = Rounding.SixDigits(counted.Sum(Carried));
        var most = holding.Items.Where(i => i.Substance.IsPreservative).MaxBy(i => i.PureGrams);
        return new Dose(DoseKind.Preservative, recipe, most, found)
        {
            Roots = limits,
            Checks = found > 0 ? [limits.Check(found)] : [Check.That(NoPreservative, false)],
        };
    }

    protected override Finding Describe(Dose verdict, RuleContext context)
    {
        var (held, recipe) = (verdict.Held!, verdict.Recipe);
        var place = held.Place is { } own && own.File == recipe.Recipe.Place.File ? own : RecipePlaces.Doses(recipe);
        var check = verdict.Checks[0];
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#{verdict.Kind.ToString().ToLowerInvariant()}",
            Message(verdict, context), verdict.Kind == DoseKind.Peroxide ? Harm.Loss : Harm.Damage, Sure(verdict, context)) with
        {
            Measured = new Measured(What(verdict.Kind), verdict.Found, check.Limit, check.Unit),
            Values = [new NamedValue(What(verdict.Kind), verdict.Found, check.Unit)],
            Related = held.Place is { } from && from != place ? [new RelatedPlace(from, "brings it")] : [],
        };
    }

    private static Odds Sure(Dose verdict, RuleContext context) => verdict.Kind switch
    {
        DoseKind.Peroxide => verdict.Found >= 2 * context.Options<BiocideAtTheRootsOptions>().HarmFrom ? Odds.Certain
            : verdict.Found >= context.Options<BiocideAtTheRootsOptions>().HarmFrom ? Odds.NearTheLimit
            : Odds.Possible,
        DoseKind.Preservative => verdict.Roots!.Sure(verdict.Found),
        _ => Odds.NearTheLimit,
    };

    private static string Message(Dose verdict, RuleContext context)
    {
        var (name, found, limit) = (verdict.Held!.Name, Say.Number(verdict.Found), Say.Number(verdict.Checks[0].Limit));
        var harm = Say.Number(context.Options<BiocideAtTheRootsOptions>().HarmFrom);
        return verdict.Kind switch
        {
            DoseKind.Peroxide => $"The final solution gets {found} mg/L of hydrogen peroxide from {name}. Lettuce seedlings in water "
                + $"culture suffered from {limit} mg/L, and {harm} mg/L in a mineral feed stunted or killed lettuce; it takes iron "
                + "chelates apart as well. "
                + "Treat empty lines or the raw water with it, and let a test strip show that it has gone before plants get it.",
            DoseKind.Preservative => $"The final solution holds {found} µmol/L of preservative, most of it from {name}. "
                + $"{verdict.Roots!.Why} "
                + "Preserve concentrates that are dosed small, and not the tank.",
            _ => $"The final solution gets {found} mg/L of {name}, which is made to kill what lives in water. How much of it roots bear "
                + "is stated nowhere here; roots, leaves and the life in the medium can suffer, and some of it may reach the food. "
                + "Keep it for empty lines and raw water as its label allows, and flush before plants are fed.",
        };
    }

    protected override Working Work(Dose verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"{What(verdict.Kind)} of '{verdict.Recipe.Recipe.Name}'");
        if (verdict.Checks[0].Relation == Relation.True)
        {
            return work.Statements(verdict).Done();
        }

        var found = work.Given(What(verdict.Kind), verdict.Found, verdict.Checks[0].Unit, From.Amounts);
        return (verdict.Kind switch
        {
            DoseKind.Peroxide =>
                work.Check(verdict.Checks[0], found, work.Option("limit", context.Options<BiocideAtTheRootsOptions>().NoteFrom)),
            DoseKind.Preservative =>
                work.Check(verdict.Checks[0], found, work.Option("limit", verdict.Roots!.NoteFrom)),
            _ => work.Check(verdict.Checks[0], found, 0),
        }).Done(found);
    }

    private static string What(DoseKind kind) => kind switch
    {
        DoseKind.Peroxide => "hydrogen peroxide in the feed",
        DoseKind.Preservative => "preservative in the feed",
        _ => "biocide in the feed",
    };

    /// <summary>What kills.</summary>
    internal enum DoseKind
    {
        Peroxide,
        Preservative,

        /// <summary>Known by its name only.</summary>
        Named,
    }

    /// <summary>One of them in a final solution.</summary>
    /// <param name="Held">What brings most of it; null where none goes in.</param>
    /// <param name="Found">In the unit of the check.</param>
    internal sealed record Dose(DoseKind Kind, RecipeFacts Recipe, Held? Held, double Found) : Verdict
    {
        /// <summary>What roots bear of a preservative; null for what is none.</summary>
        public PreservativeAtTheRoots? Roots { get; init; }
    }
}
