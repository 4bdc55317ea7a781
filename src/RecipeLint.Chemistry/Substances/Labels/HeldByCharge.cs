using System.Globalization;

namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// Agents that are no single compound and hold metals by the charge of their acid groups. How much they can hold at most is an estimate:
/// one charge of the agent for each of the metal.
/// </summary>
internal static class HeldByCharge
{
    /// <summary>Dry matter of a liquid product, of which the agent can be no more (common practice, no source).</summary>
    private const double DryMatterOfLiquid = 0.5;

    /// <summary>Charge of the metals fed in traces as they come in such products; iron as iron(II).</summary>
    private const int MetalCharge = 2;

    /// <summary>
    /// Acid groups, moles of charge per gram of dry agent. Lignosulfonate: sulfonate groups, at least 4.5 % of organic sulfur (EU rules on
    /// fertilising products, recalled), and some carboxyl groups. Humic and fulvic acid: carboxyl groups, 3.15 and 5.88 mol/kg (generic
    /// NICA-Donnan parameters of Milne, Kinniburgh and Tipping 2001, Table 4, read as published program code quotes them).
    /// </summary>
    private static readonly (string Agent, double EquivalentsPerGram)[] Densities =
        [("lignosulfonate", 2e-3), ("humic acid", 3.2e-3), ("fulvic acid", 5.9e-3)];

    /// <summary>Moles of charge per gram of dry agent; null for an agent that holds otherwise.</summary>
    public static double? EquivalentsPerGram(string? agent)
    {
        foreach (var (name, density) in Densities)
        {
            if (string.Equals(name, agent, StringComparison.OrdinalIgnoreCase))
            {
                return density;
            }
        }

        return null;
    }

    /// <summary>
    /// Share of the metals that a label calls held which the agent has charge for, 0 to 1: it can weigh no more than what is left beside
    /// the declared elements. 1 for an agent that holds otherwise.
    /// </summary>
    /// <param name="contents">All that the label declares.</param>
    /// <param name="form">Of the product.</param>
    /// <param name="agent">In the words of <see cref="LabelAgents"/>, not of the label.</param>
    /// <param name="boundMoles">Moles of metal per gram of product that the label calls held.</param>
    public static double Share(LabelContents contents, PhysicalForm form, string? agent, double boundMoles)
    {
        if (EquivalentsPerGram(agent) is not { } density || boundMoles <= 0)
        {
            return 1;
        }

        var left = Math.Max(0, 1 - contents.Elements.Sum(contents.Total));
        var dry = form == PhysicalForm.Liquid ? Math.Min(left, DryMatterOfLiquid) : left;
        return Math.Min(1, density * dry / (MetalCharge * boundMoles));
    }

    /// <summary>What was taken for granted, in one sentence.</summary>
    public static string Told(string agent, double share)
    {
        var density = (1000 * EquivalentsPerGram(agent)!.Value).ToString("0.#", CultureInfo.InvariantCulture);
        var percent = (100 * share).ToString("0", CultureInfo.InvariantCulture);
        return $"{char.ToUpperInvariant(agent[0])}{agent[1..]} is taken to hold metals by its charge, {density} meq in a gram of it (an "
            + $"estimate): at most {percent} % of what the label calls held"
            + (share < 1 ? ", and the rest counts as bare." : ".");
    }
}
