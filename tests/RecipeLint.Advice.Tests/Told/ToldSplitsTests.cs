using RecipeLint.Advice.Splitting;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>Plans of a split with every step of every part, and why nothing less or nothing else does.</summary>
public sealed class ToldSplitsTests
{
    public static TheoryData<string, string> Asked() => new()
    {
        { "feed", "" }, { "still", "" }, { "b", "" }, { "gypsum", "" }, { "meet", "" }, { "nine", "" }, { "rain", "" }, { "hard", "" },
        { "portions", "" }, { "dry", "" }, { "acid", "" }, { "rush", "" }, { "pyro", "" },
        { "gypsum", "parts 2" }, { "gypsum", "parts 3" }, { "gypsum", "parts 6" }, { "gypsum", "strength 400" }, { "gypsum", "strength 2" },
        { "gypsum", "cold" }, { "gypsum", "batch" }, { "portions", "strength 250" }, { "trace", "rejected" }, { "feed", "rejected" },
        { "mended", "strength 1000" }, { "set", "" }, { "cleaner", "" }, { "strange", "" }, { "colourful", "" }, { "colourful", "parts 2" }, { "neutral", "" }, { "slowly", "strength 10" }, { "glass", "parts 1" }, { "fizz", "" }, { "still", "parts 3" },
    };

    [Theory]
    [MemberData(nameof(Asked))]
    public void SplittingProposesThis(string name, string asked)
    {
        var request = Request(asked);
        var proposal = ToldShop.Facts.Recipes.Any(r => r.Recipe.File == $"{name}.recipe.json")
            ? Splitter.Of(ToldShop.Recipe(name), ToldShop.Around("b.stock.json"), request)
            : Splitter.Of(ToldShop.Stock(name), ToldShop.Around($"{name}.stock.json"), request);
        var text = new ToldText().Line($"of {proposal.Of}, wanted 1:{proposal.WantedDilution}, looked at 1:{proposal.LookedAtDilution}, {proposal.Storage.Low.Celsius} to {proposal.Storage.High.Celsius} °C, in {proposal.Water} (replaced {proposal.WaterReplaced})")
            .Line($"refused {proposal.Refused?.Hazard.Kind}; {proposal.Failure}; stays wrong {proposal.StaysWrong}; fewer groupings {proposal.FewerGroupings}");
        foreach (var unit in proposal.Units)
        {
            text.Line($"unit {unit.Kind} {unit.Name}, divides {unit.CanBeDivided}: {string.Join(", ", unit.Ingredients.Select(i => FormattableString.Invariant($"{i.Substance.Id} {i.Mass.GramsPerLitre:G4} {i.Assay?.Value} from {string.Join('+', i.From)}")))}");
        }

        if (proposal.Plan is { } plan)
        {
            Write(text, "plan", plan, steps: true);
        }

        foreach (var other in proposal.Alternatives)
        {
            Write(text, "or", other, steps: false);
        }

        Write(text, "fewer", proposal.Fewer);
        Write(text, "elsewhere", proposal.Elsewhere);
        Write(text, "rejected", proposal.Rejected);
        Write(text, "in its own water", proposal.WithRecipeWater);
        foreach (var (key, before) in proposal.Before.OrderBy(b => b.Key, StringComparer.Ordinal))
        {
            text.Line($"{key} {before:G4} {proposal.Final?.MilligramsPerLitre(key):G4} mg/L");
        }

        text.Hold($"splitting-{name}{(asked.Length > 0 ? "-" + asked.Replace(' ', '-') : "")}");
    }

    private static SplitRequest Request(string asked) => asked.Split(' ') switch
    {
        ["parts", var n] => new SplitRequest { Parts = int.Parse(n, System.Globalization.CultureInfo.InvariantCulture) },
        ["strength", var n] => new SplitRequest { Strength = Dose.OneIn(double.Parse(n, System.Globalization.CultureInfo.InvariantCulture)) },
        ["cold"] => new SplitRequest { At = new Interval<Temperature>(new Temperature(0), new Temperature(15)) },
        ["batch"] => new SplitRequest { Batch = new Volume(2.5) },
        ["rejected"] => new SplitRequest { ListRejected = true, Strength = Dose.OneIn(200) },
        _ => new SplitRequest(),
    };

