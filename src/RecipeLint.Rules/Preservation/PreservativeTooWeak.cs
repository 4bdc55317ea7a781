using RecipeLint.Analysis;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>A preservative of which too little is undissociated acid at the pH of the stock.</summary>
public sealed class PreservativeTooWeak : StockRule, IProposesRepairs
{
    /// <summary>More preservative than this is not recommended, g/L: the acid comes near its solubility on a cold night.</summary>
    private const double MostUsual = 1.5;

    /// <summary>No stock is soured further than this for a preservative.</summary>
    private const double LowestUsualPh = 2.5;

    public override string Name => "preservative-too-weak";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var state = stock.Chemistry.Mixing;
        var dosed = stock.Additions
            .Where(a => a.Substance.IsPreservative && a.Mass.Grams > 0)
            .OrderByDescending(a => a.Mass.Grams)
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .ToList();
        if (dosed.Count == 0
            || !stock.IsComplete
            || !state.IsSolved
            || state.Ph <= context.Number("safeBelowPh")
            || (stock.Stock.Keep?.For is { } shelf && shelf.Value.Days <= context.Number("freshDays")))
        {
            yield break;
        }

        var acids = PreservativeAcids.In(stock, state, name => context.Number(OptionOf(name)));
        var strength = Rounding.SixDigits(acids.Sum(a => a.Strength));
        if (acids.Count == 0 || strength >= 1)
        {
            yield break;
        }

        var main = acids[0];
        var food = MicrobialFood.In(stock).Sum(f => f.GramsPerLitre);
        var feeds = Rounding.SixDigits(food) >= context.Number("minimumFood");
        var what = string.Join(" and ", acids.Select(a =>
            $"only {Say.Number(a.WholeMilligramsPerLitre)} of the {Say.Number(a.TotalMilligramsPerLitre)} mg/L {a.Name} as undissociated acid, where {Say.Number(a.LeastMilligramsPerLitre)} mg/L is the least that works"));
        var message = $"At pH {Say.Number(Math.Round(state.Ph, 2))} '{stock.Stock.Name}' holds {what}. "
            + (feeds
                ? $"Only that form enters the cells of moulds and yeasts, which live on the {Say.Number(food)} g/L of organic matter as if nothing had been added. "
                : "Only that form enters the cells of moulds and yeasts, so this much protects nothing. ")
            + Remedy(main, acids.Sum(a => a.Strength), dosed.Sum(a => a.Mass.Grams) / stock.Volume.Litres, acids.Count == 1);
        yield return context.Find(dosed[0].Place, message, feeds ? null : Level.Note) with
        {
            Related = [.. dosed.Skip(1).Select(a => new RelatedPlace(a.Place, "also counted"))],
            Measured = new Measured("undissociated acid over the least that works", strength, 1, ""),
            Values =
            [
                new NamedValue("pH", state.Ph, ""),
                .. acids.Select(a => new NamedValue("undissociated " + a.Name, a.WholeMilligramsPerLitre, "mg/L")),
                new NamedValue("organic matter", food, "g/L"),
            ],
        };
    }

    internal static string OptionOf(string acid) => acid switch
    {
        "benzoic acid" => "leastBenzoic",
        "sorbic acid" => "leastSorbic",
        _ => "leastPropionic",
    };

    private static string Remedy(PreservativeAcids acid, double strength, double gramsPerLitre, bool alone)
    {
        var ways = new List<string>();
        var share = acid.LeastMilligramsPerLitre / acid.TotalMilligramsPerLitre;
        if (alone && share < 0.95 && acid.ApparentPk + Math.Log10((1 - share) / share) is >= LowestUsualPh and var ph)
        {
            // A tenth lower, because the acid itself and the topping up move it a little.
            ways.Add($"Acidify to pH {Say.Number(Math.Floor((ph - 0.1) * 10) / 10)}, where the same dose is enough");
        }

        if (strength > 0 && gramsPerLitre / strength <= MostUsual)
        {
            var grams = Say.Number(Math.Ceiling(gramsPerLitre / strength * 20) / 20);
            ways.Add((ways.Count == 0 ? "Raise" : "or raise") + $" the dose to {grams} g/L");
        }

        if (ways.Count == 0)
        {
            ways.Add("Acidify to pH 4 and give 0.5 to 1 g/L, or mix it fresh within a week");
        }

        return string.Join(", ", ways) + ".";
    }

    /// <summary>More of it, more acid, or a short life.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        foreach (var place in finding.Related.Select(r => r.Place).Prepend(finding.Place))
        {
            if (context.AdditionAt(stock, place) is { } preservative)
            {
                yield return Additions.More(context, preservative);
            }
        }

        foreach (var acid in Additions.Acid(context, stock))
        {
            yield return acid;
        }

        yield return Keep.For(context, stock, context.Rule.Number("freshDays"));
    }
}
