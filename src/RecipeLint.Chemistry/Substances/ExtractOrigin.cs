namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// What a plant or animal extract is made of, and what is known to throw it out of solution although its composition is not. The figures
/// are orders of magnitude: products differ.
/// </summary>
/// <param name="Key">Stable word ("seaweed").</param>
/// <param name="Called">In a sentence ("a seaweed extract").</param>
/// <param name="Words">What products of this kind are called, in small letters.</param>
/// <param name="FallsOutBelowPh">pH under which it curdles or settles; null where acid does nothing to it.</param>
/// <param name="FallsOutFromCalcium">mmol/L of calcium from which it curdles or gels; null where calcium does nothing to it.</param>
/// <param name="Becomes">What is seen ("slimy jelly").</param>
public sealed record ExtractOrigin(
    string Key,
    string Called,
    IReadOnlyList<string> Words,
    Sourced<double>? FallsOutBelowPh,
    Sourced<double>? FallsOutFromCalcium,
    string Becomes)
{
    /// <summary>
    /// Carbon in a liquid as sold that states nothing, as mass fraction: an order of magnitude, half or twice as much may be true.
    /// </summary>
    public required Sourced<double> Carbon { get; init; }

    /// <summary>Share of the carbon that microbes use up within weeks: peat gives them hardly anything.</summary>
    public double Eaten { get; init; } = 1;

    /// <summary>The acid groups it brings as it is sold; null where it brings none, or nobody knows.</summary>
    public HumicContent? Humic { get; init; }
}

/// <summary>The kinds of extract that growers buy.</summary>
public static class ExtractOrigins
{
    /// <summary>Mass fraction of carbon in the dry matter of an extract, as in sugar and protein (handbooks, recalled).</summary>
    public const double CarbonOfDryMatter = 0.4;

    private const string HumicDefinition =
        "soil chemistry: humic acids are by definition what does not dissolve at pH 1 to 2, and in practice flocs below about pH 4 "
            + "(recalled)";

    /// <summary>What is only known to be an extract.</summary>
    public static ExtractOrigin Other { get; } =
        new("other", "a plant or animal extract", ["extract", "hydrolysate", "tea", "ferment", "brew"], null, null, "curds and slime")
        {
            Carbon = new Sourced<double>(
                0.05,
                "common practice, no source: liquid extracts hold some ten per cent of organic matter, two "
                    + "fifths of it carbon",
                Confidence.Memory),
        };

    /// <summary>In the order in which a name is held against them: the special words before the general ones.</summary>
    public static IReadOnlyList<ExtractOrigin> All { get; } =
    [
        new(
            "seaweed",
            "a seaweed extract",
            ["seaweed", "kelp", "ascophyllum", "ecklonia", "alga", "algae", "alginate"],
            new Sourced<double>(
                3.5,
                "alginic acid, pKa 3.4 to 3.7: A. Haug, Norwegian Institute of Seaweed Research, report 30, 1964 (recalled)",
                Confidence.Memory),
            new Sourced<double>(
                3,
                "common practice, no source: alginate left in seaweed extracts gels with calcium, as in beads made with a few mmol/L and "
                    + "more",
                Confidence.Memory),
            "slimy jelly")
        {
            Carbon = new Sourced<double>(
                0.04,
                "common practice, no source: liquid seaweed holds some ten per cent of organic matter, two "
                    + "fifths of it carbon",
                Confidence.Memory),
        },
        new(
            "fulvic",
            "a fulvic acid extract",
            ["fulvic", "fulvate"],
            null,
            null,
            "curds and slime")
        {
            Carbon = new Sourced<double>(
                0.05,
                "common practice, no source: liquids are sold with some ten per cent, half of it carbon",
                Confidence.Memory),
            Eaten = 0.1,
            Humic = new HumicContent("fulvic acid", HumicMatter.FulvicAcid, 0.1, 4),
        },
        new(
            "humic",
            "a humic acid extract",
            ["humic", "humate", "humus", "leonardite", "lignite"],
            new Sourced<double>(4, HumicDefinition, Confidence.Memory),
            new Sourced<double>(
                2.5,
                "coagulation of humates by calcium at a few mmol/L: E. Tipping, Cation Binding by Humic Substances, Cambridge 2002 "
                    + "(recalled)",
                Confidence.Memory),
            "brown flocs")
        {
            Carbon = new Sourced<double>(
                0.07,
                "labels of liquid humates, 12 to 15 % of humic acid with half its weight in carbon (recalled)",
                Confidence.Memory),
            Eaten = 0.1,
            Humic = new HumicContent("humic acid", HumicMatter.HumicAcid, 0.13, 10),
        },
        new(
            "fish",
            "a fish extract",
            ["fish", "fishmeal", "shrimp", "crab"],
            null,
            null,
            "curds and an evil smell")
        {
            Carbon = new Sourced<double>(
                0.19,
                "typical analysis on a supplier's page of a fish hydrolysate with 53 % of water: 18.7 % carbon",
                Confidence.Found),
        },
        new(
            "amino acids",
            "an amino acid extract",
            ["amino", "protein", "peptide", "collagen"],
            null,
            null,
            "curds and slime")
        {
            Carbon = new Sourced<double>(
                0.15,
                "labels of liquids with 30 % of amino acids, half their weight carbon (recalled)",
                Confidence.Memory),
        },
        new(
            "sugar",
            "a sugar syrup",
            ["molasses", "syrup", "honey", "treacle"],
            null,
            null,
            "slime and gas")
        {
            Carbon = new Sourced<double>(
                0.2,
                "molasses and syrups hold half to two thirds of their weight in sugar, 42 % of it carbon "
                    + "(handbooks, recalled)",
                Confidence.Memory),
        },
        Other,
    ];

    /// <summary>The kind of a key of the data files.</summary>
    /// <exception cref="FormatException">There is no such kind.</exception>
    public static ExtractOrigin Named(string key) =>
        All.FirstOrDefault(o => o.Key == key) ?? throw new FormatException($"'{key}' is no kind of extract");

    /// <summary>The kind that a product's name speaks of; null when it speaks of none. Whole words only: "steam" is no tea.</summary>
    public static ExtractOrigin? In(string name)
    {
        var words = name.ToLowerInvariant()
            .Split([' ', '-', '_', ',', '.', '/', '(', ')', '+', '&'], StringSplitOptions.RemoveEmptyEntries);
        return All.FirstOrDefault(o => o.Words.Any(words.Contains));
    }
}
