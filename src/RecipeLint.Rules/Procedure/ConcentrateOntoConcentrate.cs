using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>
/// Calcium and sulfate or phosphate that meet in too little water while the stock is mixed, although the finished volume would stay clear.
/// </summary>
public sealed class ConcentrateOntoConcentrate : StockRule, IProposesRepairs
{
    internal static readonly string[] Partners = ["SO4-2", "H2PO4-"];

    public override string Name => "concentrate-onto-concentrate";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!Brings(stock.Additions, "Ca+2") || !Partners.Any(p => Brings(stock.Additions, p)))
        {
            yield break;
        }

        var moments = stock.Mixing.Steps;
        var limit = context.Number("index");
        if (!stock.Mixing.IsProcedure || !stock.IsComplete || Worst(stock.Mixing.FinishedState) is not { } end || end.Index > 0)
        {
            yield break;
        }

        foreach (var moment in moments.Where(m => m.Added.Count > 0 && m.Before.FreeWaterGrams > 0))
        {
            var state = stock.Mixing.States[moment.Index];
            if (Worst(state) is not { } worst || Rounding.SixDigits(worst.Index) <= limit)
            {
                continue;
            }

            var partner = Partners.First(p => BenchChemistry.Holds(worst.Solid, p));
            var grams = state.Solids.Where(s => s.Undissolved is null && s.Solid is { } formed && Fits(formed)).Sum(s => s.Mass.Grams);
            var forms = grams > 0 ? $"about {Say.Grams(grams)} of {Called(worst.Solid)} forms" : $"{Called(worst.Solid)} can form";
            var water = moment.After.FreeWaterLitres;
            var needed = WaterToStayClear(moment.After);
            var earlier = moment.Before.Additions.LastOrDefault(a => BringsOne(a, Brings(moment.Added, "Ca+2") ? partner : "Ca+2"));
            yield return context.Find(
                moment.Step.Place,
                $"Calcium meets {(partner == "SO4-2" ? "sulfate" : "phosphate")} in only {Say.Litres(water)} of water: {forms} there "
                + $"({Precipitation.Wording.Times(worst.Index)}), although the finished volume would stay clear. Once formed it dissolves again only over hours, and what is left at the bottom is missing in the stock. "
                + $"Have at least {Say.Litres(needed)} of water in the vessel before the two meet.") with
            {
                Measured = new Measured("saturation index", worst.Index, limit, ""),
                Values =
                [
                    new NamedValue("saturation index", worst.Index, ""),
                    new NamedValue("water", water, "L"),
                    new NamedValue("water needed", needed, "L"),
                    new NamedValue("solid", grams, "g"),
                ],
                Related = earlier is null ? [] : [new RelatedPlace(earlier.Place, "already in the vessel")],
            };
            yield break;
        }
    }

    internal static bool Brings(IEnumerable<AdditionFacts> additions, string component) => additions.Any(a => BringsOne(a, component));

    private static bool BringsOne(AdditionFacts addition, string component) => addition.ComponentMoles.GetValueOrDefault(component) > 0;

    /// <summary>True for a solid of calcium with sulfate or phosphate.</summary>
    internal static bool Fits(Solid solid) => BenchChemistry.Holds(solid, "Ca+2") && Partners.Any(p => BenchChemistry.Holds(solid, p));

    internal static SolidIndex? Worst(MixingState state)
    {
        if (BenchChemistry.Clear(state) is not { } clear)
        {
            return null;
        }

        var found = BenchChemistry.FormingReadily(clear, Fits).ToList();
        return found.Count == 0 ? null : found[0];
    }

    /// <summary>Litres of water in which what is in the vessel stays clear, by halving the gap; rounded up to two digits.</summary>
    private static double WaterToStayClear(VesselContents contents)
    {
        double low = 0, high = contents.FreeWaterGrams;
        for (var i = 0; i < 12 && !Clear(high); i++)
        {
            low = high;
            high *= 2;
        }

        for (var i = 0; i < 12; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Clear(middle) ? (low, middle) : (middle, high);
        }

        var litres = (contents.FreeWaterGrams + high) / 1000;
        var step = Math.Pow(10, Math.Floor(Math.Log10(litres)) - 1);
        return Math.Ceiling(litres / step) * step;

        bool Clear(double extra) =>
            BenchChemistry.Clear(MixingState.AtRest(contents.WithPureWater(new Volume(extra / 1000)))) is { } state
            && BenchChemistry.FormingReadily(state, Fits).All(s => s.Index <= 0);
    }

    private static string Called(Solid solid) => solid.Name switch
    {
        "Gypsum" => "gypsum (calcium sulfate)",
        "Brushite" => "brushite (calcium phosphate)",
        "Syngenite" => "syngenite (potassium calcium sulfate)",
        var name => $"{name} ({solid.Formula})",
    };

    /// <summary>Enough water before the two meet.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Pours.MoreWater(finding, context);
}
