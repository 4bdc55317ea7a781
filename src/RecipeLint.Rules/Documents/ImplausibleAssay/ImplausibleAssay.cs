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
internal sealed class ImplausibleAssay : WorkspaceRule<ImplausibleAssay.Declared>
{
    public const string RuleName = "implausible-assay";

    /// <summary>How near two figures are to be the same on a bag: theory and label differ by a few hundredths.</summary>
    private const double SameFigure = 0.05;

    private static readonly (string Element, string Oxide, double ElementPerOxide)[] _oxides =
        [("P", "P2O5", 0.43642), ("K", "K2O", 0.83015), ("Ca", "CaO", 0.71469), ("Mg", "MgO", 0.60304), ("S", "SO3", 0.40049)];

    public override string Name => RuleName;

    protected override IEnumerable<Declared> Judge(Facts facts, RuleContext context)
    {
        var ofStocks = facts.Stocks.SelectMany(s => Of(s.Stock.Name, s.Stock.File, s.Additions.Where(a => !a.ThroughAliquot)));
        var ofRecipes = facts.Recipes.SelectMany(r => Of(
            r.Recipe.Name, r.Recipe.File, r.Doses.Where(d => d.Entry is DirectDose).Select(d => d.Direct).OfType<AdditionFacts>()));
        return ofStocks.Concat(ofRecipes);

        IEnumerable<Declared> Of(string name, string file, IEnumerable<AdditionFacts> additions)
        {
            var options = context.For(file).Options<ImplausibleAssayOptions>();
            return additions.Where(a => a.AssayDeclared).Select(a => Judged(name, a, options))
                .DefaultIfEmpty(new Declared(name, null, null) { Checks = [Check.That("one is declared", false)] })
                .Select(d => d with { Files = [file] });
        }
    }

    protected override Finding Describe(Declared verdict, RuleContext context)
    {
        var (addition, least) = (verdict.Addition!, verdict.Least!.Value.Value);
        var (substance, assay) = (addition.Substance, addition.Assay);
        var usual = substance.TypicalAssay is { } typical ? $"; in the trade it has {typical.Value}" : "";
        var message = $"{substance.Name} is declared with an assay of {Say.Number(assay.Percent)} %{usual}. "
            + (Meant(substance, assay.Value, context)
                ?? "So little of it is sold by no one under that name, and every figure counts only that share.")
            + " Write the share of the named substance in what is weighed, or list the product with its own label.";
        return context.Find(addition.Place.Child("assay"), message, verdict.Checks[0].IsTwice ? Harm.Loss : Harm.Damage, Odds.Certain) with
        {
            Measured = new Measured("assay", assay.Percent, least, "%"),
            Values = [new NamedValue("assay", assay.Percent, "%"), new NamedValue("lowest plausible", least, "%")],
        };
    }

    protected override Working Work(Declared verdict, RuleContext context)
    {
        if (verdict.Addition is not { } addition)
        {
            return new WorkingBuilder($"the assays of '{verdict.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"{addition.Substance.Name} in '{verdict.Name}'");
        var assay = work.Given("assay", addition.Assay.Percent, "%", "file");
        if (verdict.Least is not { } least)
        {
            return work.Statements(verdict).Done();
        }

        work.Remark(addition.Substance.TypicalAssay is { } typical
            ? $"In the trade it has {typical.Value}."
            : "No usual range stands in the catalogue.");
        return work.Check(verdict.Checks[0], assay, work.Given("least", least, "%", "options")).Done(assay);
    }

    private static Declared Judged(string name, AdditionFacts addition, ImplausibleAssayOptions options)
    {
        var declared = new Declared(name, addition, Least(addition.Substance, addition.Assay, options)) { Checks = [] };
        return declared with
        {
            Checks = declared.Least is { } least
                ? [new Check("lower than anything that is sold", Rounding.SixDigits(addition.Assay.Percent), Relation.Under, least, "%")]
                : [Check.That("it is sold by its purity, and the figure is not its strength", false)],
        };
    }

    /// <summary>Lowest plausible assay in %; null for what is not sold by one.</summary>
    private static NumberOption? Least(Substance substance, MassFraction assay, ImplausibleAssayOptions options) => substance.Kind switch
    {
        _ when AssayReading.IsStrength(substance, assay) => null,
        SubstanceKind.Product or SubstanceKind.Dye or SubstanceKind.Silicate or SubstanceKind.Oxidiser => null,
        SubstanceKind.Chelate => options.LeastChelate,
        _ => options.Least,
    };

    /// <summary>What the figure is likely to be instead; null when nothing fits.</summary>
    private static string? Meant(Substance substance, double share, RuleContext context)
    {
        if (substance.Strength.Value is > 0 and < 1)
        {
            return $"It is neither near the strength of the name ({Say.Percent(substance.Strength.Value)}) nor near 100 % of it: counted "
                + $"as a share of it, {Say.Percent(substance.Strength.Value * share)} is left.";
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
        return dry.Substance is null
            ? null
            : $"That is what it holds of {dry.Substance.Name} ({Say.Percent(1 / dry.Factor!.Value)}), not its purity.";
    }

    private static bool Same(double share, double content) => content > 0 && Math.Abs((share / content) - 1) <= SameFigure;

    /// <summary>One declared assay.</summary>
    /// <param name="Name">Of the stock or recipe.</param>
    /// <param name="Addition">Null where none is declared.</param>
    /// <param name="Least">%; null for what is not sold by its purity.</param>
    internal sealed record Declared(string Name, AdditionFacts? Addition, NumberOption? Least) : Verdict;
}
