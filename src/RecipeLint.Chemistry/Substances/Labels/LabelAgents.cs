using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Chemistry.Substances;

/// <summary>Chelating agents by the words of labels, alone or several.</summary>
public static class LabelAgents
{
    /// <summary>Weakest hold on iron first, by the pH to which it is kept (common practice, no source).</summary>
    private static readonly (string Name, string Component)[] Known =
    [
        ("amino acid", Component.Glycinate), ("glycine", Component.Glycinate), ("glycinate", Component.Glycinate),
        ("gluconic acid", Component.Gluconate), ("gluconate", Component.Gluconate),
        ("lactic acid", Component.Lactate), ("lactate", Component.Lactate), ("malic acid", Component.Malate), ("malate", Component.Malate),
        ("citric acid", Component.Citrate), ("citrate", Component.Citrate),
        ("IDHA", Component.Idha), ("IDS", Component.Idha),
        ("EDTA", Component.Edta), ("HEDTA", Component.Hedta), ("HEEDTA", Component.Hedta), ("DTPA", Component.Dtpa),
        ("EDDHA", Component.Eddha), ("EDDHMA", Component.Eddha), ("EDDHSA", Component.Eddha), ("EDDCHA", Component.Eddha),
    ];

    /// <summary>Agents taken as another that is built alike: methyl, sulfo or carboxyl groups on the rings of EDDHA (estimate).</summary>
    private static readonly string[] TakenAsEddha = ["EDDHMA", "EDDHSA", "EDDCHA"];

    /// <summary>Agents without constants: the complex comes along whole, as an inert molecule.</summary>
    private static readonly string[] WholeComplex =
        ["HBED", "EDDS", "lignosulfonate", "heptagluconate", "humic acid", "fulvic acid"];

    /// <summary>Of them those that let go of iron in neutral solutions (common practice, no source).</summary>
    private static readonly string[] WeakAgents = ["lignosulfonate", "heptagluconate", "humic acid", "fulvic acid"];

    /// <summary>Agents made for iron; the other metals of such a label are salts beside it (common practice, no source).</summary>
    private static readonly string[] ForIron = ["EDDHA", "EDDHMA", "EDDHSA", "EDDCHA", "HBED"];

    private static readonly string[] Joints = [",", "/", "+", "&", ";", " and ", " or ", " with "];

    private static readonly string[] Endings = [" chelates", " chelate", " complexes", " complex", "-chelate", "-complex"];

    /// <summary>Every agent that is known, with constants or as a whole complex.</summary>
    public static IEnumerable<string> All => Known.Select(k => k.Name).Concat(WholeComplex);

    /// <summary>Whether all that is named is made for iron.</summary>
    public static bool AreForIron(string text) => Named(text) is { Count: > 0 } names && names.All(n => Has(ForIron, n));

    /// <summary>The agents of a text such as "EDTA and DTPA", each in the words of the table where it is there.</summary>
    internal static IReadOnlyList<string> Named(string? text) => text is null
        ? []
        : [.. text.Split(Joints, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(Plain).Distinct(StringComparer.OrdinalIgnoreCase)];

    /// <summary>Which of several is taken for all of them: the weakest that has constants, else the first.</summary>
    internal static string? Taken(IReadOnlyList<string> names) =>
        Array.Find(Known, k => names.Contains(k.Name, StringComparer.OrdinalIgnoreCase)).Name ?? (names.Count > 0 ? names[0] : null);

    /// <summary>The component of an agent; null where no constants are known.</summary>
    internal static string? ComponentOf(string? name) => Array.Find(Known, k => Same(k.Name, name)).Component;

    internal static bool IsKnown(string name) => ComponentOf(name) is not null || Has(WholeComplex, name);

    internal static bool LetsGo(string? name) => name is not null && Has(WeakAgents, name);

    /// <summary>What is assumed of an agent that has constants, as sentences.</summary>
    internal static IEnumerable<string> Said(string text, IReadOnlyList<string> names, string taken)
    {
        if (names.Count > 1 && names.Any(n => ComponentOf(n) != ComponentOf(taken)))
        {
            yield return $"How much of '{text}' is which agent is not known: all is taken as the weakest of them, {taken}.";
        }

        foreach (var kin in names.Where(n => Has(TakenAsEddha, n) && ComponentOf(n) == ComponentOf(taken)))
        {
            yield return $"{kin} is taken as EDDHA, which is built alike (an estimate).";
        }

        if (Same(taken, "amino acid"))
        {
            yield return "Amino acids are taken as glycine, which holds metals weakly (an estimate).";
        }
    }

    private static string Plain(string word)
    {
        var ending = Array.Find(Endings, e => word.EndsWith(e, StringComparison.OrdinalIgnoreCase)) ?? "";
        var name = word[..^ending.Length].Trim();
        return IsKnown(name) || !name.EndsWith('s') || !IsKnown(name[..^1]) ? name : name[..^1];
    }

    private static bool Has(string[] list, string name) => list.Contains(name, StringComparer.OrdinalIgnoreCase);

    private static bool Same(string name, string? other) => string.Equals(name, other, StringComparison.OrdinalIgnoreCase);
}
