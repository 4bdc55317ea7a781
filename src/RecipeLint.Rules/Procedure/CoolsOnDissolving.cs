using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>Salts that chill the water while they dissolve, so far that the rest stalls.</summary>
public sealed class CoolsOnDissolving : StockRule, IProposesRepairs
{
    public override string Name => "cools-on-dissolving";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var start = context.Number("benchTemperature");
        if (BeforeItRests(stock) is not { } contents)
        {
            yield break;
        }

        var salts = Salts(contents);
        var change = DissolvingHeat.Change(contents.Additions, contents.FreeWaterGrams, start);

        // What does not dissolve at room temperature either has rules of its own.
        if (change?.ChangeKelvin is not { } kelvin || kelvin >= 0 || salts.Any(s => Grams(s.Addition, contents) > (Holds(s.Addition, contents, start) ?? double.MaxValue)))
        {
            yield break;
        }

        var end = Math.Max(0, start + kelvin);
        var stalled = salts.FirstOrDefault(s => Stalls(s.Addition, contents, start, end)).Addition;
        if (stalled is null && Rounding.SixDigits(-kelvin) < context.Number("coolsBy"))
        {
            yield break;
        }

        var coldest = salts.OrderByDescending(s => s.Grams / s.Heat.GramsPerMol * s.Heat.KilojoulesPerMol)
            .ThenBy(s => s.Addition.Id, StringComparer.Ordinal).First().Addition;
        var stall = stalled is null
            ? "Cold water dissolves slowly, and a volume topped up cold stands above the mark once it has warmed."
            : $"At {Say.Number(end)} °C the water no longer holds all of the {stalled.Substance.Name}, so dissolving stops until the vessel has warmed.";
        yield return context.Find(
            coldest.Place,
            $"Dissolving the salts cools the {Say.Litres(contents.FreeWaterLitres)} of water by up to {Say.Number(-kelvin)} K, from {Say.Number(start)} to about {Say.Number(end)} °C; {coldest.Substance.Name} takes most of the heat. "
            + $"{stall} Start with water at 30 to 40 °C, or let it come back to room temperature before topping up.",
            stalled is null ? null : Level.Warning) with
        {
            Measured = new Measured("cooling", -kelvin, context.Number("coolsBy"), "K"),
            Values = [new NamedValue("cooling", -kelvin, "K"), new NamedValue("temperature", end, "°C"), new NamedValue("heat", change.HeatTakenKilojoules ?? 0, "kJ")],
        };
    }

    /// <summary>What stands in the vessel before it is topped up or left to rest; null where it is warmed on purpose.</summary>
    internal static VesselContents? BeforeItRests(StockFacts stock)
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
    internal static List<(AdditionFacts Addition, HeatOfSolution Heat, double Grams)> Salts(VesselContents contents) =>
    [
        .. contents.Additions
            .Select(a => (Addition: a, Heat: DissolvingHeat.Of(a)!, Grams: VesselContents.PureGrams(a)))
            .Where(a => a.Heat is not null),
    ];

    /// <summary>True when the bench-warm water holds it and the cold water clearly does not.</summary>
    internal static bool Stalls(AdditionFacts addition, VesselContents contents, double warm, double cold) =>
        Holds(addition, contents, warm) is { } holds
        && Holds(addition, contents, cold) is { } holdsCold
        && Grams(addition, contents) <= holds
        && Grams(addition, contents) > 1.1 * holdsCold;

    internal static double Grams(AdditionFacts addition, VesselContents contents) =>
        contents.Additions.Where(a => a.Substance.Id == addition.Substance.Id).Sum(VesselContents.PureGrams);

    internal static double? Holds(AdditionFacts addition, VesselContents contents, double celsius) =>
        HandbookSolubility.GramsPer100GramsWater(addition.Substance, celsius) * contents.FreeWaterGrams / 100;

    /// <summary>Warm water to begin with.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Pours.Warm(finding, context);
}
