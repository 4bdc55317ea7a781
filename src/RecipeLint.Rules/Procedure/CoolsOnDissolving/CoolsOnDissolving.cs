using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>Salts that chill the water while they dissolve, so far that the rest stalls.</summary>
internal sealed class CoolsOnDissolving : StockRule<Chilling>, IProposesRepairs
{
    public const string RuleName = "cools-on-dissolving";

    /// <summary>Where water freezes: dissolving stalls before that.</summary>
    private const double Freezing = 0;

    /// <summary>Water from the tap and of a bath, °C (common practice, no source).</summary>
    private static readonly double[] _warm = [30, 40];

    /// <summary>A salt stalls in the cold where it is over what the cold water holds by more than this.</summary>
    private const double ClearlyMore = 1.1;

    public override string Name => RuleName;

    protected override IEnumerable<Chilling> Judge(StockFacts stock, RuleContext context)
    {
        var start = context.Options<CoolsOnDissolvingOptions>().BenchTemperature;
        if (BeforeItRests(stock) is not { FreeWaterGrams: > 0 } contents || Salts(contents) is not { Count: > 0 } salts
            || DissolvingHeat.Change(contents.Additions, contents.FreeWaterGrams, start) is not { ChangeKelvin: { } change } heat)
        {
            return [new Chilling(stock, null, [], null, null, null, 0,
                null) { Checks = [Check.That("salts whose heat is known dissolve in water that is not warmed", false)] }];
        }

        // No colder than where it freezes, whatever the heats add up to.
        var fall = Rounding.SixDigits(Math.Min(-change, start - Freezing));
        var end = start - Math.Max(0, fall);
        var stalled = fall > 0 ? salts.Select(s => s.Addition).FirstOrDefault(a => Stalls(a, contents, start, end)) : null;
        var cools = stalled is null
            ? new Check("colder than the bench should get", fall, Relation.AtLeast, context.Options<CoolsOnDissolvingOptions>().CoolsBy,
            "K")
            : new Check("it cools at all", fall, Relation.Over, 0, "K");
        var dissolves = !salts.Any(s => IsTooLittle(s.Addition, contents, start));
        Check[] checks =
        [
            cools,
            .. stalled is null ? [] : new[] { Check.That("the cold water no longer holds all of a salt that the room-warm water "
                + "holds", true) },
            Check.That("the water holds all of it at room temperature (else there is too little of it)", dissolves),
        ];
        var verdict = new Chilling(stock, contents, salts, heat, cools, stalled, end, start) { Checks = checks };
        return [verdict.Fires ? verdict with { WarmFrom = WarmFrom(verdict, -change) } : verdict];
    }

    /// <summary>
    /// How warm the water has to be so that no salt stalls in it and nothing falls out of what it comes to, °C; null where none of what
    /// is usual does it.
    /// </summary>
    /// <param name="fall">K, as far as the heats go.</param>
    private static double? WarmFrom(Chilling verdict, double fall)
    {
        var (bench, limits) = (verdict.Stock.Chemistry.Mixing, DepositOptions.Of(verdict.Stock.Settings));
        return _warm.Where(w => w - fall > Freezing
                && !verdict.Salts.Any(s => Stalls(s.Addition, verdict.Contents!, w, w - fall))
                && StateTrial.AtTemperature(bench, Math.Min(w, SolutionInput.HighestCelsius), [], limits) is not { Helps: false })
            .Select(w => (double?)w)
            .FirstOrDefault();
    }

    protected override Finding Describe(Chilling verdict, RuleContext context)
    {
        var (contents, heat, fall, end) = (verdict.Contents!, verdict.Heat!, verdict.Cools!.Value, verdict.EndCelsius);
        var coldest = verdict.Salts.OrderByDescending(s => s.Grams / s.Heat.GramsPerMol * s.Heat.KilojoulesPerMol)
            .ThenBy(s => s.Addition.Id, StringComparer.Ordinal).First().Addition;
        var stall = verdict.Stalled is { } stalled
            ? $"At {Say.Number(end)} °C the water no longer holds all of the {stalled.Substance.Name}, so dissolving stops until the "
                + "vessel has warmed."
            : "Cold water dissolves slowly, and a volume topped up cold stands above the mark once it has warmed.";

        // "Up to" says the first reason, that the room gives heat too; the others have to be told.
        var doubts = heat.EstimateBecause.Skip(1).ToList();
        var doubt = doubts.Count > 0 ? $" (an estimate: {string.Join("; ", doubts)})" : "";
        return context.Find(
            coldest.Place,
            $"Dissolving the salts cools the {Say.Litres(contents.FreeWaterLitres)} of water by up to {Say.Number(fall)} K, from "
                + $"{Say.Number(verdict.StartCelsius!.Value)} to about {Say.Number(end)} °C{doubt}; {coldest.Substance.Name} takes "
                + "most of the heat. "
            + $"{stall} "
            + context.AdviceFor(verdict.Stock).Sentence(
                [
                    .. verdict.WarmFrom is { } warm
                        ? [new Way($"start with water at {(warm < _warm[^1] ? "30 to 40" : Say.Number(warm))} °C", Puts.Warmth)]
                        : Array.Empty<Way>(),
                    new Way("let it come back to room temperature before topping up", Puts.Keeping),
                ]),
            Harm.Damage,
            verdict.Stalled is null ? Odds.Possible : Odds.Certain) with
        {
            Measured = new Measured("cooling", fall, context.Options<CoolsOnDissolvingOptions>().CoolsBy, "K"),
            Values = [new NamedValue("cooling", fall, "K"), new NamedValue("temperature", end, "°C"),
                new NamedValue("heat", heat.HeatTakenKilojoules ?? 0, "kJ")],
        };
    }

