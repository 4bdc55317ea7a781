using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Readings;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Pictures;

/// <summary>Pictures of one bottle. Every point is an answer of the engine; nothing is drawn between them but a straight stroke.</summary>
public static class StockPictures
{
    private const double StepCelsius = 2.5, FarFromSaturation = -3;

    private const int MostSolids = 5;

    private static readonly Ink[] Inks = [Ink.First, Ink.Second, Ink.Third, Ink.Fourth, Ink.Fifth, Ink.Sixth];

    /// <param name="key">Unique on the page, for several bottles on one.</param>
    public static IReadOnlyList<Picture> Of(StockFacts stock, string key) =>
        [.. new[] { Saturation(stock, key), Strength(stock, key), MixingPh(stock, key), MixingSolids(stock, key) }.OfType<Picture>()];

    /// <summary>Room to saturation over temperature; null where the stock cannot be computed.</summary>
    public static Picture? Saturation(StockFacts stock, string key)
    {
        var mix = stock.Chemistry.Mix;
        var states = Temperatures(StepCelsius).Select(t => StateSolver.Solve(mix, t)).Where(s => s.IsSolved).ToList();
        var solids = states.SelectMany(DepositJudgement.Indexes).GroupBy(i => i.Solid)
            .Where(g => g.Max(i => i.Index) > FarFromSaturation)
            .OrderByDescending(g => g.Max(i => i.Index))
            .ThenBy(g => g.Key.Name, StringComparer.Ordinal)
            .Select(g => g.Key)
            .Take(MostSolids)
            .ToList();
        if (solids.Count == 0)
        {
            return null;
        }

        var limits = DepositOptions.Of(stock.Settings);
        var curves = solids.Select((solid, i) =>
            new Curve(SolidWords.Called(solid), Inks[i], Dots(states, solid, i == 0 ? limits : null))).ToList();
        var (least, most) = Scales.Around(curves.SelectMany(c => c.Dots).SelectMany(d => new[] { d.Y, d.Y + d.DoubtUp }), 0);
        var crystals = FirstCrystals.Of(mix, limits);
        CrystalPoint[] points = [.. new[] { crystals.OnCooling, crystals.OnWarming }.OfType<CrystalPoint>()];
        return new Picture(
            $"{key}-saturation", $"Room to saturation: {stock.Stock.Name}",
            "How far each solid is from falling out over temperature: 0 is saturated, above 0 it is past it, each unit a factor of ten. "
                + $"The band is where it is kept; the bars say how far the figures of {SolidWords.Called(solids[0])} may be off. "
                + Crystals(crystals, points),
            new Axis("temperature, °C", SolutionInput.LowestCelsius, SolutionInput.HighestCelsius),
            new Axis("saturation index", Math.Max(least, FarFromSaturation), most),
            new Table(
                [
                    new("°C", true), .. solids.Select(s => new Column(SolidWords.Called(s), true)),
                    new($"± of {SolidWords.Called(solids[0])}", true),
                ],
                [
                    .. states.Select(s => (IReadOnlyList<string>)
                    [
                        Say.Number(s.Temperature.Celsius), .. solids.Select(solid => Cells.Number(IndexOf(s, solid))),
                        Cells.Number(IndexOf(s, solids[0]) is null ? null : DepositJudgement.DoubtOf(s, solids[0], limits)),
                    ]),
                ]))
        {
            Curves = curves,
            Boxes = [Band(stock, Math.Max(least, FarFromSaturation), most)],
            Marks = [new Mark(0, false, "saturated"),
                .. points.Select(p => new Mark(p.At.Celsius, true, $"promised clear to {Say.Number(p.At.Celsius)} °C"))],
        };
    }

    /// <summary>How strong it may be made over temperature; null where no answer is found.</summary>
    public static Picture? Strength(StockFacts stock, string key)
    {
        var limits = DepositOptions.Of(stock.Settings);
        var rows = Temperatures(2 * StepCelsius)
            .Select(t => (Celsius: t, Highest: HighestConcentration.Of(
                stock.Chemistry.Mix, new Temperature(t), stock.Stock.Dose?.Value, limits)))
            .ToList();
        var dots = rows.Where(r => r.Highest.Factor is not null).Select(r => new Dot(r.Celsius, r.Highest.Factor!.Value)).ToList();
        if (dots.Count == 0)
        {
            return null;
        }

        var (least, most) = Scales.FromZero(dots.Select(d => d.Y).Append(1));
        return new Picture(
            $"{key}-strength", $"How strong it may be made: {stock.Stock.Name}",
            "The strongest that is promised to stay clear at each temperature, with what the constants are not sure of taken off, as a "
                + "multiple of what the file makes; 1 is as written, "
                + $"{Say.Number(HighestConcentration.MostFactor)} is "
                + "the most that is looked at. The band is where it is kept.",
            new Axis("temperature, °C", SolutionInput.LowestCelsius, SolutionInput.HighestCelsius),
            new Axis("times the strength", least, most),
            new Table(
                [new("°C", true), new("times the strength", true), new("1:N", true), new("then falls out")],
                [
                    .. rows.Select(r => (IReadOnlyList<string>)
                    [
                        Say.Number(r.Celsius), Cells.Number(r.Highest.Factor), Cells.Number(r.Highest.Dilution),
                        r.Highest.Failure
                            ?? (r.Highest.StoppedBy.Count > 0 ? SolidWords.Called(r.Highest.StoppedBy[0]) : "nothing up to there"),
                    ]),
                ]))
        {
            Curves = [new Curve("strongest", Ink.First, dots)],
            Boxes = [Band(stock, least, most)],
            Marks = [new Mark(1, false, "as written")],
        };
    }

