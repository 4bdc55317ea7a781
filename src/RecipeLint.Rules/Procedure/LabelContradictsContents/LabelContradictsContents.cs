using System.Text.RegularExpressions;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>
/// A label that names what no step brings, or a list of contents that leaves out a nutrient. The words on the label are held against the
/// ions and agents that the additions set free; a label in other words is not judged.
/// </summary>
internal sealed partial class LabelContradictsContents : StockRule<LabelAgainstContents>
{
    public const string RuleName = "label-contradicts-contents";

    /// <summary>What a word on a label stands for, by what it sets free. Any of the components will do.</summary>
    private static readonly (string Name, string[] Components)[] _known =
    [
        ("calcium", [Component.Calcium]),
        ("magnesium", [Component.Magnesium]),
        ("potassium", [Component.Potassium]),
        ("sodium", [Component.Sodium]),
        ("ammonium", [Component.Ammonium]),
        ("nitrate", [Component.Nitrate]),
        ("sulfate", [Component.Sulfate]),
        ("phosphate", [Component.Phosphate]),
        ("chloride", [Component.Chloride]),
        ("iron", [Component.FerrousIron, Component.FerricIron, "inert:Fe-complex"]),
        ("manganese", [Component.Manganese, "inert:Mn-complex"]),
        ("zinc", [Component.Zinc, "inert:Zn-complex"]),
        ("copper", [Component.Copper, "inert:Cu-complex"]),
        ("boron", [Component.Boron]),
        ("molybdenum", [Component.Molybdate]),
        ("silicate", [Component.Silicate]),
        ("EDTA", [Component.Edta]),
        ("DTPA", [Component.Dtpa]),
        ("EDDHA", [Component.Eddha]),
        ("citrate", [Component.Citrate]),
        ("acetate", [Component.Acetate]),
        ("sorbate", [Component.Sorbate]),
        ("benzoate", [Component.Benzoate]),
    ];

    /// <summary>Nutrients and ballast a list of contents is expected to name, with the component and g/mol they are reckoned by.</summary>
    private static readonly (string Name, string Component, double GramsPerMole, bool Trace)[] _listed =
    [
        ("calcium", Component.Calcium, 40.078, false), ("magnesium", Component.Magnesium, 24.305, false),
        ("potassium", Component.Potassium, 39.098, false),
            ("sodium", Component.Sodium, 22.990, false),
        ("chloride", Component.Chloride, 35.45, false), ("iron", Component.FerrousIron, 55.845, true),
        ("iron", Component.FerricIron, 55.845, true),
            ("manganese", Component.Manganese, 54.938, true),
        ("zinc", Component.Zinc, 65.38, true), ("copper", Component.Copper, 63.546, true), ("boron", Component.Boron, 10.81, true),
            ("molybdenum", Component.Molybdate, 95.95, true),
    ];

    private static readonly IReadOnlyList<(string Name, int Group, string[] Components)> _words =
        [.. _known.Select(k => (k.Name, GroupOf(k.Name), k.Components))];

    public override string Name => RuleName;

    protected override IEnumerable<LabelAgainstContents> Judge(StockFacts stock, RuleContext context)
    {
        if (!CanBeJudged(stock))
        {
            return
            [
                new LabelAgainstContents(stock, false, [], [], 0, null)
                {
                    Checks = [Check.That("it is marked for the bench, says what is inside, and all of that is known", false)],
                },
            ];
        }

        var words = Named(stock).ToList();
        var (absent, named) = (Absent(stock, words), words.Count);
        var list = words.Select(w => w.Name).ToHashSet(StringComparer.Ordinal);
        var unnamed = Unnamed(stock, list, context);
        var another = unnamed.Count == 0 && named > 0 ? Namesake(stock, list, context) : null;
        if (another is not null)
        {
            unnamed = Unlisted(stock, list, context);
        }

        var missing = new Check("something is named that nothing brings", absent.Count, Relation.Over, 0);
        var left = new Check("something is brought that a list leaves out", unnamed.Count, Relation.Over, 0);
        return
        [
            new LabelAgainstContents(stock, false, absent, [], named, missing) { Checks = [missing] },
            new LabelAgainstContents(stock, true, [], unnamed, named, left) { Checks = [left], Namesake = another },
        ];
    }

    protected override Finding Describe(LabelAgainstContents verdict, RuleContext context) =>
        verdict.IsUnnamed ? Incomplete(verdict, context) : Wrong(verdict, context);

    protected override Working Work(LabelAgainstContents verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"the label of '{verdict.Stock.Stock.Name}' against its steps");
        if (verdict.Count is not { } check)
        {
            return work.Statements(verdict).Done();
        }

