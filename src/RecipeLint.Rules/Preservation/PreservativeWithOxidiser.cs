using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>A preservative and bleach or peroxide in one stock: each uses up the other.</summary>
public sealed class PreservativeWithOxidiser : StockRule, IProposesRepairs
{
    internal static readonly (string Component, string Name)[] Oxidisers = [("inert:ClO-1", "hypochlorite"), ("inert:H2O2", "hydrogen peroxide")];

    internal static readonly string[] Preservatives = ["Benzoate-", "Sorbate-", "inert:propionate-1"];

    public override string Name => "preservative-with-oxidiser";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var preservative = Preservatives.Sum(p => stock.Concentration(p).MolesPerLitre);
        var (component, name) = Oxidisers.MaxBy(o => stock.Concentration(o.Component).MolesPerLitre);
        var oxidiser = stock.Concentration(component).MolesPerLitre;
        if (preservative <= 0 || oxidiser <= 0 || stock.SuppliersOf(component).FirstOrDefault() is not { } source)
        {
            yield break;
        }

        var ratio = Rounding.SixDigits(oxidiser / preservative);
        var limit = context.Number("mostOxidiser");
        if (ratio <= limit)
        {
            yield break;
        }

        var guarded = stock.Additions.Where(a => Preservatives.Any(p => a.ComponentMoles.GetValueOrDefault(p) > 0)).ToList();
        var names = Say.List(guarded.Select(a => a.Substance.Name).Distinct(StringComparer.Ordinal));
        var message = $"'{stock.Stock.Name}' holds {Say.Number(oxidiser * 1000)} mmol/L {name} beside {Say.Number(preservative * 1000)} mmol/L preservative ({names}), {Say.Number(ratio)} for each. "
            + "They use each other up: the preservative is oxidised or chlorinated, the disinfectant is spent, and after days neither protects the stock. "
            + $"Choose one: leave {source.Substance.Name} out of a stock that is kept, and disinfect the empty tank with it instead.";
        yield return context.Find(source.Place, message) with
        {
            Related = [.. guarded.Select(a => new RelatedPlace(a.Place, "is used up by it"))],
            Measured = new Measured("oxidiser for each preservative", ratio, limit, ""),
            Values =
            [
                new NamedValue(name, oxidiser * 1000, "mmol/L"),
                new NamedValue("preservative", preservative * 1000, "mmol/L"),
                new NamedValue("oxidiser for each preservative", ratio, ""),
            ],
        };
    }

    /// <summary>One of the two out.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Additions.DropOneOf(finding, context);
}
