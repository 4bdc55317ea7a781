using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Rules.Procedure;

/// <summary>The colour of a stock as one sees it in the bottle, worked out from what is in it.</summary>
internal static class StockColour
{
    internal const string Colourless = "colourless";

    /// <summary>
    /// g/L of the colouring element (of the substance itself for a dye) from which a bottle held against white paper shows the colour.
    /// Common practice, no source; a chelate
    /// colours more strongly than the free metal, and manganese hardly shows at all.
    /// </summary>
    private static readonly (Element Element, double Chelated, double Free)[] _visible =
    [
        (Element.Fe, 0.01, 2), (Element.Cu, 0.1, 0.2), (new("Co"), 0.5, 0.5), (new("Ni"), 1, 1), (Element.Mn, 10, 10),
    ];

    /// <summary>Ferric iron without a chelate is yellow-brown long before ferrous iron shows its green.</summary>
    private const double VisibleFerric = 0.05;

    private const double VisibleDye = 0.0005;

    /// <summary>Plain colour word, "colourless" where nothing shows, null where a dye of unknown make decides.</summary>
    internal static string? Of(StockFacts stock)
    {
        var shades = new List<(string Colour, double Strength)>();
        foreach (var addition in stock.Additions.Where(a => a.Substance.Colour is not null))
        {
            if (addition.Substance.Kind == SubstanceKind.Dye && addition.ComponentMoles.Count == 0)
            {
                return null;
            }

            shades.Add((Plain(addition.Substance.Colour!), Strength(addition, stock.Volume.Litres)));
        }

        var best = shades.GroupBy(s => s.Colour)
            .Select(g => (Colour: g.Key, Strength: g.Sum(s => s.Strength)))
            .OrderByDescending(s => s.Strength)
            .ThenBy(s => s.Colour, StringComparer.Ordinal)
            .FirstOrDefault();
        return Rounding.SixDigits(best.Strength) >= 1 ? best.Colour : Colourless;
    }

    /// <summary>What shows most; null where nothing has a colour.</summary>
    internal static AdditionFacts? Strongest(StockFacts stock) =>
        stock.Additions.Where(a => a.Substance.Colour is not null).MaxBy(a => Strength(a, stock.Volume.Litres));

    /// <summary>Times the visible concentration.</summary>
    internal static double Strength(AdditionFacts addition, double litres)
    {
        if (addition.Substance.Kind == SubstanceKind.Dye)
        {
            return VesselContents.PureGrams(addition) / litres / VisibleDye;
        }

        foreach (var (element, chelated, free) in _visible)
        {
            var grams = addition.Elements[element].Grams;
            if (grams > 0)
            {
                var ferric = addition.ComponentMoles.GetValueOrDefault(Component.FerricIron) > 0;
                var visible = addition.Substance.Kind == SubstanceKind.Chelate
                    ? chelated
                    : element == Element.Fe && ferric ? VisibleFerric : free;
                return grams / litres / visible;
            }
        }

        return 0;
    }

    /// <summary>The word two people would agree on from across the room.</summary>
    internal static string Plain(string colour) =>
        colour.Contains("brown", StringComparison.Ordinal) || colour is "yellow" or "orange" ? "yellow to brown"
        : colour.Contains("red", StringComparison.Ordinal) || colour.Contains("pink", StringComparison.Ordinal) ? "red"
        : colour.Contains("blue", StringComparison.Ordinal) ? "blue"
        : colour.Contains("green", StringComparison.Ordinal) ? "green"
        : colour;
}
