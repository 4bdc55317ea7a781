using System.Globalization;
using System.Security.Cryptography;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Recipes.Json;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.People;

namespace RecipeLint.Reports.Labels;

/// <summary>A pictogram of the GHS.</summary>
public enum Pictogram
{
    /// <summary>GHS06, skull and crossbones.</summary>
    Skull,

    /// <summary>GHS05, corrosion.</summary>
    Corrosion,

    /// <summary>GHS08, health hazard.</summary>
    Health,

    /// <summary>GHS07, exclamation mark.</summary>
    Exclamation,

    /// <summary>GHS09, environment.</summary>
    Environment,
}

/// <summary>What goes onto the label besides what the file says.</summary>
/// <param name="Made">Day it was made; null leaves a line to write on.</param>
/// <param name="Batch">Number of the batch; null leaves a line to write on.</param>
public sealed record LabelWishes(DateOnly? Made = null, string? Batch = null);

/// <summary>What the label of a bottle says, before anybody lays it out.</summary>
public sealed record BottleLabel
{
    /// <summary>Litres in a US gallon: NIST SP 811 (2008), appendix B.8, exact.</summary>
    private const double LitresPerGallon = 3.785411784;

    public required string Name { get; init; }

    /// <summary>"calcium nitrate tetrahydrate 100 g/L", most first.</summary>
    public required IReadOnlyList<string> Contents { get; init; }

    /// <summary>"10 mL/L, 37.9 mL per US gallon (1:100)"; null without a dose.</summary>
    public string? Dilution { get; init; }

    public required string Made { get; init; }

    public required string UseBy { get; init; }

    public required string Batch { get; init; }

    /// <summary>"Danger", "Warning", or null where no statement asks for one.</summary>
    public string? SignalWord { get; init; }

    public IReadOnlyList<Pictogram> Pictograms { get; init; } = [];

    /// <summary>"H314 Causes ...", in the order of gravity.</summary>
    public IReadOnlyList<string> Statements { get; init; } = [];

    public required string Source { get; init; }

    /// <summary>"Keep apart from calcium stocks and hypochlorite."; null where nothing is known.</summary>
    public string? KeepApart { get; init; }

    /// <summary>The shop's colour of this bottle, as a word; null where none is stated.</summary>
    public string? Colour { get; init; }

    /// <summary>What the square code says: file and digest, so that the bottle is traced to exactly the text it was made from.</summary>
    public required string Identity { get; init; }

    /// <summary>Said before the reason.</summary>
    public const string NotDrawn = "No label is drawn: a bottle with a dose and a last day on it looks as if it could be used.";

    /// <summary>Why there must be no such bottle, as the file says it is mixed; null when it may be labelled.</summary>
    public static Refusal? Refused(StockFacts stock) => HazardGate.Of(stock).Forbids(VesselAction.Order);

    /// <param name="source">The file, for its digest.</param>
    public static BottleLabel Of(StockFacts stock, SourceFile source, LabelWishes wishes)
    {
        var statements = MixtureStatements.Of(stock);
        var shelf = stock.Stock.Keep?.For?.Value.Days;
        return new BottleLabel
        {
            Name = stock.Stock.Name,
            Contents = Substances(stock),
            Dilution = stock.Stock.Dose?.Value is { LitresPerLitre: > 0 } dose
                ? $"{Say.Number(dose.MillilitresPerLitre)} mL/L, {Say.Number(dose.MillilitresPerLitre * LitresPerGallon)} mL per US "
                    + $"gallon (1:{Say.Number(dose.Dilution)})"
                : null,
            Made = wishes.Made is { } made ? Day(made) : "____________",
            UseBy = wishes.Made is { } from && shelf is { } days ? Day(from.AddDays((int)Math.Floor(days)))
                : shelf is { } time ? $"{Say.Days(time)} after it" : "____________",
            Batch = wishes.Batch ?? "____________",
            SignalWord = GhsWords.Signal(statements),
            Pictograms = GhsWords.Pictograms(statements),
            Statements = [.. statements.Select(GhsWords.Statement)],
            Source = statements.Count == 0
                ? $"No statement by the {MixtureStatements.SourceOf(statements)}: check with your supplier's safety data sheet."
                : $"Hazards by the {MixtureStatements.SourceOf(statements)}: check with your supplier's safety data sheet.",
            KeepApart = Apart(stock),
            Colour = stock.Stock.Label?.Colour,
            Identity = $"{source.Path}\nsha256 {Convert.ToHexStringLower(SHA256.HashData(source.Bytes))}",
        };
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static List<string> Substances(StockFacts stock) =>
    [
        .. stock.Additions.GroupBy(a => a.Substance.Name, StringComparer.Ordinal)
            .Select(g => (Name: g.Key, PerLitre: g.Sum(a => a.Mass.Grams) / stock.Volume.Litres))
            .OrderByDescending(s => s.PerLitre)
            .ThenBy(s => s.Name, StringComparer.Ordinal)
            .Select(s => $"{s.Name} {Say.Grams(s.PerLitre)}/L"),
    ];

    private static string? Apart(StockFacts stock)
    {
        var named = stock.Additions.SelectMany(a => a.Substance.KeepApartFrom?.Value ?? []).ToHashSet();
        var apart = named
            .Where(k => !(Wider(k) is { } wider && named.Contains(wider)))
            .Where(k => k is not (Chemistry.Substances.KeepApart.Light or Chemistry.Substances.KeepApart.Heat
                or Chemistry.Substances.KeepApart.WaterPouredIn))
            .Select(Words)
            .Order(StringComparer.Ordinal)
            .ToList();
        return apart.Count == 0
            ? "Never mix undiluted with another concentrate."
            : $"Never mix undiluted with another concentrate. Keep apart from {Say.List(apart)}.";
    }

    /// <summary>What says the same and more: who keeps it from all acids keeps it from strong ones.</summary>
    private static Chemistry.Substances.KeepApart? Wider(Chemistry.Substances.KeepApart from) => from switch
    {
        Chemistry.Substances.KeepApart.ConcentratedAcids or Chemistry.Substances.KeepApart.ConcentratedOrganicAcids =>
            Chemistry.Substances.KeepApart.Acids,
        _ => null,
    };

    /// <summary>"SulfateStocks" reads "sulfate stocks".</summary>
    private static string Words(Chemistry.Substances.KeepApart from) =>
        string.Concat(from.ToString().Select((c, i) => char.IsUpper(c) ? (i > 0 ? " " : "") + char.ToLowerInvariant(c) : c.ToString()));
}
