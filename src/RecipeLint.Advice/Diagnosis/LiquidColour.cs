using RecipeLint.Analysis;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>Which colours the liquid of a stock may have, from what is in it.</summary>
internal sealed class LiquidColour
{
    /// <summary>Words of the catalogue ("dark red-brown") and the signs they allow.</summary>
    private static readonly (string Word, string[] Signs)[] Shades =
    [
        ("yellow", ["yellow", "tan", "orange", "cream", "brown", "rust"]),
        ("brown", ["brown", "tan", "rust", "orange"]),
        ("red", ["red", "pink", "purple", "rust", "brown"]), ("blue", ["blue", "blue-green"]),
        ("green", ["green", "blue-green", "yellow"]), ("orange", ["orange", "rust", "yellow"]),
        ("pink", ["pink", "red", "salmon"]), ("black", ["black", "brown"]),
    ];

    private readonly HashSet<string> _allowed = [];

    public LiquidColour(StockFacts stock)
    {
        foreach (var addition in stock.Additions)
        {
            var shades = Shades.Where(s => addition.Substance.Colour?.Contains(s.Word, StringComparison.Ordinal) == true).ToList();
            _allowed.UnionWith(shades.SelectMany(s => s.Signs));

            // Food colour is of the colour it was bought in.
            if (addition.Substance.Kind == SubstanceKind.Dye && shades.Count == 0)
            {
                IsKnown = false;
            }
        }

        // Blue copper and yellow iron make green.
        if (_allowed.Contains("blue") && _allowed.Contains("yellow"))
        {
            _allowed.UnionWith(["green", "blue-green"]);
        }
    }

    /// <summary>False where a dye of unknown colour decides.</summary>
    public bool IsKnown { get; } = true;

    /// <summary>
    /// A colour that was told of no deposit and that the liquid should have is that of the liquid: "dark red like wine" of an iron chelate.
    /// </summary>
    public Observation Claim(Observation told)
    {
        var colours = told.Signs.Where(s => s.Present && s.Sign.Kind == SignKind.Colour).ToList();
        return colours.Count == 0 || !IsKnown || colours.Exists(c => !Fits(c.Sign))
            || told.Signs.Any(s => s.Present && IsOfADeposit(s.Sign))
            ? told
            : told with
            {
                Signs = [.. told.Signs.Except(colours)],
                LiquidColours = [.. told.LiquidColours.Concat(colours.Select(c => c.Sign)).Distinct()],
            };
    }

    private static bool IsOfADeposit(Sign sign) =>
        sign.Kind is SignKind.Form or SignKind.Feel or SignKind.Place or SignKind.Test || sign.Id == "deposit";

    public bool Fits(Sign colour) => _allowed.Contains(colour.Id);
}
