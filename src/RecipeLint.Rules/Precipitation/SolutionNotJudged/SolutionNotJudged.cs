using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A stock or tank of which it could not be told what falls out, or not at every temperature it is kept at.</summary>
internal sealed class SolutionNotJudged : WorkspaceRule<SolutionNotJudged.Judged>, IProposesRepairs
{
    public const string RuleName = "solution-not-judged";

    private const int MostNames = 3;

    public override string Name => RuleName;

    protected override IEnumerable<Judged> Judge(Facts facts, RuleContext context) =>
        context.OfEachStockAlone<Judged>(
            s =>
            {
                var isComplete = s.IsComplete && s.ComponentMoles.Any(c => c.Value > 0);
                var judged = Of("stock", s.Stock.Name, s.Stock.Place, isComplete, () => s.Chemistry.States);
                return isComplete ? [judged, .. Kept(s), .. NotFollowed(s)] : [judged];
            })
            .Concat(context.OfEachRecipeAlone<Judged>(
                r =>
                [
                    Of(
                        "tank of",
                        r.Recipe.Name,
                        r.Recipe.Place,
                        r.IsComplete && r.ComponentMoles.Any(c => c.Value > 0),
                        () => r.Chemistry.States),
                ]));

    /// <summary>A stock is judged at most as cold and as warm as the model goes: what that leaves out is said.</summary>
    private static IEnumerable<Judged> Kept(StockFacts stock)
    {
        var (low, high) = (stock.StorageTemperature.Low.Celsius, stock.StorageTemperature.High.Celsius);
        if (KeptWords.IsColderThanTheModel(stock))
        {
            yield return Of(new Check(
                "kept colder than the model goes", Rounding.SixDigits(low), Relation.Under, SolutionInput.LowestCelsius, "°C"));
        }

        if (KeptWords.IsWarmerThanTheModel(stock))
        {
            yield return Of(new Check(
                "kept warmer than the model goes", Rounding.SixDigits(high), Relation.Over, SolutionInput.HighestCelsius, "°C"));
        }

        Judged Of(Check check) => new("stock", stock.Stock.Name, stock.Stock.Keep?.At?.Place ?? stock.Stock.Place, null, [])
        {
            Kept = stock,
            Checks = [check],
            Files = [stock.Stock.Place.File],
        };
    }

    /// <summary>Steps of which nothing is known because those before took all the work that is spent on one stock.</summary>
    private static IEnumerable<Judged> NotFollowed(StockFacts stock)
    {
        if (stock.Mixing is { IsProcedure: true, NotFollowedFrom: { } step })
        {
            yield return new("stock", stock.Stock.Name, step.Step.Place, null, [])
            {
                NotFollowed = step,
                Checks = [Check.That("the steps before it take all the work that is spent on one stock", true)],
                Files = [stock.Stock.Place.File],
            };
        }
    }

    private static Judged Of(string kind, string name, Place place, bool isComplete, Func<IReadOnlyList<SolutionState>> states)
    {
        if (!isComplete)
        {
            return Verdict(null, [], Check.That("it could be read whole and holds something that dissolves", false));
        }

        if (states().FirstOrDefault(s => !s.IsSolved) is { } failed)
        {
            return Verdict(failed, [], Check.That("an equilibrium is not found", true));
        }

        // Strong solutions: soluble salts are compared with handbook tables; anything else near its limit was passed over.
        var untold = states().Select(s => (State: s, Solids: DepositJudgement.UntoldIn(s))).FirstOrDefault(s => s.Solids.Count > 0);
        var strongest = untold.State ?? states().MaxBy(s => s.IonicStrengthMolPerKg)!;
        return strongest.IsBeyondTheModel
            ? Verdict(
                strongest,
                untold.Solids ?? [],
                Check.That("it is outside the range of the model", true),
                Check.That("a solid that is no plain salt comes near its limit there", untold.Solids is not null))
            : Verdict(strongest, [], new Check(
                "outside the model", strongest.IonicStrengthMolPerKg, Relation.Over, SaltVerdicts.HighestIonicStrength, "mol/kg"));

        Judged Verdict(SolutionState? state, IReadOnlyList<Solid> passed, params IReadOnlyList<Check> checks) =>
            new(kind, name, place, state, passed) { Checks = checks, Files = [place.File] };
    }

