using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// What acid groups a gram of humic or fulvic acid carries, by their pK at zero ionic strength. The weights follow the generic NICA-Donnan
/// model at 0.1 mol/L of a salt of single charges, pH 3 to 11, within 0.1 eq/kg; at 0.01 and 1 mol/L, where that model weakens or
/// strengthens all groups at once, within 0.45 eq/kg (humic-charge.md of the tests). Extracts differ among themselves by a fifth and more.
/// Calcium and metals that these groups hold are not in it: no constants of theirs were read.
/// </summary>
public static class HumicMatter
{
    /// <summary>The groups, the strongest first.</summary>
    public static IReadOnlyList<string> Groups { get; } =
        [Component.AcidGroup25, Component.AcidGroup45, Component.AcidGroup65, Component.AcidGroup85, Component.AcidGroup105];

    /// <summary>eq per kg of dry humic acid, group by group.</summary>
    public static IReadOnlyList<double> HumicAcid { get; } = [1.061, 1.618, 0.936, 0.682, 0.764];

    /// <summary>eq per kg of dry fulvic acid, group by group.</summary>
    public static IReadOnlyList<double> FulvicAcid { get; } = [2.696, 2.082, 0.927, 0.528, 1.193];

    private static readonly double[] LogK = [2.5, 4.5, 6.5, 8.5, 10.5];

    /// <summary>
    /// The groups of a product and the unnamed cation that brings them to the pH at which it is sold; mol per gram of product.
    /// </summary>
    /// <param name="groups">eq/kg of the dry matter, one for each of <see cref="Groups"/>.</param>
    /// <param name="share">Dry humic matter in the product, 0 to 1.</param>
    /// <param name="ph">At which it is sold.</param>
    public static IReadOnlyList<ComponentYield> Yields(IReadOnlyList<double> groups, double share, double ph)
    {
        var (yields, charge) = (new List<ComponentYield>(), 0.0);
        for (var k = 0; k < Groups.Count; k++)
        {
            var moles = groups[k] * share / 1000;
            yields.Add(new(Groups[k], moles));
            charge += moles / (1 + Math.Pow(10, LogK[k] - ph));
        }

        return [.. yields, new(SolutionComponent.ClosingCation, charge), new(Component.Hydrogen, yields.Sum(y => y.MolesPerGram) - charge)];
    }
}

/// <summary>What a liquid extract of humic matter is taken for where nobody states it (common practice, no source).</summary>
/// <param name="Called">In a sentence ("humic acid").</param>
/// <param name="Groups">eq/kg of its dry matter, one for each of <see cref="HumicMatter.Groups"/>.</param>
/// <param name="Share">Of the liquid, 0 to 1.</param>
/// <param name="Ph">To which it is brought; humates are dissolved with potassium hydroxide, fulvic acid stays dissolved in its own.</param>
public sealed record HumicContent(string Called, IReadOnlyList<double> Groups, double Share, double Ph)
{
    /// <summary>mol per gram of the liquid.</summary>
    public IReadOnlyList<ComponentYield> Yields => HumicMatter.Yields(Groups, Share, Ph);

    /// <summary>Charge of the unnamed cation on which its pH hangs, mol per gram.</summary>
    public double GuessedCharge => Yields.Single(y => y.Component == SolutionComponent.ClosingCation).MolesPerGram;

    /// <summary>What was taken for granted, in two sentences.</summary>
    public string Told => System.FormattableString.Invariant(
        $"It is taken as {100 * Share:0.#} % of {Called} brought to pH {Ph:0.#} with a cation nobody names, and its acid groups count ")
        + "after a generic model of proton binding. Products differ by half and more, and with them what it does to the pH.";
}
