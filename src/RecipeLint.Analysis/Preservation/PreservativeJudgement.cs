using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Preservation;

/// <summary>How a stock stands against moulds and yeasts.</summary>
public enum PreservativeStanding
{
    /// <summary>Used up before anything grows, or it keeps itself.</summary>
    NotNeeded,

    /// <summary>There is nothing to live on and no preservative.</summary>
    NoFood,

    /// <summary>Food, and no preservative.</summary>
    Missing,

    /// <summary>A preservative of which too little is undissociated acid.</summary>
    Weak,

    /// <summary>Enough undissociated acid for the food and the time.</summary>
    Enough,

    /// <summary>There is a preservative, and the stock cannot be computed.</summary>
    NotKnown,
}

/// <summary>
/// The one judgement of what keeps a stock from spoiling: which food must be guarded, what acid stays undissociated, how much it takes.
/// Rules, splitting and diagnosis read it and decide nothing of it again.
/// </summary>
public sealed class PreservativeJudgement
{
    /// <summary>More than this of a preservative is not recommended, g/L: the acid comes near its solubility on a cold night.</summary>
    public const double MostUsual = 1.5;

    /// <summary>The pH at which both usual preservatives work (food preservation handbooks, recalled).</summary>
    public const double WorkingPh = 4;

    /// <summary>Doses are told in steps of this, g/L.</summary>
    private const double DoseStep = 0.05;

    /// <summary>The pH up to which each usual preservative works (food preservation handbooks, recalled).</summary>
    public const double SorbateTo = 5.5, BenzoateTo = 4.5;

    private const int MostRounds = 12;

    private readonly StockFacts _stock;
    private readonly PreservativeNeeds _needs;
    private readonly bool _isSolved;

    private PreservativeJudgement(StockFacts stock, PreservativeNeeds needs)
    {
        (_stock, _needs) = (stock, needs);
        Food = MicrobialFood.In(stock);
        FoodGramsPerLitre = Rounding.SixDigits(Food.Sum(f => f.GramsPerLitre));
        Dosed = DosedIn(stock);
        _isSolved = stock.IsComplete && stock.Chemistry.Mixing.IsSolved;
        KeptBy = SelfKeepers.Of(stock, needs);
        Acids = IsComputed ? In(stock.Chemistry.Mixing, stock.Concentration(PreservativeAcids.Components[^1]).MolesPerLitre) : [];
        Strength = Rounding.SixDigits(Acids.Sum(a => a.Strength));
        Standing = Stands();
    }

    /// <summary>What microbes live on, the largest first.</summary>
    public IReadOnlyList<MicrobialFood> Food { get; }

    /// <summary>What it is called: of a liquid extract nobody says how much of it is organic matter.</summary>
    public string FoodCalled => MicrobialFood.Called(Food);

    /// <summary>g/L of it in all, to six digits.</summary>
    public double FoodGramsPerLitre { get; }

    /// <summary>Whether there is enough to live on.</summary>
    public bool HasFood => FoodGramsPerLitre >= _needs.MinimumFood;

    /// <summary>The preservatives that go in, the largest first.</summary>
    public IReadOnlyList<AdditionFacts> Dosed { get; }

    /// <summary>How long it is kept; null where the file does not say, which counts as long.</summary>
    public double? Days => _stock.Stock.Keep?.For?.Value.Days;

    /// <summary>Used up before anything grows.</summary>
    public bool IsUsedFresh => Days <= _needs.FreshDays;

    /// <summary>What keeps it without a preservative.</summary>
    public SelfKeeping KeptBy { get; }

    /// <summary>Whether its equilibrium is known, its pH among it.</summary>
    public bool IsComputed => _isSolved && !HangsOnAnUnknownPh;

    /// <summary>True where nobody knows the pH on which it depends whether a preservative works.</summary>
    public bool HangsOnAnUnknownPh => _isSolved && !_stock.Chemistry.Mixing.TellsPh;

