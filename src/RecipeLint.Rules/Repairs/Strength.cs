using RecipeLint.Analysis;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>A stock made weaker or stronger: its amounts and its dose change together, so that the plants get the same.</summary>
internal static class Strength
{
    /// <summary>Weaker than this part, the bottle becomes a barrel.</summary>
    private const double Weakest = 0.1;

    /// <summary>The strongest weaker dilution that holds, the one that the finding tells of before all others.</summary>
    /// <param name="nearest">What is known not to hold; null when nothing is known.</param>
    public static RepairProposal? Weaker(RepairContext context, StockFacts stock, NearestClear? nearest = null) =>
        DoseOf(context, stock) is { } dose
            ? new RepairProposal.Ladder(Dilutions(nearest, dose)
                .Where(d => d * dose <= (nearest?.Factor ?? 1) && d * dose < 0.98 && d * dose >= Weakest)
                .Select(d => With(context, stock, dose, 1 / d, "weaker"))
                .OfType<Repair>())
            : null;

    /// <summary>The weakest stronger dilution that holds.</summary>
    public static RepairProposal? Stronger(RepairContext context, StockFacts stock) =>
        DoseOf(context, stock) is { } dose
            ? new RepairProposal.Ladder(NearestClear.UsualDilutions.Reverse()
                .Where(d => d * dose is > 1.02 and <= 10)
                .Select(d => With(context, stock, dose, 1 / d, "stronger"))
                .OfType<Repair>())
            : null;

    private static IEnumerable<double> Dilutions(NearestClear? nearest, double dose) =>
        NearestClear.UsualDilutions.Select(d => (double)d)
            .Concat(nearest?.ToldDilution(new(dose)) is { } told ? [told] : Array.Empty<double>())
            .Distinct().OrderDescending();

    private static double? DoseOf(RepairContext context, StockFacts stock) =>
        stock.Stock.Dose?.Value.LitresPerLitre
            ?? context.UsersOf(stock).Select(u => u.Dose.Dose?.LitresPerLitre).FirstOrDefault(d => d is > 0);

    /// <param name="dose">As it stands, L/L.</param>
    /// <param name="wanted">As it is to be, L/L.</param>
    private static Repair? With(RepairContext context, StockFacts stock, double dose, double wanted, string key)
    {
        var factor = dose / wanted;
        var edits = new List<JsonEdit?>();
        foreach (var addition in stock.Additions.Where(a => !a.ThroughAliquot))
        {
            edits.Add(Amounts.Times(context, addition, factor)?.Edit);
        }

        edits.AddRange(stock.Stock.Steps.OfType<AliquotStep>().Select(a => Amounts.Times(context, a.Place.Child("amount"), factor)?.Edit));
        edits.AddRange(context.AliquotsOf(stock).Select(a => Amounts.Times(context, a.Step.Place.Child("amount"), 1 / factor)?.Edit));
        if (stock.Stock.Dose is { } own)
        {
            edits.Add(Amounts.Times(context, own.Place, 1 / factor)?.Edit);
        }

        edits.AddRange(context.UsersOf(stock).Where(u => u.Dose.Entry is StockDose { Dose: not null } or StockDose { Amount: not null }
            or StockDose { Strokes: not null } || stock.Stock.Dose is null)
            .Select(u => Dose(context, (StockDose)u.Dose.Entry, 1 / factor)));
        if (edits.Count == 0 || edits.Contains(null))
        {
            return null;
        }

        var how = factor < 1 ? "weaker" : "stronger";
        return Repair.Chemistry(
            key,
            $"Make '{stock.Stock.Name}' {how}, for 1:{Say.Number(1 / wanted)} instead of 1:{Say.Number(1 / dose)}: all amounts times "
                + $"{Say.Number(factor)}, and {Say.Number(wanted * 1000)} mL for each litre.",
            [.. edits.OfType<JsonEdit>()]);
    }

    private static JsonEdit? Dose(RepairContext context, StockDose entry, double factor)
    {
        if (entry.Dose is { } dose)
        {
            return Amounts.Times(context, dose.Place, factor)?.Edit;
        }

        if (entry.Amount is { } amount)
        {
            return Amounts.Times(context, amount.Place, factor)?.Edit;
        }

        return entry.Strokes is { } strokes
            && strokes.Value * factor is var count
            && Math.Abs(count - Math.Round(count)) < 1e-6
            && context.Item(strokes.Place) is { Kind: JsonKind.Number }
            ? new JsonEdit.ReplaceValue(strokes.Place, new JsonDraft.Literal(FormattableString.Invariant($"{Math.Round(count)}")))
            : null;
    }
}
