using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>
/// A bench sheet whose label leaves out what the next person needs. The hazard itself is looked after by the family that protects people.
/// </summary>
public sealed class LabelIncomplete : StockRule, IProposesRepairs
{
    private static readonly string[] _partners = ["SO4-2", "H2PO4-", "CO3-2", "H4SiO4"];

    public override string Name => "label-incomplete";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.Stock.ForBench)
        {
            yield break;
        }

        var label = stock.Stock.Label;
        var missing = new List<string>();
        Miss(label?.Contents, "what is in it");
        Miss(label?.Dilution, "the dilution");
        Miss(label?.Date, "the date it was made");
        if (Enemy(stock, context.Number("reacts")) is { } enemy)
        {
            Miss(label?.KeepApart, $"that it must not meet {enemy} undiluted");
        }

        if (missing.Count == 0)
        {
            yield break;
        }

        var start = label is null ? $"'{stock.Stock.Name}' is a bench sheet without a label" : $"The label of '{stock.Stock.Name}' is incomplete";
        yield return context.Find(
            label?.Place ?? stock.Stock.Place,
            $"{start}: it does not say {Say.List(missing)}. "
            + "Two clear liquids in like bottles cannot be told apart a month later, and a wrong dose of a concentrate costs the crop. "
            + "Write these on the label before the bottle is filled.") with
        {
            Values = [new NamedValue("entries missing", missing.Count, "")],
        };

        void Miss(bool? stated, string what)
        {
            if (stated != true)
            {
                missing.Add(what);
            }
        }
    }

    /// <summary>The other part that would cloud with this one, judged by what is in it; null when there is none to speak of.</summary>
    internal static string? Enemy(StockFacts stock, double millimolesPerLitre)
    {
        if (stock.Concentration("Ca+2").MolesPerLitre * 1000 >= millimolesPerLitre)
        {
            return "a sulfate or phosphate stock";
        }

        return _partners.Any(p => stock.Concentration(p).MolesPerLitre * 1000 >= millimolesPerLitre) ? "a calcium stock" : null;
    }

    /// <summary>What the label lacks, worked out from the file.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        var label = stock.Stock.Label;
        var members = new List<(string Name, string Value)>();
        if (label?.Contents != true)
        {
            members.Add(("contents", Say.List(stock.Additions.Select(a => a.Substance.Name).Distinct(StringComparer.Ordinal))));
        }

        if (label?.Dilution != true)
        {
            members.Add(("dilution", stock.Stock.Dose is { } dose ? $"{Say.Number(dose.Value.MillilitresPerLitre)} mL per litre" : "as the recipe says"));
        }

        if (label?.Date != true)
        {
            members.Add(("date", "made on"));
        }

        if (label?.KeepApart != true && Enemy(stock, context.Rule.Number("reacts")) is { } enemy)
        {
            members.Add(("keepApart", $"Never let it meet {enemy} undiluted"));
        }

        if (members.Count > 0)
        {
            yield return Repair.Chemistry("complete-label", $"Put on the label: {Say.List(members.Select(m => $"\"{m.Value}\""))}.", Labels.Add(context, stock, [.. members]));
        }
    }
}
