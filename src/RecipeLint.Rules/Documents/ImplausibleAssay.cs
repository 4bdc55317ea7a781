using RecipeLint.Analysis;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>An assay that no grade of the substance is sold with: mostly an element content written in its place.</summary>
public sealed class ImplausibleAssay : WorkspaceRule
{
    /// <summary>How near two figures are to be the same on a bag: theory and label differ by a few hundredths.</summary>
    private const double SameFigure = 0.05;

    private static readonly (string Element, string Oxide, double ElementPerOxide)[] _oxides =
        [("P", "P2O5", 0.43642), ("K", "K2O", 0.83015), ("Ca", "CaO", 0.71469), ("Mg", "MgO", 0.60304), ("S", "SO3", 0.40049)];

    public override string Name => "implausible-assay";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var addition in facts.Stocks.SelectMany(Declared).Concat(facts.Recipes.SelectMany(Declared)))
        {
            if (Least(addition.Substance, addition.Assay, context.For(addition.Place.File)) is { } least && Rounding.SixDigits(addition.Assay.Percent) < least)
            {
                yield return Of(addition, least, context);
            }
        }
    }

    /// <summary>What a stock is made of by a declared assay.</summary>
    internal static IReadOnlyList<AdditionFacts> Declared(StockFacts stock) => [.. stock.Additions.Where(a => a is { ThroughAliquot: false, AssayDeclared: true })];

    /// <summary>What goes into a recipe directly by a declared assay.</summary>
    internal static IReadOnlyList<AdditionFacts> Declared(RecipeFacts recipe) =>
        [.. recipe.Doses.Where(d => d.Entry is DirectDose).Select(d => d.Direct).OfType<AdditionFacts>().Where(a => a.AssayDeclared)];

    /// <summary>Lowest plausible assay in %; null for what is not sold by one.</summary>
    internal static double? Least(Substance substance, MassFraction assay, RuleContext context) => substance.Kind switch
    {
        _ when AssayReading.IsStrength(substance, assay) => null,
        SubstanceKind.Product or SubstanceKind.Dye or SubstanceKind.Silicate or SubstanceKind.Oxidiser => null,
        SubstanceKind.Chelate => context.Number("leastChelate"),
        _ => context.Number("least"),
    };

    private static Finding Of(AdditionFacts addition, double least, RuleContext context)
    {
        var (substance, assay) = (addition.Substance, addition.Assay);
        var usual = substance.TypicalAssay is { } typical ? $"; in the trade it has {typical.Value}" : "";
        var message = $"{substance.Name} is declared with an assay of {Say.Number(assay.Percent)} %{usual}. "
            + $"{Meant(substance, assay.Value, context) ?? "So little of it is sold by no one under that name, and every figure counts only that share."} "
            + "Write the share of the named substance in what is weighed, or list the product with its own label.";
        return context.Find(addition.Place.Child("assay"), message) with
        {
            Measured = new Measured("assay", assay.Percent, least, "%"),
            Values = [new NamedValue("assay", assay.Percent, "%"), new NamedValue("lowest plausible", least, "%")],
        };
    }

    /// <summary>What the figure is likely to be instead; null when nothing fits.</summary>
    private static string? Meant(Substance substance, double share, RuleContext context)
    {
        if (substance.Strength.Value is > 0 and < 1)
        {
            return $"It is neither near the strength of the name ({Say.Percent(substance.Strength.Value)}) nor near 100 % of it: counted as a share of it, {Say.Percent(substance.Strength.Value * share)} is left.";
        }

        foreach (var element in substance.Content.Elements.Where(e => e.Symbol is not ("H" or "O" or "C")))
        {
            if (Same(share, substance.Content[element]))
            {
                return $"That is its content of {element.Symbol} ({Say.Percent(substance.Content[element])}), not its purity.";
            }
        }

        foreach (var (element, oxide, factor) in _oxides)
        {
            if (substance.Content[new Element(element)] / factor is > 0 and var content && Same(share, content))
            {
                return $"That is its content counted as {oxide} ({Say.Percent(content)}), not its purity.";
            }
        }

        var dry = context.Facts.Workspace.Catalogue.Substances
            .Where(s => substance.HydrateFamily is not null && s.HydrateFamily == substance.HydrateFamily && s.Id != substance.Id)
            .Select(s => (Substance: s, Factor: SubstanceCatalogue.HydrateFactor(substance, s)))
            .FirstOrDefault(s => s.Factor is { } factor && Same(share, 1 / factor));
        return dry.Substance is null ? null : $"That is what it holds of {dry.Substance.Name} ({Say.Percent(1 / dry.Factor!.Value)}), not its purity.";
    }

    private static bool Same(double share, double content) => content > 0 && Math.Abs((share / content) - 1) <= SameFigure;
}