        if (!verdict.IsUnnamed)
        {
            work.Remark(verdict.Absent.Count == 0 ? "Everything it names is brought by a step."
                : $"Named and not brought: {Say.List(verdict.Absent)}.");
        }

        foreach (var held in verdict.Unnamed)
        {
            work.Given($"{held.Name}, brought and not named", held.MilligramsPerLitre, "mg/L", From.Amounts);
        }

        var count = work.Given(verdict.IsUnnamed ? "brought and not on the list" : "named and not brought", check.Value, "", From.Count);
        return work.Check(check, count, 0).Done(count);
    }

    /// <summary>True for a bench sheet with a label whose contents are known through and through.</summary>
    private static bool CanBeJudged(StockFacts stock) =>
        stock.Stock is { ForBench: true, Label.ContentsText: not null }
            && stock.IsComplete
            && stock.Additions.All(a => a.Substance.Dissolves.Count > 0);

    /// <summary>What the label names and nothing brings.</summary>
    private static IReadOnlyList<string> Absent(StockFacts stock, List<(string Name, int Group, string[] Components)> named) =>
        [.. named.Where(w => !w.Components.Any(c => Brought(stock, c) > 0)).Select(w => w.Name)];

    private static IEnumerable<(string Name, int Group, string[] Components)> Named(StockFacts stock)
    {
        var inside = KeptApart().Replace(stock.Stock.Label?.ContentsText ?? "", "");
        var matches = Words().Matches(inside);
        return _words.Where(w => matches.Any(m => m.Groups[w.Group].Success));
    }

    private static int GroupOf(string name) => Words().GroupNumberFromName(name) is > 0 and var group
        ? group
        : throw new InvalidOperationException($"no group of the words on labels is called '{name}'");

    /// <summary>What a label warns of is not in the bottle: "keep apart from sulfates and phosphates", "never mix with calcium".</summary>
    [GeneratedRegex(
        @"\b(?:keep|store|away|apart|separate|never|not|don't|before|until)\b[^.;()]*",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex KeptApart();

    /// <summary>One expression, compiled with the program, in which each word is a group; two dozen at run time cost more.</summary>
    [GeneratedRegex(
        @"(?<!\bno |\bwithout |\bfree of )\b(?:"
            + @"(?<calcium>calcium)|(?<magnesium>magnesium|epsom salts?)|(?<potassium>potassium|potash)|(?<sodium>sodium)|"
            + @"(?<ammonium>ammonium)|(?<nitrate>nitrates?|nitric)|(?<sulfate>sul(?:f|ph)ates?)|"
            + @"(?<phosphate>phosphates?|phosphoric)|(?<chloride>chlorides?)|(?<iron>iron|ferrous|ferric)|"
            + @"(?<manganese>manganese)|(?<zinc>zinc)|(?<copper>copper)|(?<boron>boron|boric|borate|borax)|"
            + @"(?<molybdenum>molybdenum|molybdates?)|(?<silicate>silicates?|silicon)|(?<EDTA>EDTA)|(?<DTPA>DTPA)|"
            + @"(?<EDDHA>EDDHA)|(?<citrate>citric|citrates?)|(?<acetate>acetic|vinegar)|(?<sorbate>sorbates?|sorbic)|"
            + @"(?<benzoate>benzoates?|benzoic))\b(?!-free| free)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Words();

    private static Finding Wrong(LabelAgainstContents verdict, RuleContext context)
    {
        var (stock, absent) = (verdict.Stock, verdict.Absent);
        var place = stock.Stock.Label!.Place.Child("contents");
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#absent",
            $"The label of '{stock.Stock.Name}' names {Say.List(absent)}, but nothing that goes in brings "
                + $"{(absent.Count == 1 ? "any" : "them")}. "
            + "Whoever reads it takes the bottle for what it says, and the crop goes without. "
            + "Either a line of the steps was lost or exchanged, or the label is another bottle's: make the two agree.",
            Harm.Loss,
            verdict.IsAnothers ? Odds.Certain : Odds.NearTheLimit);
    }

    private static Finding Incomplete(LabelAgainstContents verdict, RuleContext context)
    {
        var (stock, unnamed) = (verdict.Stock, verdict.Unnamed);
        var place = stock.Stock.Label!.Place.Child("contents");
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#unnamed",
            (verdict.Namesake is { } other
                ? $"'{stock.Stock.Name}' and '{other.Stock.Name}' carry the same list of contents, and it is that of '{other.Stock.Name}': "
                    + "whoever reads it takes the one bottle for the other. "
                    + $"'{stock.Stock.Name}' holds {Listed(unnamed)} besides. "
                : $"The label of '{stock.Stock.Name}' lists its contents, but not {Listed(unnamed)}. "
                    + "A list is read as complete: what is not on it gets added a second time, or nobody expects it. ")
            + "Put it on the label, or move "
                + Say.List(unnamed.SelectMany(u => stock.SuppliersOf(u.Component)).Select(a => a.Substance.Name)
                    .Distinct(StringComparer.Ordinal))
                + " to the stock where it belongs.",
            verdict.Namesake is null ? Harm.Damage : Harm.Loss,
            Odds.Certain) with
        {
            Related = [.. unnamed.SelectMany(u =>
                stock.SuppliersOf(u.Component).Take(1).Select(a => new RelatedPlace(a.Place, $"brings the {u.Name}")))],
            Values = [.. unnamed.Select(u => new NamedValue(u.Name, u.MilligramsPerLitre, "mg/L"))],
        };
    }

    /// <summary>
    /// What reaches the plants and is not on a label that names more than it leaves out; a title ("Calcium nitrate") is no list.
    /// </summary>
    private static string ListOn(StockFacts stock) => stock.Stock.Label!.ContentsText!.Trim();

    private static string Listed(IReadOnlyList<Held> held) =>
        Say.List(held.Select(u => $"{u.Name} ({Say.Number(u.MilligramsPerLitre)} mg/L in the feed)"));

    /// <summary>What a list leaves out; nothing where the label names so little that it reads as a title.</summary>
    private static List<Held> Unnamed(StockFacts stock, HashSet<string> named, RuleContext context)
    {
        var held = HeldIn(stock, context);
        var unnamed = held.Where(h => !named.Contains(h.Name)).ToList();
        return unnamed.Count < held.Count - unnamed.Count ? unnamed : [];
    }

    /// <summary>The same, also of a label that reads as a title.</summary>
    private static List<Held> Unlisted(StockFacts stock, HashSet<string> named, RuleContext context) =>
        [.. HeldIn(stock, context).Where(h => !named.Contains(h.Name))];

    private static List<Held> HeldIn(StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Dose is not { Value: var dose })
        {
            return [];
        }

        var options = context.Options<LabelContradictsContentsOptions>();
        return
        [
            .. _listed
                .Select(l => (Listed: l, Held: new Held(
                    l.Name,
                    l.Component,
                    Rounding.SixDigits(Brought(stock, l.Component) * l.GramsPerMole * 1000 / stock.Volume.Litres * dose.LitresPerLitre))))
                .Where(h => h.Held.MilligramsPerLitre >= (h.Listed.Trace ? options.Trace : options.Main))
                .Select(h => h.Held),
        ];
    }

    /// <summary>
    /// A bottle on the same bench, dosed by the same recipe or made from or into this one, whose label says the very same and is right
    /// about it while this one holds more: then the text is that bottle's.
    /// </summary>
    private static StockFacts? Namesake(StockFacts stock, HashSet<string> named, RuleContext context)
    {
        if (Unlisted(stock, named, context).Count == 0)
        {
            return null;
        }

        var facts = context.Facts;
        return facts.RecipesWith(stock.Stock.File)
            .SelectMany(r => r.Doses)
            .Select(d => d.Stock)
            .OfType<StockFacts>()
            .Concat(facts.StocksWith(stock.Stock.File))
            .Concat(stock.Aliquots.Select(a => facts.FindStock(a.StockFile)).OfType<StockFacts>())
            .FirstOrDefault(other => other.Stock.File != stock.Stock.File
                && CanBeJudged(other)
                && string.Equals(ListOn(other), ListOn(stock), StringComparison.OrdinalIgnoreCase)
                && Unlisted(other, named, context).Count == 0);
    }

    /// <summary>mol brought by additions and reagents; what the water brings is on no label.</summary>
    private static double Brought(StockFacts stock, string component) =>
        stock.Additions.Sum(a => a.ComponentMoles.GetValueOrDefault(component))
            + stock.Adjustments.Sum(a => a.ComponentMoles.GetValueOrDefault(component));
}

/// <summary>Something the stock brings.</summary>
internal sealed record Held(string Name, string Component, double MilligramsPerLitre);

/// <summary>A label held against what goes in.</summary>
/// <param name="IsUnnamed">True for what a list leaves out, false for what it names in vain.</param>
/// <param name="Count">How many contradictions; null where the label is not judged.</param>
/// <param name="Named">How many things that can be looked for the label names.</param>
internal sealed record LabelAgainstContents(
    StockFacts Stock, bool IsUnnamed, IReadOnlyList<string> Absent, IReadOnlyList<Held> Unnamed, int Named, Check? Count) : Verdict
{
    /// <summary>The bottle whose list this is; null where no other carries the same.</summary>
    public StockFacts? Namesake { get; init; }

    /// <summary>More than one word out of place, or none in it: the label is another bottle's, and no slip of the pen.</summary>
    public bool IsAnothers => Absent.Count > 1 || Absent.Count == Named;
}
