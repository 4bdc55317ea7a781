using RecipeLint.Analysis;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>A preservative and bleach or peroxide in one stock: each uses up the other.</summary>
internal sealed class PreservativeWithOxidiser : StockRule<OxidisedPreservative>, IProposesRepairs
{
    public const string RuleName = "preservative-with-oxidiser";

    private static readonly (string Component, string Name)[] _oxidisers = [("inert:ClO-1", "hypochlorite"),
        (HydrogenPeroxide.Component, "hydrogen peroxide")];

    public override string Name => RuleName;

    protected override IEnumerable<OxidisedPreservative> Judge(StockFacts stock, RuleContext context)
    {
        var preservative = PreservativeAcids.Components.Sum(p => stock.Concentration(p).MolesPerLitre);
        var (component, name) = _oxidisers.MaxBy(o => stock.Concentration(o.Component).MolesPerLitre);
        var oxidiser = stock.Concentration(component).MolesPerLitre;
        var source = stock.SuppliersOf(component).FirstOrDefault();
        var both = preservative > 0 && oxidiser > 0 && source is not null;
        var ratio = both
            ? new Check("enough to use it up", Rounding.SixDigits(oxidiser / preservative), Relation.Over,
            context.Options<PreservativeWithOxidiserOptions>().MostOxidiser)
            : null;
        yield return new OxidisedPreservative(stock, name, source, oxidiser, preservative, ratio)
        {
            Checks = [.. ratio is null ? [] : new[] { ratio }, Check.That("a preservative and an oxidiser are both in it", both)],
        };
    }

    protected override Finding Describe(OxidisedPreservative verdict, RuleContext context)
    {
        var (stock, name, source, ratio) = (verdict.Stock, verdict.Name, verdict.Source!, verdict.Ratio!);
        var guarded = stock.Additions.Where(a => PreservativeAcids.Components.Any(p => a.ComponentMoles.GetValueOrDefault(p) > 0)).ToList();
        var names = Say.List(guarded.Select(a => a.Substance.Name).Distinct(StringComparer.Ordinal));
        var (oxidiser, preservative) = (verdict.Oxidiser * 1000, verdict.Preservative * 1000);
        var message = $"'{stock.Stock.Name}' holds {Say.Number(oxidiser)} mmol/L {name} beside {Say.Number(preservative)} mmol/L "
            + $"preservative ({names}), {Say.Number(ratio.Value)} for each. "
            + "They use each other up: the preservative is oxidised or chlorinated, the disinfectant is spent, and after days neither "
            + "protects the stock. "
            + $"Choose one: leave {source.Substance.Name} out of a stock that is kept, and disinfect the empty tank with it instead.";
        return context.Find(source.Place, message, Harm.Damage, Odds.Certain) with
        {
            Related = [.. guarded.Select(a => new RelatedPlace(a.Place, "is used up by it"))],
            Measured = new Measured("oxidiser for each preservative", ratio.Value, ratio.Limit, ""),
            Values =
            [
                new NamedValue(name, oxidiser, "mmol/L"),
                new NamedValue("preservative", preservative, "mmol/L"),
                new NamedValue("oxidiser for each preservative", ratio.Value, ""),
            ],
        };
    }

    protected override Working Work(OxidisedPreservative verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"preservative beside an oxidiser in '{verdict.Stock.Stock.Name}'");
        var oxidiser = work.Given(verdict.Name, 1000 * verdict.Oxidiser, "mmol/L", From.Amounts);
        var preservative = work.Given("preservative", 1000 * verdict.Preservative, "mmol/L", From.Amounts);
        if (verdict.Ratio is not { } check)
        {
            return work.Statements(verdict).Done();
        }

        var ratio = work.Result("oxidiser for each preservative", "oxidiser / preservative", oxidiser / preservative);
        return work.Check(check, ratio, work.Option("limit",
            context.Options<PreservativeWithOxidiserOptions>().MostOxidiser)).Statements(verdict).Done(ratio);
    }

    /// <summary>One of the two out.</summary>
    protected override IEnumerable<RepairProposal> Repair(OxidisedPreservative verdict, Finding finding, RepairContext context) =>
        Additions.DropOneOf(finding, context);
}

/// <summary>How much oxidiser there is for each preservative.</summary>
/// <param name="Name">The oxidiser there is most of.</param>
/// <param name="Source">What brings it; null where nothing does.</param>
/// <param name="Oxidiser">mol/L.</param>
/// <param name="Preservative">mol/L.</param>
/// <param name="Ratio">Null where one of the two is not there.</param>
internal sealed record OxidisedPreservative(
    StockFacts Stock, string Name, AdditionFacts? Source, double Oxidiser, double Preservative, Check? Ratio) : Verdict;
