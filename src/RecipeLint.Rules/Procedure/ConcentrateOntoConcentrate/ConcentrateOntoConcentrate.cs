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
internal sealed class ConcentrateOntoConcentrate : StockRule<StrongMeeting>, IProposesRepairs
{
    public const string RuleName = "concentrate-onto-concentrate";

    private static readonly string[] _partners = [BenchChemistry.Sulfate, BenchChemistry.Phosphate];

    public override string Name => RuleName;

    /// <summary>The first step past the limit, else the one that comes nearest to it.</summary>
    protected override IEnumerable<StrongMeeting> Judge(StockFacts stock, RuleContext context)
    {
        var both = stock.Additions.Any(a => BenchChemistry.Brings(a, BenchChemistry.Calcium))
            && _partners.Any(p => stock.Additions.Any(a => BenchChemistry.Brings(a, p)));
        if (!both || !stock.Mixing.IsProcedure || !stock.IsComplete || Worst(stock.Mixing.FinishedState) is not { } end)
        {
            return [Silent(stock, "calcium and sulfate or phosphate both go in, in steps that say how")];
        }

        (MixingStep Moment, SolidIndex Worst)? nearest = null;
        var limit = context.Options<ConcentrateOntoConcentrateOptions>().Index;
        foreach (var moment in stock.Mixing.Steps.Where(m => m.Added.Count > 0 && m.Before.FreeWaterGrams > 0))
        {
            if (Worst(stock.Mixing.States[moment.Index]) is not { } worst)
            {
                continue;
            }

            if (nearest is null || worst.Index > nearest.Value.Worst.Index)
            {
                nearest = (moment, worst);
            }

            if (Rounding.SixDigits(worst.Index) > limit)
            {
                break;
            }
        }

        if (nearest is not var (at, met))
        {
            return [Silent(stock, "they meet in water that was poured before")];
        }

        var index = new Check("far enough past the limit to form at once", Rounding.SixDigits(met.Index), Relation.Over, limit);
        var clear = new Check("and clear at the finished volume", end.Index, Relation.AtMost, 0);
        return [new StrongMeeting(stock, at, met.Solid, index, clear) { Checks = [index, clear] }];
    }

    protected override Finding Describe(StrongMeeting verdict, RuleContext context)
    {
        var (moment, solid, index) = (verdict.Moment!, verdict.Solid!, verdict.Index!);
        var state = verdict.Stock.Mixing.States[moment.Index];
        var partner = _partners.First(p => BenchChemistry.Holds(solid, p));
        var grams = state.Solids
            .Where(s => s.Undissolved is null && s.Solid is { } formed && BenchChemistry.IsOfCalciumWithItsPartner(formed))
            .Sum(s => s.Mass.Grams);
        var forms = grams > 0 ? $"about {Say.Grams(grams)} of {Called(solid)} forms" : $"{Called(solid)} can form";
        var water = moment.After.FreeWaterLitres;
        var needed = Needed(verdict.Stock, moment);
        var other = moment.Added.Any(a => BenchChemistry.Brings(a, BenchChemistry.Calcium)) ? partner : BenchChemistry.Calcium;
        var earlier = moment.Before.Additions.LastOrDefault(a => BenchChemistry.Brings(a, other));
        return context.Find(
            moment.Step.Place,
            $"Calcium meets {(partner == BenchChemistry.Sulfate ? "sulfate" : "phosphate")} in only {Say.Litres(water)} of water: "
                + $"{forms} there "
            + $"({Precipitation.Wording.Times(index.Value, solid)}), although the finished volume would stay clear. Once formed it "
                + "dissolves "
            + "again only over hours, and what is left at the bottom is missing in the stock. "
            + $"Have at least {Say.Litres(needed)} of water in the vessel before the two meet.",
            Harm.Damage,
            Odds.Certain) with
        {
            Measured = new Measured("saturation index", index.Value, index.Limit, ""),
            Values =
            [
                new NamedValue("saturation index", index.Value, ""),
                new NamedValue("water", water, "L"),
                new NamedValue("water needed", needed, "L"),
                new NamedValue("solid", grams, "g"),
            ],
            Related = earlier is null ? [] : [new RelatedPlace(earlier.Place, "already in the vessel")],
        };
    }

    protected override Working Work(StrongMeeting verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"calcium meeting sulfate or phosphate while '{verdict.Stock.Stock.Name}' is mixed");
        if (verdict is not { Moment: { } moment, Index: { } check, Clear: { } clear, Solid: { } solid })
        {
            return work.Statements(verdict).Done();
        }

        work.Given($"water in the vessel at step '{moment.Step.Id}'", moment.After.FreeWaterLitres, "L", From.File);
        var (_, index) = Saturation.Write(work, BenchChemistry.Clear(verdict.Stock.Mixing.States[moment.Index])!, solid);
        work.Check(check, index, work.Option("limit", context.Options<ConcentrateOntoConcentrateOptions>().Index));
        return work.Check(clear, work.Given("index at the finished volume", clear.Value, "", From.Engine), 0).Done(index);
    }

    /// <summary>Enough water before the two meet.</summary>
    protected override IEnumerable<RepairProposal> Repair(StrongMeeting verdict, Finding finding, RepairContext context) =>
        Pours.MoreWater(
            finding, context, verdict.Moment is { } moment ? Needed(verdict.Stock, moment) - moment.After.FreeWaterLitres : 0);

    private static StrongMeeting Silent(StockFacts stock, string what) =>
        new(stock, null, null, null, null) { Checks = [Check.That(what, false)] };

    private static SolidIndex? Worst(MixingState state)
    {
        if (BenchChemistry.Clear(state) is not { } clear)
        {
            return null;
        }

        var found = BenchChemistry.FormingReadily(clear, BenchChemistry.IsOfCalciumWithItsPartner).ToList();
        return found.Count == 0 ? null : found[0];
    }

    /// <summary>Litres of water that leave it clear, or nearly all that the stock has room for.</summary>
    private static double Needed(StockFacts stock, MixingStep moment) =>
        Math.Max(moment.After.FreeWaterLitres, Math.Min(WaterToStayClear(moment.After), FirstWater.RoundedUp(0.95 * stock.Volume.Litres)));

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

        return FirstWater.RoundedUp((contents.FreeWaterGrams + high) / 1000);

        bool Clear(double extra) =>
            BenchChemistry.Clear(MixingState.AtRest(contents.WithPureWater(new Volume(extra / 1000)))) is { } state
            && BenchChemistry.FormingReadily(state, BenchChemistry.IsOfCalciumWithItsPartner).All(s => s.Index <= 0);
    }

    private static string Called(Solid solid) => solid.Name switch
    {
        "Gypsum" => "gypsum (calcium sulfate)",
        "Brushite" => "brushite (calcium phosphate)",
        "Syngenite" => "syngenite (potassium calcium sulfate)",
        var name => $"{name} ({solid.Formula})",
    };
}

/// <summary>Calcium and its partner in one vessel.</summary>
/// <param name="Moment">The step at which they meet; null where they do not.</param>
/// <param name="Index">Saturation index there.</param>
/// <param name="Clear">Saturation index at the finished volume.</param>
internal sealed record StrongMeeting(StockFacts Stock, MixingStep? Moment, Solid? Solid, Check? Index, Check? Clear) : Verdict;