    protected override Finding Describe(Judged verdict, RuleContext context)
    {
        if (verdict.Kept is { } kept)
        {
            return BeyondItsTemperatures(verdict, kept, context);
        }

        if (verdict.NotFollowed is { } step)
        {
            return context.Find(
                verdict.Place,
                $"The mixing of '{verdict.Called}' is followed up to here, step {step.Index + 1}, and no further: so many salts in so "
                    + "little water take all the work that is spent on one stock. What falls out in a later step and stays is not known "
                    + "here, so silence says nothing of it. Pour more of the water first.",
                Harm.Habit,
                Odds.Certain);
        }

        var state = verdict.State!;
        if (state.Failure is { } failure)
        {
            return context.Find(
                verdict.Place,
                $"What falls out of the {verdict.Kind} '{verdict.Called}' at {Wording.Celsius(state.Temperature)} could not be computed: "
                    + $"{Reason(failure)} "
                + "No rule on deposits has judged it there, so silence means nothing. "
                + "Check its amounts, and try it in a glass before a batch is made.",
                Harm.Habit,
                Odds.Certain);
        }

        var passed = verdict.Passed.Select(s => s.Called).Distinct(StringComparer.Ordinal).Take(MostNames);
        return context.Find(
            verdict.Place,
            $"The {verdict.Kind} '{verdict.Called}' is stronger than the model covers: {Reason(state.Validity.Reasons[0])} "
            + $"Soluble salts were compared with handbook tables; whether {Say.List(passed)} stays dissolved cannot be told. "
            + "Make it weaker, or try it in a glass at the coldest storage temperature.",
            Harm.Habit,
            Odds.Certain);
    }

    private static Finding BeyondItsTemperatures(Judged verdict, StockFacts stock, RuleContext context)
    {
        var check = verdict.Checks[0];
        var isWarm = check.Relation == Relation.Over;
        var (to, end) = (Say.Number(check.Value), Say.Number(check.Limit));
        return context.Find(
            verdict.Place,
            $"{IdPath.Of(context.Facts.Workspace, verdict.Place)}#{(isWarm ? "warmest" : "coldest")}",
            $"The stock '{verdict.Called}' is kept at {(isWarm ? "up" : "down")} to {to} °C{KeptWords.Assumed(stock)}, and the model "
                + $"ends at {end} °C: what falls out is judged at {end} °C, and what it does {(isWarm ? "warmer" : "colder")} than that is "
                + "not known here, so silence says nothing of it. "
            + context.AdviceFor(stock).Sentence(
                [new Way($"keep it at {end} °C or {(isWarm ? "cooler" : "warmer")}", Puts.Keeping)],
                $"or watch a glass of it at {to} °C before a batch is kept there"),
            Harm.Damage,
            Odds.Possible) with
        {
            Measured = new Measured(isWarm ? "warmest it is kept" : "coldest it is kept", check.Value, check.Limit, "°C"),
        };
    }

    protected override Working Work(Judged verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"whether '{verdict.Called}' can be judged");
        if (verdict.Kept is not null && verdict.Checks is [var beyond])
        {
            var at = work.Given(
                beyond.Relation == Relation.Over ? "warmest it is kept" : "coldest it is kept", beyond.Value, "°C", From.File);
            return work.Check(beyond, at, beyond.Limit).Done(at);
        }

        if (verdict.State is { IsSolved: true } state)
        {
            var strength = work.Given(
                $"ionic strength {Wording.When(null, state)}", state.IonicStrengthMolPerKg, "mol/kg", Saturation.Engine);
            work.Remark($"The model is good to {Say.Number(SaltVerdicts.HighestIonicStrength)} mol/kg.");
            foreach (var check in verdict.Checks.Where(c => c.Relation != Relation.True))
            {
                work.Check(check, strength, SaltVerdicts.HighestIonicStrength);
            }
        }

        return work.Statements(verdict).Done();
    }

    /// <summary>Reasons of the engine are sentences; here they stand inside one.</summary>
    private static string Reason(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..];

    /// <summary>As weak as the model covers, or kept at temperatures that it does.</summary>
    protected override IEnumerable<RepairProposal> Repair(Judged verdict, Finding finding, RepairContext context) =>
        context.StockOf(finding) is not { } stock || verdict.NotFollowed is not null ? []
        : verdict.Kept is not null
            ? [verdict.Checks[0].Relation == Relation.Over ? Keep.Cooler(context, stock) : Keep.Warmer(context, stock)]
            : Strength.Weaker(context, stock) is { } weaker ? [weaker] : [];

    /// <summary>A stock or a tank.</summary>
    /// <param name="Kind">"stock" or "tank of", as it stands before the name.</param>
    /// <param name="State">The state that decides; null where the file could not be read whole.</param>
    /// <param name="Passed">Sparingly soluble solids near or a little past saturation, of which nothing can be told.</param>
    internal sealed record Judged(string Kind, string Called, Place Place, SolutionState? State, IReadOnlyList<Solid> Passed) : Verdict
    {
        /// <summary>The stock, where it is kept beyond the temperatures of the model; null for any other verdict.</summary>
        public StockFacts? Kept { get; init; }

        /// <summary>The first step that is not followed; null for any other verdict.</summary>
        public MixingStep? NotFollowed { get; init; }
    }
}
