namespace RecipeLint.Reports.Handbook;

/// <summary>Something a person sees, and the rules worth reading then.</summary>
/// <param name="Danger">What to do first where the sign may mean harm; null elsewhere.</param>
internal sealed record Sign(string Seen, IReadOnlyList<string> Rules, string? Danger = null)
{
    /// <summary>
    /// The way in for somebody who stands before a bottle. That a sign points to a cause is common practice, no source; the rules compute.
    /// </summary>
    public static IReadOnlyList<Sign> All { get; } =
    [
        new("White sludge or crust in a bottle", ["calcium-with-sulfate", "calcium-with-phosphate", "carbonate-in-stock", "magnesium-ammonium-phosphate", "double-salt"]),
        new("Crystals after a cold night", ["salt-past-its-solubility", "preservative-drops-out", "chelating-acid-drops-out", "double-salt"]),
        new("Rust-brown floc or film", ["unprotected-ferrous-iron", "chelate-short", "iron-with-phosphate", "metal-hydroxide"]),
        new("A pale or blue-green floc among the trace metals", ["no-acid-in-trace-stock", "phosphate-in-trace-stock", "metal-hydroxide", "weak-acid-volatile"]),
        new("Jelly, or lumps that will not dissolve", ["silicate-with-acid-or-metal", "too-little-water-to-dissolve", "slow-dissolver-last", "cools-on-dissolving"]),
        new("Mould, slime or a sour smell", ["carbon-without-preservative", "preservative-too-weak", "weak-acid-volatile"]),
        new("The tank clouds, or drippers crust over", ["tank-precipitate", "alkalinity-not-neutralised", "concentrate-onto-concentrate", "shared-dosing-syringe"]),
        new("Young leaves turn yellow between the veins", ["chelate-outside-its-ph", "chelate-in-light", "ph-outside-window", "element-low", "chelate-robbed"]),
        new("Leaf edges burn", ["ec-outside-window", "sodium-or-chloride-load", "element-toxic", "ratio-out-of-range"]),
        new("Every batch comes out different", ["below-scale-resolution", "below-minimum-weight", "measure-too-coarse", "vessel-too-coarse", "no-final-volume-step"]),
        new("Half or twice what was wanted", ["target-missed", "ambiguous-substance", "ambiguous-unit", "dose-contradicts-dilution", "impossible-analysis"]),
        new(
            "A bottle swells, fizzes, fumes or smells of chlorine",
            ["hypochlorite-with-acid", "hypochlorite-with-ammonium", "nitric-with-organic", "oxidiser-with-organic", "shelf-life-too-long"],
            "Do not open, shake or move it. Leave, keep others away, air the room from outside if you can, and follow the safety data sheets or call the emergency service."),
    ];
}
