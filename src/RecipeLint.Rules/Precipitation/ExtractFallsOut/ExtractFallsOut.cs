using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A seaweed or humic extract in acid or beside calcium, where it gels or flocs.</summary>
internal sealed class ExtractFallsOut : WorkspaceRule<ExtractFallsOut.Meeting>
{
    public const string RuleName = "extract-falls-out";

    private const string Calcium = Component.Calcium;

    /// <summary>
    /// g/L of an extract as sold below which nothing of its flocs is seen in a feed, and from which it surely is: feeds with 1 to 2 mL/L
    /// are common (common practice, no source).
    /// </summary>
    private const double LeastSeen = 0.05, LeastSurelySeen = 3;

    private static readonly Check _none = Check.That("it holds an extract that acid or calcium throws out", false);

    public override string Name => RuleName;

    protected override IEnumerable<Meeting> Judge(Facts facts, RuleContext context)
    {
        foreach (var stock in facts.Stocks)
        {
            // What nobody states in the extract itself may be lye: only what is acid all the same counts.
            // Nothing is solved for a stock without one.
            var ph = stock.Additions.Any(a => a.Substance.Extract is { FallsOutBelowPh: not null })
                && PhDoubt.AtMost(stock.Chemistry.Mixing) is { } most ? (double?)Rounding.SixDigits(most) : null;
            var calcium = Rounding.SixDigits(1000 * stock.Concentration(Calcium).MolesPerLitre);
            foreach (var meeting in Of(stock.Stock.File, stock.Stock.Name, stock.Additions, ph, calcium, inStock: true))
            {
                yield return meeting;
            }
        }

        foreach (var recipe in facts.Recipes)
        {
            var calcium = Rounding.SixDigits(1000 * recipe.ComponentMoles.GetValueOrDefault(Calcium) / recipe.FinalVolume.Litres);
            var dosed = recipe.Doses.SelectMany(d => d.Direct is { } direct ? [(direct, d.Entry.Place)]
                : d.Stock is { Volume.Litres: > 0 } stock
                    ? stock.Additions.Where(a => InFeed(a, d.Volume / stock.Volume, recipe) >= LeastSeen).Select(a => (a, d.Entry.Place))
                : Array.Empty<(AdditionFacts, Place)>()).ToList();
            foreach (var meeting in Of(recipe.Recipe.File, recipe.Recipe.Name, dosed.Select(d => d.Item1), null, calcium, inStock: false))
            {
                var dose = meeting.Addition is { } added
                    ? recipe.Doses.FirstOrDefault(d => d.Stock?.Additions.Contains(added) == true)
                    : null;
                yield return meeting with
                {
                    Place = dosed.Find(d => d.Item1 == meeting.Addition).Item2,
                    IsThin = dose is { Stock: { } stock }
                        && InFeed(meeting.Addition!, dose.Volume / stock.Volume, recipe) < LeastSurelySeen,
                };
            }
        }
    }

    /// <summary>g/L of a stock's extract in a feed; 0 for what is no extract.</summary>
    private static double InFeed(AdditionFacts addition, double share, RecipeFacts recipe) =>
        addition.Substance.Extract is null ? 0 : addition.Mass.Grams * share / recipe.FinalVolume.Litres;

    protected override Finding Describe(Meeting verdict, RuleContext context)
    {
        var (origin, addition) = (verdict.Origin!, verdict.Addition!);
        var name = addition.Substance.Name;
        var (what, value, limit, unit) = verdict.InAcid
            ? ($"a pH of {Say.Ph(Math.Round(verdict.Value, 1))} or less in '{verdict.Vessel}'; below about pH {Say.Number(verdict.Limit)} "
                + $"{origin.Called} does not stay dissolved", verdict.Value, verdict.Limit, "")
            : ($"{Say.Number(verdict.Value)} mmol/L of calcium in '{verdict.Vessel}'; from about {Say.Number(verdict.Limit)} mmol/L on "
                + $"calcium throws {origin.Called} out", verdict.Value, verdict.Limit, "mmol/L");
        var where = verdict.InStock
            ? "Keep it out of this stock: dose it from its own bottle into the finished, thinned solution."
            : "Give it as a watering of its own with soft water, or leave it out.";
        var message =
            $"{Say.Capital(name)} meets {what}. It comes out as {origin.Becomes}, which can block filters and drippers and take trace "
                + "metals along; "
            + $"how much cannot be computed, because its composition is not known. {where}";
        return context.Find(verdict.Place ?? addition.Place, message, verdict.IsAllThrownOut ? Harm.Loss : Harm.Damage,
            verdict.IsThin ? Odds.Possible : Odds.Certain) with
        {
            Measured = new Measured(verdict.InAcid ? "pH" : "calcium", value, limit, unit),
        };
    }

    protected override Working Work(Meeting verdict, RuleContext context)
    {
        if (verdict is not { Addition: { } addition, Origin: { } origin })
        {
            return new WorkingBuilder($"extracts in '{verdict.Vessel}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"'{addition.Substance.Name}' in '{verdict.Vessel}'");
        var found = verdict.InAcid
            ? work.Given("pH as mixed", verdict.Value, "", "engine")
            : work.Given("calcium in all", verdict.Value, "mmol/L", "amounts in the file");
        var limit = work.Given($"what {origin.Called} bears", verdict.Limit, verdict.InAcid ? "" : "mmol/L", "catalogue of extracts");
        return work.Check(verdict.Checks[0], found, limit).Done(found);
    }

    private static List<Meeting> Of(
        string file, string vessel, IEnumerable<AdditionFacts> additions, double? ph, double calcium, bool inStock)
    {
        var meetings = new List<Meeting>();
        foreach (var addition in additions)
        {
            if (ph is { } acid && addition.Substance.Extract is { FallsOutBelowPh: { } lowest } sour)
            {
                meetings.Add(new Meeting(addition, vessel, sour, true, acid, lowest.Value, inStock)
                {
                    Files = [file],
                    Checks = [new Check("more acid than it bears", acid, Relation.Under, lowest.Value)],
                });
            }

            if (addition.Substance.Extract is { FallsOutFromCalcium: { } most } hard)
            {
                meetings.Add(new Meeting(addition, vessel, hard, false, calcium, most.Value, inStock)
                {
                    Files = [file],
                    Checks = [new Check("more calcium than it bears", calcium, Relation.AtLeast, most.Value, "mmol/L")],
                });
            }
        }

        return meetings.Count > 0 ? meetings : [new Meeting(null, vessel, null, false, 0, 0, inStock) { Files = [file], Checks = [_none] }];
    }

    /// <summary>An extract and what it meets.</summary>
    /// <param name="InAcid">True when the pH counts, false when calcium does.</param>
    /// <param name="Value">pH, or mmol/L of calcium.</param>
    internal sealed record Meeting(
        AdditionFacts? Addition, string Vessel, ExtractOrigin? Origin, bool InAcid, double Value, double Limit, bool InStock) : Verdict
    {
        /// <summary>
        /// pH units below the limit, and times the calcium, from which all of it is thrown out: humic acid is by definition what does not
        /// dissolve at pH 1 to 2 (recalled); ten times a limit is common practice, no source.
        /// </summary>
        private const double PhBelow = 2, TimesCalcium = 10;

        /// <summary>True for so little of a stock's extract in a feed that the flocs may not be seen.</summary>
        public bool IsThin { get; init; }

        /// <summary>The dose of a recipe; null for what stands in the stock itself.</summary>
        public Place? Place { get; init; }

        public bool IsAllThrownOut => InAcid ? Value <= Limit - PhBelow : Value >= TimesCalcium * Limit;
    }
}