    /// <summary>The acids, the most effective first; empty where the stock is not computed.</summary>
    public IReadOnlyList<PreservativeAcids> Acids { get; }

    /// <summary>What there is over what is needed, all acids together, to six digits; 1 is enough.</summary>
    public double Strength { get; }

    public PreservativeStanding Standing { get; }

    /// <summary>The judgement of a stock.</summary>
    public static PreservativeJudgement Of(StockFacts stock, PreservativeNeeds needs) => new(stock, needs);

    /// <summary>The preservatives that go into a stock, the largest first.</summary>
    public static IReadOnlyList<AdditionFacts> DosedIn(StockFacts stock) =>
    [
        .. stock.Additions.Where(a => a.Substance.IsPreservative && a.Mass.Grams > 0)
            .OrderByDescending(a => a.Mass.Grams).ThenBy(a => a.Id, StringComparer.Ordinal),
    ];

    /// <summary>mg/L of undissociated acid that this stock needs, by the name of the acid.</summary>
    public double Least(string acid) => _needs.Least(acid, FoodGramsPerLitre, Days);

    /// <summary>
    /// g/L of a preservative, all of it that goes in, at which this stock is guarded, in steps of 0.05; null where no usual dose does it at
    /// the pH the stock then comes to.
    /// </summary>
    /// <param name="ph">The pH of the stock; null for the one it comes to with the preservative in it.</param>
    public double? DoseOf(Substance preservative, double? ph = null)
    {
        if (!(ph is null ? IsComputed : _isSolved) || !preservative.Dissolves.Any(d => PreservativeAcids.Components.Contains(d.Component)))
        {
            return null;
        }

        var steps = 1.0;
        for (var round = 0; round < MostRounds; round++)
        {
            var grams = steps * DoseStep;
            if (grams > MostUsual || StrengthWith(preservative, grams, ph) is not { } strength)
            {
                return null;
            }

            if (strength >= 1)
            {
                return Math.Round(grams, 2);
            }

            // Nearly in proportion; the salt itself makes the stock a little less acid.
            steps = Math.Max(steps + 1, strength > 0 ? Math.Floor(steps / strength) : steps * 2);
        }

        return null;
    }

    private double? StrengthWith(Substance preservative, double gramsPerLitre, double? ph)
    {
        var replaced = _stock.Additions.Where(a => a.Substance.Id == preservative.Id)
            .Select(a => ComponentMoles.Of(a.ComponentMoles.Select(m => KeyValuePair.Create(m.Key, -m.Value))));
        var added = ComponentMoles.Of(
            preservative.Dissolves.Select(d => KeyValuePair.Create(d.Component, d.MolesPerGram * gramsPerLitre * _stock.Volume.Litres)));
        var moles = ComponentMoles.Sum([_stock.ComponentMoles, added, .. replaced]);
        var state = StateSolver.Solve(
            SolutionMix.Of(moles, _stock.Volume),
            new StateRequest(StateMoment.Mixing, new Temperature(SolutionMix.FilledAtCelsius), false, []) { SetPh = ph });
        return state.IsSolved
            ? Rounding.SixDigits(In(
                state, moles.GetValueOrDefault(PreservativeAcids.Components[^1]) / _stock.Volume.Litres).Sum(a => a.Strength))
            : null;
    }

    private IReadOnlyList<PreservativeAcids> In(SolutionState state, double propionate) => PreservativeAcids.In(state, propionate, Least);

    private PreservativeStanding Stands() =>
        IsUsedFresh || KeptBy != SelfKeeping.None ? PreservativeStanding.NotNeeded
        : Dosed.Count == 0 ? HasFood ? PreservativeStanding.Missing : PreservativeStanding.NoFood
        : Acids.Count == 0 ? PreservativeStanding.NotKnown
        : Strength >= 1 ? PreservativeStanding.Enough : PreservativeStanding.Weak;
}