    protected override Working Work(Chilling verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"heat that dissolving takes from '{verdict.Stock.Stock.Name}'");
        if (verdict is not { Contents: { } contents, Cools: { } check })
        {
            return work.Statements(verdict).Done();
        }

        var heats = new List<Term>();
        var crystal = new List<Term>();
        foreach (var (addition, known, grams) in verdict.Salts)
        {
            var mass = work.Given($"{addition.Substance.Name}, pure", grams, "g", From.File);
            var molar = work.Given("its molar mass", known.GramsPerMol, "g/mol", From.AtomicWeights);
            heats.Add(work.Result(
                "heat it takes", "g / (g/mol) × kJ/mol",
                    mass / molar * work.Given("heat of solution", known.KilojoulesPerMol, "kJ/mol", "table of heats"), "kJ"));
            if (known.CrystalWater > 0)
            {
                crystal.Add(work.Result("crystal water it sets free", "g / (g/mol) × waters × 18.015",
                    mass / molar * known.CrystalWater * Water.GramsPerMol, "g"));
            }
        }

        var heat = heats.Count == 1 ? heats[0] : work.Result("heat in all", "sum", Term.Sum(heats), "kJ");
        var water = work.Given("water in the vessel", contents.FreeWaterGrams, "g", From.File);
        var all = crystal.Count == 0 ? water : work.Result("water with that of the crystals", "sum", Term.Sum(crystal.Prepend(water)), "g");
        var cooling = work.Result("cooling", "1000 × heat / (4.18 J per g and K × water)",
            1000 * heat / (BatchTemperature.WaterHeatCapacity * all), "K");
        var start = work.Option("water at the start", context.Options<CoolsOnDissolvingOptions>().BenchTemperature);
        var fall = work.Result("no further than to where it freezes", "the smaller of cooling and start - 0",
            Term.Smaller(cooling, start - Freezing), "K");
        work.Check(check, fall, verdict.Stalled is null ? work.Option("limit", context.Options<CoolsOnDissolvingOptions>().CoolsBy) : 0);
        if (verdict.Stalled is { } stalled)
        {
            work.Remark($"At {Say.Number(verdict.EndCelsius)} °C the water no longer holds all of the {stalled.Substance.Name}.");
        }

        return work.Statements(verdict).Done(fall);
    }

    /// <summary>Warm water to begin with.</summary>
    protected override IEnumerable<RepairProposal> Repair(Chilling verdict, Finding finding, RepairContext context) =>
        Pours.Warm(finding, context);

    /// <summary>What stands in the vessel before it is topped up or left to rest; null where it is warmed on purpose.</summary>
    private static VesselContents? BeforeItRests(StockFacts stock)
    {
        var contents = VesselContents.Empty;
        foreach (var moment in stock.Mixing.Steps)
        {
            if (moment.Step is HandlingStep { Handling: Handling.Warm })
            {
                return null;
            }

            if (moment.Step is HandlingStep { Handling: Handling.Rest } or TopUpStep)
            {
                break;
            }

            contents = moment.After;
        }

        return contents;
    }

    /// <summary>The solids whose heat of solution is known, with it and their pure grams.</summary>
    private static List<(AdditionFacts Addition, HeatOfSolution Heat, double Grams)> Salts(VesselContents contents) =>
    [
        .. contents.Additions
            .Select(a => (Addition: a, Heat: DissolvingHeat.Of(a)!, Grams: VesselContents.PureGrams(a)))
            .Where(a => a.Heat is not null),
    ];

    /// <summary>
    /// What does not dissolve at room temperature either has a rule of its own, which judges with the same slack: a salt that just fits is
    /// not left to neither of the two.
    /// </summary>
    private static bool IsTooLittle(AdditionFacts addition, VesselContents contents, double celsius) =>
        FirstWater.Holds(addition, contents, celsius) is { } holds
            && FirstWater.IsTooLittleFor(FirstWater.Grams(contents, addition.Substance.Id), holds);

    /// <summary>True when the bench-warm water holds it and the cold water clearly does not.</summary>
    private static bool Stalls(AdditionFacts addition, VesselContents contents, double warm, double cold) =>
        !IsTooLittle(addition, contents, warm)
        && FirstWater.Holds(addition, contents, cold) is { } holdsCold
        && FirstWater.Grams(contents, addition.Substance.Id) > ClearlyMore * holdsCold;
}

/// <summary>What dissolving does to the temperature of the water.</summary>
/// <param name="Contents">Of the vessel before it rests or is topped up; null where nothing is computed.</param>
/// <param name="Cools">How far it can really fall.</param>
/// <param name="Stalled">The salt that the cold water no longer holds; null where it holds all.</param>
internal sealed record Chilling(
    StockFacts Stock,
    VesselContents? Contents,
    IReadOnlyList<(AdditionFacts Addition, HeatOfSolution Heat, double Grams)> Salts,
    BatchTemperature? Heat,
    Check? Cools,
    AdditionFacts? Stalled,
    double EndCelsius,
    double? StartCelsius) : Verdict
{
    /// <summary>°C of the water with which it does not stall; null where warm water is no way.</summary>
    public double? WarmFrom { get; init; }
}