    /// <summary>The pH along the steps; null for a composition without an order.</summary>
    public static Picture? MixingPh(StockFacts stock, string key)
    {
        var mixing = stock.Mixing;
        var dots = mixing.Steps
            .Where(s => mixing.States[s.Index].Ph is not null)
            .Select(s => new Dot(s.Index, mixing.States[s.Index].Ph!.Value, DoubtUp: Doubt(mixing.States[s.Index]) ?? 0))
            .ToList();
        if (!mixing.IsProcedure || dots.Count < 2)
        {
            return null;
        }

        var (least, most) = Scales.Around(dots.SelectMany(d => new[] { d.Y - d.DoubtUp, d.Y + d.DoubtUp }));
        return new Picture(
            $"{key}-mixing-ph", $"pH while mixing: {stock.Stock.Name}",
            $"The pH in the vessel after each step, from {Cells.Ph(dots[0].Y)} to {Cells.Ph(dots[^1].Y)}. The bars say how far the "
                + "computed pH may be off; the table names the steps.",
            Steps(mixing),
            new Axis("pH", least, most),
            MixingTable(mixing))
        { Curves = [new Curve("pH", Ink.First, dots)] };
    }

    /// <summary>What lies undissolved or has fallen out after each step; null where nothing ever does.</summary>
    public static Picture? MixingSolids(StockFacts stock, string key)
    {
        var mixing = stock.Mixing;
        var names = mixing.States
            .SelectMany(s => s.Solids)
            .Where(s => s.Mass.Grams > 0)
            .Select(s => s.Name)
            .Distinct(StringComparer.Ordinal)
            .Take(Inks.Length)
            .ToList();
        if (!mixing.IsProcedure || names.Count == 0)
        {
            return null;
        }

        var curves = names.Select((name, i) => new Curve(
            Called(mixing, name), Inks[i],
            [.. mixing.Steps.Select(s => new Dot(s.Index, mixing.States[s.Index].Find(name)?.Mass.Grams ?? 0))])).ToList();
        var (least, most) = Scales.FromZero(curves.SelectMany(c => c.Dots).Select(d => d.Y));
        return new Picture(
            $"{key}-mixing-solids", $"Solids while mixing: {stock.Stock.Name}",
            $"Grams in the vessel after each step that have fallen out or not yet dissolved: {Say.List(curves.Select(c => c.Name))}.",
            Steps(mixing), new Axis("g in the vessel", least, most), MixingTable(mixing))
        { Curves = curves };
    }

    /// <summary>Half-width of the pH of a state; null where none is computed.</summary>
    private static double? Doubt(MixingState state) =>
        state is { Ph: not null, IonicStrengthMolPerKg: { } strength } ? ReadingWindow.OfComputedPh(strength) : null;

    private static Axis Steps(MixingSimulation mixing) =>
        new("step", -0.5, mixing.Steps.Count - 0.5, Labels: [.. mixing.Steps.Select(s => Say.Number(s.Index + 1))]);

    private static Table MixingTable(MixingSimulation mixing) => new(
        [
            new("step", true), new("what is done"), new("L in the vessel", true), new("°C", true), new("pH", true), new("± pH", true),
            new("solids"),
        ],
        [
            .. mixing.Steps.Select(s =>
            {
                var state = mixing.States[s.Index];
                return (IReadOnlyList<string>)
                [
                    Say.Number(s.Index + 1), StepWords.Of(s.Step), Say.Number(s.After.Litres), Say.Number(s.At.Celsius), Cells.Ph(state.Ph),
                    Cells.Number(Doubt(state)),
                    Say.List(state.Solids.Select(solid =>
                        $"{Say.Grams(solid.Mass.Grams)} of "
                            + $"{Called(mixing, solid.Name)}{(solid.Undissolved is null ? "" : ", not yet dissolved")}")),
                ];
            }),
        ]);

    private static string Called(MixingSimulation mixing, string name) =>
        mixing.States.Select(s => s.Find(name)).OfType<VesselSolid>().First() is { Solid: { } solid } ? SolidWords.Called(solid) : name;

    private static string Crystals(FirstCrystals crystals, CrystalPoint[] points) =>
        crystals.AtBench.Count > 0 ? $"{Say.Capital(SolidWords.Called(crystals.AtBench[0]))} falls out already at 20 °C."
        : points.Length == 0 ? "It stays clear from 0 to 45 °C."
        : string.Join(' ', points.Select(p =>
            $"Clear is promised as far as {Say.Number(p.At.Celsius)} °C; beyond it {SolidWords.Called(p.Solid)} can fall out."))
            + " So near to 0 the constants are not sure enough to promise more.";

    /// <param name="limits">For dots with their doubt; null for dots without.</param>
    private static List<Dot> Dots(IReadOnlyList<SolutionState> states, Solid solid, DepositLimits? limits) =>
    [
        .. states.Where(s => IndexOf(s, solid) is not null).Select(s => new Dot(
            s.Temperature.Celsius, IndexOf(s, solid)!.Value,
            DoubtUp: limits is null ? 0 : DepositJudgement.DoubtOf(s, solid, limits))),
    ];

    private static double? IndexOf(SolutionState state, Solid solid) =>
        DepositJudgement.Indexes(state)
            .Where(i => i.Solid == solid && double.IsFinite(i.Index))
            .Select(i => (double?)i.Index)
            .FirstOrDefault();

    private static Box Band(StockFacts stock, double bottom, double top) => new(
        Math.Clamp(stock.StorageTemperature.Low.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius),
        Math.Clamp(stock.StorageTemperature.High.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius), bottom, top,
        Ink.Usual);

    private static IEnumerable<double> Temperatures(double step)
    {
        for (var t = SolutionInput.LowestCelsius; t <= SolutionInput.HighestCelsius; t += step)
        {
            yield return t;
        }
    }
}
