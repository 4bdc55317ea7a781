using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>One figure before and after a repair; null where it is not known.</summary>
public sealed record FigureChange(string Name, string Unit, double? Before, double? After);

/// <summary>What a repair changes in one stock or final solution, as far as it changes.</summary>
/// <param name="File">Of the stock or recipe.</param>
/// <param name="IsStock">True for a stock, whose elements are g/L; false for a final solution in mg/L.</param>
/// <param name="Figures">Elements, then pH, conductivity and what falls out; empty where all stays the same.</param>
public sealed record SolutionChange(string File, string Name, bool IsStock, IReadOnlyList<FigureChange> Figures)
{
    /// <summary>Smaller changes come from rounding to what a scale shows.</summary>
    private const double Noticeable = 0.002;

    private const double NoticeablePh = 0.02;

    private const double NoticeableGrams = SolidDeposit.VisibleGramsPerLitre;

    /// <summary>Final solutions in the order of their files, then stocks.</summary>
    public static IReadOnlyList<SolutionChange> Between(Facts before, Facts after) =>
    [
        .. from now in after.Recipes
           let was = before.FindRecipe(now.Recipe.File)
           where was is not null
           select new SolutionChange(now.Recipe.File, now.Recipe.Name, false, Compare(was, now)),
        .. from now in after.Stocks
           let was = before.FindStock(now.Stock.File)
           where was is not null
           select new SolutionChange(now.Stock.File, now.Stock.Name, true, Compare(was, now)),
    ];

    private static IReadOnlyList<FigureChange> Compare(RecipeFacts was, RecipeFacts now)
    {
        var keys = was.Elements.Keys.Union(now.Elements.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal);
        var elements = keys
            .Select(k => new FigureChange(k, "mg/L", was.MilligramsPerLitre(k), now.MilligramsPerLitre(k)))
            .Where(f => Differs(f.Before, f.After, Noticeable * Math.Max(f.Before ?? 0, f.After ?? 0)));
        return
        [
            .. elements,
            .. Unseen(Holding.Of(was), Holding.Of(now), "mg/L", 1000),
            .. Chemistry(was.Chemistry.Final, now.Chemistry.Final),
            .. Deposits(JudgementOf(was), JudgementOf(now)),
        ];
    }

    private static IReadOnlyList<FigureChange> Compare(StockFacts was, StockFacts now)
    {
        var elements = was.Totals.Elements.Union(now.Totals.Elements)
            .Where(e => e.Symbol is not ("H" or "O"))
            .OrderBy(e => e.Symbol, StringComparer.Ordinal)
            .Select(e => new FigureChange(e.Symbol, "g/L", was.Concentration(e).GramsPerLitre, now.Concentration(e).GramsPerLitre))
            .Where(f => Differs(f.Before, f.After, Noticeable * Math.Max(f.Before ?? 0, f.After ?? 0)));
        return
        [
            .. elements,
            .. Unseen(Holding.Of(was), Holding.Of(now), "g/L", 1),
            .. Ph(was.Chemistry.Mixing, now.Chemistry.Mixing),
            .. Deposits(JudgementOf(was), JudgementOf(now)),
        ];
    }

    /// <summary>What brings no element that is counted: peroxide, and what nobody can name; as bought.</summary>
    private static IEnumerable<FigureChange> Unseen(Holding was, Holding now, string unit, double perGram) =>
        was.Items.Concat(now.Items)
            .Where(i => i.Substance.Content.Elements.All(e => e.Symbol is "H" or "O"))
            .DistinctBy(i => i.Substance.Id)
            .Select(i => new FigureChange(i.Name, unit, perGram * PerLitre(was, i), perGram * PerLitre(now, i)))
            .Where(f => Differs(f.Before, f.After, Noticeable * Math.Max(f.Before ?? 0, f.After ?? 0)));

    private static double PerLitre(Holding holding, Held same) =>
        holding.Items.Where(i => i.Substance.Id == same.Substance.Id).Sum(i => i.Grams) / holding.Litres;

    private static IEnumerable<FigureChange> Chemistry(SolutionState was, SolutionState now)
    {
        foreach (var figure in Ph(was, now))
        {
            yield return figure;
        }

        var ec = new FigureChange(
            "EC", "mS/cm", was.Conductivity.At25?.MillisiemensPerCentimetre, now.Conductivity.At25?.MillisiemensPerCentimetre);
        if (Differs(ec.Before, ec.After, Noticeable * Math.Max(ec.Before ?? 0, ec.After ?? 0)))
        {
            yield return ec;
        }
    }

    private static IEnumerable<FigureChange> Ph(SolutionState was, SolutionState now)
    {
        var ph = new FigureChange("pH", "", was.TellsPh ? was.Ph : null, now.TellsPh ? now.Ph : null);
        return Differs(ph.Before, ph.After, NoticeablePh) && !PhDoubt.ReadAlike(ph.Before, ph.After) ? [ph] : [];
    }

    /// <summary>What counts as a deposit of a stock; null where that could not be computed.</summary>
    private static IReadOnlyList<JudgedDeposit>? JudgementOf(StockFacts stock) =>
        DepositJudgement.Of(stock, DepositOptions.Of(stock.Settings)) is { Failure: null } judgement ? judgement.Deposits : null;

    /// <summary>What counts as a deposit of a final solution; null where that could not be computed.</summary>
    private static IReadOnlyList<JudgedDeposit>? JudgementOf(RecipeFacts recipe) => recipe.Chemistry.Final.IsSolved
        ? [.. TankJudgement.Of(recipe, DepositOptions.OfTank(recipe.Settings)).Select(d => d.Deposit)]
        : null;

    /// <summary>Each deposit with the figure that its finding gives, before or after 0 where there is none.</summary>
    private static IEnumerable<FigureChange> Deposits(IReadOnlyList<JudgedDeposit>? before, IReadOnlyList<JudgedDeposit>? after) =>
        (before ?? []).Concat(after ?? []).Where(d => d.GramsPerLitre > 0)
            .DistinctBy(Key)
            .Select(d => new FigureChange($"{d.Solid.Called} that falls out", "g/L", GramsOf(before, d), GramsOf(after, d)))
            .Where(f => Differs(f.Before, f.After, NoticeableGrams) || f.Before > 0 != f.After > 0);

    private static double? GramsOf(IReadOnlyList<JudgedDeposit>? deposits, JudgedDeposit same) =>
        deposits is null ? null : deposits.FirstOrDefault(d => Key(d) == Key(same))?.GramsPerLitre ?? 0;

    private static string Key(JudgedDeposit deposit) => deposit.Owner.EachSolidApart ? deposit.Solid.Name : deposit.Owner.Name;

    private static bool Differs(double? before, double? after, double by) =>
        before is { } was && after is { } now ? Math.Abs(now - was) > by : before is null != after is null;
}
