using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>More preservative than the plants should get, or so much that it is about to crystallise on a cold night.</summary>
public sealed class PreservativeTooStrong : StockRule, IProposesRepairs
{
    /// <summary>
    /// Setschenow constant of benzoic acid in salts of the kind of NaCl and KCl, L/mol; 0.14 to 0.19 are published (recalled). Sorbic acid: none known.
    /// </summary>
    internal const double SaltingOut = 0.16;

    public override string Name => "preservative-too-strong";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var dosed = stock.Additions
            .Where(a => a.Substance.IsPreservative && a.Mass.Grams > 0)
            .OrderByDescending(a => a.Mass.Grams)
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .FirstOrDefault();
        return dosed is null ? [] : new[] { CarryOver(stock, context, dosed), NearSolubility(stock, context, dosed) }.OfType<Finding>();
    }

    private static Finding? CarryOver(StockFacts stock, RuleContext context, AdditionFacts dosed)
    {
        var concentration = stock.Concentration("Benzoate-").MolesPerLitre
            + stock.Concentration("Sorbate-").MolesPerLitre
            + stock.Concentration("inert:propionate-1").MolesPerLitre;
        var doses = context.Facts.Recipes
            .SelectMany(r => r.Doses.Where(d => d.Stock?.Stock.File == stock.Stock.File).Select(d => d.Volume / r.FinalVolume))
            .ToList();
        var dose = doses.Count > 0 ? doses.Max() : stock.Stock.Dose?.Value.LitresPerLitre ?? 0;
        var carried = Rounding.SixDigits(concentration * dose * 1e6);
        var limit = context.Number("mostCarriedOver");
        if (carried <= limit)
        {
            return null;
        }

        var grams = dosed.Mass.Grams / stock.Volume.Litres * limit / carried;
        var message = $"'{stock.Stock.Name}' carries {Say.Number(carried)} µmol/L of preservative to the plants at {Say.Number(dose * 1000)} mL/L. "
            + $"Benzoic acid held back strawberry plantlets from {Say.Number(limit)} µmol/L on, and slime in the tank lives on the rest. "
            + $"Use at most {Say.Number(Math.Floor(grams * 100) / 100)} g/L of {dosed.Substance.Name}, or make the stock stronger and dose less of it.";
        return context.Find(dosed.Place, IdPath.Of(context.Facts.Workspace, dosed.Place) + "#carried", message, carried >= context.Number("harmFrom") ? Level.Warning : Level.Note) with
        {
            Measured = new Measured("preservative in the feed", carried, limit, "µmol/L"),
            Values = [new NamedValue("preservative in the feed", carried, "µmol/L"), new NamedValue("dose", dose * 1000, "mL/L")],
        };
    }

    private static Finding? NearSolubility(StockFacts stock, RuleContext context, AdditionFacts dosed)
    {
        var coldest = stock.Chemistry.Coldest;
        if (!stock.IsComplete || !coldest.IsSolved || coldest.Preservatives.Count == 0)
        {
            return null;
        }

        // What crystallises by the constants is a deposit, and the rules on deposits speak of it.
        var (acid, index) = coldest.Preservatives.Select(p => (p, IndexOf(p, coldest))).MaxBy(p => p.Item2);
        var used = Rounding.SixDigits(Math.Pow(10, index) * 100);
        var limit = context.Number("closeTo");
        if (acid.Index > 0 || used <= limit)
        {
            return null;
        }

        var salted = index > acid.Index + 0.02 ? ", because the salts push it out" : "";

        // A little less than in proportion: with less of the salt the stock is more acid.
        var grams = 0.95 * dosed.Mass.Grams / stock.Volume.Litres * limit / used;
        var message = $"At {Say.Number(coldest.Temperature.Celsius)} °C the {acid.Acid} of '{stock.Stock.Name}' stands at {Say.Number(used)} % of what stays dissolved at pH {Say.Number(Math.Round(coldest.Ph, 2))}{salted}. "
            + "A colder night or a splash of acid brings shiny plates that float, clog the tube and leave the stock unprotected. "
            + $"Use at most {Say.Number(Math.Floor(grams * 100) / 100)} g/L of {dosed.Substance.Name}, or keep the stock warmer.";
        return context.Find(dosed.Place, message) with
        {
            Measured = new Measured("share of the solubility", used, limit, "%"),
            Values =
            [
                new NamedValue("share of the solubility", used, "%"),
                new NamedValue("temperature", coldest.Temperature.Celsius, "°C"),
                new NamedValue("undissociated " + acid.Acid, acid.Undissociated.GramsPerLitre * 1000, "mg/L"),
            ],
        };
    }

    internal static double IndexOf(PreservativeAcid acid, SolutionState state) =>
        acid.Index + (acid.Component == "Benzoate-" ? SaltingOut * state.IonicStrengthMolPerKg : 0);

    /// <summary>Less of it, or a warmer place.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (context.AdditionAt(stock, finding.Place) is { } preservative)
        {
            yield return Additions.Less(context, preservative);
        }

        if (finding.Values.Any(v => v.Name == "temperature"))
        {
            yield return Keep.Warmer(context, stock);
        }
        else if (Strength.Stronger(context, stock) is { } stronger)
        {
            yield return stronger;
        }
    }
}