    private static void Write(ToldText text, string what, SplitPlan plan, bool steps)
    {
        text.Line($"{what} at 1:{plan.Dilution}, divided {plan.Divided}");
        foreach (var part in plan.Parts)
        {
            var stock = part.Stock.Stock;
            text.Line($"  {part.Name} ({stock.File}, trace {part.IsTrace}) makes {stock.Makes?.Value.Litres:G4} L at 1:{part.Dilution}, clear up to 1:{part.ClearUpTo:G3} by {part.StoppedBy?.Name} at {part.StoppedAt?.Celsius} °C")
                .Line($"    shares {string.Join(", ", part.Shares.Select(s => FormattableString.Invariant($"{s.Substance} {s.Share:0.0}")))}; too little {part.TooLittle?.Substance} {part.TooLittle?.Mass.Grams:G3} g on {part.TooLittle?.Scale.Name}; objections {string.Join(", ", part.Objections.Select(o => o.Rule.Id))}")
                .Line($"    kept {stock.Keep?.At?.Value.Low.Celsius} to {stock.Keep?.At?.Value.High.Celsius} °C for {stock.Keep?.For?.Value.Days} d, {stock.Keep?.Light?.Value}");
            foreach (var step in steps ? stock.Steps : stock.Steps.Where(s => s is AddStep))
            {
                text.Line($"    {Said(step)}");
            }
        }
    }

    private static string Said(Step step) => step switch
    {
        PourStep pour => FormattableString.Invariant($"{pour.Id}: pour {pour.Volume?.Value.Litres:G4} L of {pour.Of?.Value.Name}"),
        AddStep { Amount.Value: Portion.ByMass m } add => FormattableString.Invariant($"{add.Id}: {m.Mass.Grams:G6} g, assay {add.Assay?.Value.Value}, with {add.With?.Value}, at {Places(add)}"),
        AddStep { Amount.Value: Portion.ByVolume v } add => FormattableString.Invariant($"{add.Id}: {v.Volume.Millilitres:G6} mL, assay {add.Assay?.Value.Value}, with {add.With?.Value}"),
        HandlingStep handling => $"{handling.Id}: {handling.Handling} {handling.How.Value}",
        TopUpStep top => FormattableString.Invariant($"{top.Id}: to {top.To?.Value.Litres:G4} L of {top.Of?.Value.Name}"),
        _ => step.Id,
    };

    private static string Places(AddStep add) => string.Join(
        ' ', new[] { add.Place, add.What?.Place, add.Amount?.Place, add.Assay?.Place, add.With?.Place }.Select(p => p?.Pointer.Value));

    private static void Write(ToldText text, string what, IEnumerable<RejectedPart> rejected)
    {
        foreach (var part in rejected)
        {
            text.Line($"{what}: {string.Join(" + ", part.Together)} at 1:{part.Dilution} ({string.Join(" and ", part.Parts)}; {part.Newcomer})");
            foreach (var obstacle in part.Obstacles)
            {
                text.Line($"  {Said(obstacle)}");
            }
        }
    }

    private static string Said(Obstacle obstacle) => obstacle switch
    {
        Obstacle.Danger d => $"danger {d.Hazard.Kind} of {d.Hazard.From?.Name} with {d.Hazard.With?.Name}",
        Obstacle.Deposit d => FormattableString.Invariant($"deposit {d.Solid.Name} {d.Mass.GramsPerLitre:G3} g/L at {d.At.Celsius} °C of {string.Join(" and ", d.Suppliers)} ({string.Join(' ', d.Ions)})"),
        Obstacle.TooClose c => FormattableString.Invariant($"close {c.Solid.Name} {c.Index:0.00} at {c.At.Celsius} °C of {string.Join(" and ", c.Suppliers)} ({string.Join(' ', c.Ions)})"),
        Obstacle.Unpreserved u => FormattableString.Invariant($"unpreserved {u.Strength:0.00} at pH {u.Ph:0.0}, {u.Food.GramsPerLitre:G3} g/L of {u.FoodCalled}"),
        Obstacle.TooLittleToWeigh t => FormattableString.Invariant($"too little {t.Substance} {t.Mass.Grams:G3} g on {t.Scale.Name}"),
        Obstacle.Wrong w => $"wrong {w.Finding.Rule.Id}",
        Obstacle.OnlyUntold o => $"untold {o.Substance}",
        Obstacle.NotComputed n => $"not computed: {n.Reason}",
        _ => obstacle.ToString(),
    };
}
