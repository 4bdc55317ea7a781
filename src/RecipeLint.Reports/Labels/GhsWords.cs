using RecipeLint.Rules.People;

namespace RecipeLint.Reports.Labels;

/// <summary>
/// Statements, signal words and pictograms as the GHS words and joins them: UN GHS, Annex 1 and 3; Regulation (EC) No 1272/2008 (CLP),
/// Annex III, Annex V and Article 26 on precedence (recalled).
/// </summary>
public static class GhsWords
{
    private static readonly Dictionary<string, (string Text, Pictogram? Pictogram, bool Danger)> Table = new(StringComparer.Ordinal)
    {
        ["H290"] = ("May be corrosive to metals", Pictogram.Corrosion, false),
        ["H301"] = ("Toxic if swallowed", Pictogram.Skull, true),
        ["H302"] = ("Harmful if swallowed", Pictogram.Exclamation, false),
        ["H314"] = ("Causes severe skin burns and eye damage", Pictogram.Corrosion, true),
        ["H315"] = ("Causes skin irritation", Pictogram.Exclamation, false),
        ["H317"] = ("May cause an allergic skin reaction", Pictogram.Exclamation, false),
        ["H318"] = ("Causes serious eye damage", Pictogram.Corrosion, true),
        ["H319"] = ("Causes serious eye irritation", Pictogram.Exclamation, false),
        ["H331"] = ("Toxic if inhaled", Pictogram.Skull, true),
        ["H332"] = ("Harmful if inhaled", Pictogram.Exclamation, false),
        ["H334"] = ("May cause allergy or asthma symptoms or breathing difficulties if inhaled", Pictogram.Health, true),
        ["H335"] = ("May cause respiratory irritation", Pictogram.Exclamation, false),
        ["H340"] = ("May cause genetic defects", Pictogram.Health, true),
        ["H341"] = ("Suspected of causing genetic defects", Pictogram.Health, false),
        ["H350"] = ("May cause cancer", Pictogram.Health, true),
        ["H351"] = ("Suspected of causing cancer", Pictogram.Health, false),
        ["H360"] = ("May damage fertility or the unborn child", Pictogram.Health, true),
        ["H372"] = ("Causes damage to organs through prolonged or repeated exposure", Pictogram.Health, true),
        ["H373"] = ("May cause damage to organs through prolonged or repeated exposure", Pictogram.Health, false),
        ["H400"] = ("Very toxic to aquatic life", Pictogram.Environment, false),
        ["H410"] = ("Very toxic to aquatic life with long lasting effects", Pictogram.Environment, false),
        ["H411"] = ("Toxic to aquatic life with long lasting effects", Pictogram.Environment, false),
        ["EUH071"] = ("Corrosive to the respiratory tract", null, false),
        ["EUH031"] = ("Contact with acids liberates toxic gas", null, false),
    };

    /// <summary>Statements of substances as they are bought that no mixture here is given (UN GHS, Annex 3, recalled).</summary>
    private static readonly Dictionary<string, string> AsBought = new(StringComparer.Ordinal)
    {
        ["H226"] = "Flammable liquid and vapour",
        ["H272"] = "May intensify fire; oxidiser",
        ["H350i"] = "May cause cancer by inhalation",
        ["H360D"] = "May damage the unborn child",
        ["H360F"] = "May damage fertility",
        ["H360FD"] = "May damage fertility and the unborn child",
    };

    /// <summary>"may intensify fire; oxidiser (H272)": for a sentence about a substance as it is bought.</summary>
    public static string InASentence(string code)
    {
        var words = Table.TryGetValue(code, out var row) ? row.Text : AsBought.GetValueOrDefault(code);
        return words is null ? code : $"{char.ToLowerInvariant(words[0])}{words[1..]} ({code})";
    }

    /// <summary>"H318 Causes serious eye damage."; a statement without a row keeps the words of the rule.</summary>
    public static string Statement(MixtureStatement statement) =>
        Table.TryGetValue(statement.Code, out var row) ? $"{statement.Code} {row.Text}." : $"{statement.Code} It can {statement.Words}.";

    /// <summary>The graver word alone; H411 and statements of the Union ask for none.</summary>
    public static string? Signal(IReadOnlyList<MixtureStatement> statements) =>
        statements.Any(s => Table.TryGetValue(s.Code, out var row) && row.Danger) ? "Danger"
        : statements.Any(s => s.Code is not ("H411" or "EUH031" or "EUH071")) ? "Warning"
        : null;

    /// <summary>Each once; the exclamation mark falls away where a graver picture says it already.</summary>
    public static IReadOnlyList<Pictogram> Pictograms(IReadOnlyList<MixtureStatement> statements)
    {
        var codes = statements.Select(s => s.Code).ToHashSet(StringComparer.Ordinal);
        var shown = statements.Where(s => !IsSaidAlready(s.Code, codes))
            .Select(s => Table.TryGetValue(s.Code, out var row) ? row.Pictogram : null);
        return [.. shown.OfType<Pictogram>().Distinct().Order()];
    }

    private static bool IsSaidAlready(string code, HashSet<string> codes) => code switch
    {
        "H302" or "H332" or "H335" or "H315" or "H319" or "H317" when codes.Overlaps(["H301", "H331"]) => true,
        "H315" or "H319" => codes.Contains("H314") || codes.Contains("H318") || codes.Contains("H334"),
        "H317" => codes.Contains("H334"),
        _ => false,
    };

    /// <summary>For who cannot see the picture.</summary>
    public static string Name(Pictogram pictogram) => pictogram switch
    {
        Pictogram.Skull => "GHS06, acutely toxic",
        Pictogram.Corrosion => "GHS05, corrosive",
        Pictogram.Health => "GHS08, health hazard",
        Pictogram.Exclamation => "GHS07, harmful or irritant",
        _ => "GHS09, dangerous for the environment",
    };
}
