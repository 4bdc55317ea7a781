using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Reports.Markup;
using RecipeLint.Rules;

namespace RecipeLint.Reports.Handbook;

/// <summary>The kinds of file and the ways to write an amount, on one page.</summary>
internal static class FilesPage
{
    /// <summary>The smallest stock that says everything a check wants to know.</summary>
    internal const string SmallestStock =
        """
        {
          "format": 1,
          "name": "Part A",
          "makes": "2 L",
          "dose": "10 mL/L",
          "keep": { "at": "8..25 °C", "for": "3 months", "light": "dark" },
          "steps": [
            { "pour": "1.5 L", "of": "distilled" },
            { "add": "calcium-nitrate-4h2o", "amount": "180 g", "assay": "99 %" },
            { "stir": "until clear" },
            { "topUp": "2 L", "of": "distilled" }
          ]
        }
        """;

    private static readonly (string Name, string Holds)[] _kinds =
    [
        ("part-a.stock.json", "A stock: how much it makes, its dose, how it is kept, and the steps in the order they are done."),
        ("lettuce.recipe.json", "What the plants get: the crop, the water, the doses, and what you want to reach."),
        ("rain.water.json", "An analysis of the water you start from."),
        ("bags.substances.json", "Products of your shop that are not in the built-in list, by formula, strength or label."),
        ("recipelint.json", "Your scales, measures, vessels and stores, and findings you have accepted with a reason."),
    ];

    /// <summary>Kinds of amount with texts that are read without a question.</summary>
    internal static readonly (string What, Due Due, string[] Written, string Remark)[] Quantities =
    [
        ("Weight", Due.Mass, ["24 g", "350 mg", "1.2 kg",
            "2 oz"], "Always with its unit, and with a point: a comma can be read in two ways."),
        ("Volume", Due.Volume, ["2 L", "45 mL", "1 US gal"], "A bare gallon is asked about: the UK one is a fifth larger."),
        ("Dose", Due.Dose, ["10 mL/L", "1:100"], "Both say the same: one part in a hundred parts of feed."),
        ("Target", Due.Analyte with { Bases = ["P2O5", "K2O"], AllowTolerance = true }, ["150 mg/L", "150 mg/L ± 10 %",
            "92 mg/L as P2O5"], "With the width that is good enough for you. Add \"as P2O5\" or \"as K2O\" when you count as labels do."),
        ("Temperature", Due.Temperatures, ["20 °C", "8..25 °C"], "For storage, the coldest and the warmest."),
        ("Hardness", Due.Hardness with { Bases = ["CaCO3"] }, ["10 °dH", "180 mg/L as CaCO3"], "Say which scale the analysis uses."),
        ("Time", Due.Duration, ["7 days", "3 months"], "How long a stock is kept."),
    ];

    public static HandbookFile Make(Page page)
    {
        var kinds = Html.Join(_kinds.Select(k => Html.Of($"<div><dt><code>{k.Name}</code></dt><dd>{k.Holds}</dd></div>\n")));
        var quantities = Html.Join(Quantities.Select(q =>
            Html.Of($"<div><dt>{q.What}</dt><dd><p>{Html.Join(Html.Of($" "), q.Written.Select(w => Html.Of($"<code>\"{w}\"</code>")))}</p><p>{ChemicalText.Of(q.Remark)}</p></dd></div>\n")));
        var main = Html.Of(
            $"""
            <article class="card">
            <header class="tab"><p class="number">Guide</p>
            <h1>Files and units</h1>
            <p class="lead">A recipe is a few lines of plain text. You write what you do at the bench; RecipeLint works out the rest.</p></header>
            <section aria-labelledby="stock">
            <h2 id="stock">A whole stock</h2>
            {MarkedFile.Figure(new SourceFile("part-a.stock.json", Encoding.UTF8.GetBytes(SmallestStock)), [], new HashSet<int>())}<p>One verb a step: <code>pour</code>, <code>add</code>, <code>stir</code>, <code>adjust</code>, <code>filter</code>, <code>topUp</code>. The order of the lines is the order of the work. A <code>"note"</code> may stand anywhere.</p>
            </section>
            <section aria-labelledby="kinds">
            <h2 id="kinds">Which file holds what</h2>
            <dl class="words">
            {kinds}</dl>
            <p>The end of the name decides what a file is: keep <code>.stock.json</code> and put your own word before it.</p>
            </section>
            <section aria-labelledby="amounts">
            <h2 id="amounts">How amounts are written</h2>
            <dl class="words">
            {quantities}</dl>
            <p>Where a number, unit or name can be read in two ways, RecipeLint asks and shows both. It never guesses: see <a href="{page.Links.Rule(RuleNames.AmbiguousNumber)}">ambiguous-number</a>, <a href="{page.Links.Rule(RuleNames.AmbiguousUnit)}">ambiguous-unit</a> and <a href="{page.Links.Rule(RuleNames.AmbiguousSubstance)}">ambiguous-substance</a>.</p>
            </section>
            <section aria-labelledby="start">
            <h2 id="start">Three commands to start with</h2>
            <dl class="words">
            <div><dt><code>recipelint init my-shop</code></dt><dd>writes a small shop that works, to change into yours</dd></div>
            <div><dt><code>recipelint check my-shop</code></dt><dd>reads all its files and says what will go wrong</dd></div>
            <div><dt><code>recipelint explain calcium-with-sulfate</code></dt><dd>tells why a rule exists; any name of this book will do</dd></div>
            </dl>
            </section>
            </article>

            """);
        return page.With(main);
    }
}
