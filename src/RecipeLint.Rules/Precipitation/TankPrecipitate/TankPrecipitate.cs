using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Something falls out of the final solution, with its source water and after the pH is adjusted.</summary>
internal sealed class TankPrecipitate : RecipeRule<TankPrecipitate.TankVerdict>, IProposesRepairs
{
    public const string RuleName = "tank-precipitate";

    /// <summary>A tank is not brought below this where the profile names no pH.</summary>
    private const double LowestPh = 4;

    public override string Name => RuleName;

    protected override IEnumerable<TankVerdict> Judge(RecipeFacts recipe, RuleContext context)
    {
        var looked = TankJudgement.LookedAt(recipe, DepositOptions.Of(context));
        return looked.Count > 0 ? looked.Select(d => Of(recipe, d)) : [Nearest(recipe)];
    }

    private static TankVerdict Of(RecipeFacts recipe, TankDeposit fallen)
    {
        List<Check> checks = [.. fallen.Deposit.Tests.Select(DepositChecks.Of)];
        if (!fallen.IsNotTheChelates)
        {
            checks.Add(Check.That(
                "no chelating agent was put in for this iron (why it lets go is a matter of the rules on chelates)", false));
        }

        if (!fallen.IsInTime)
        {
            checks.Add(Check.That("it falls out within the hours in which a spray is used (so little silica hazes over weeks)", false));
        }

        return new TankVerdict(recipe, fallen.Deposit, null) { Checks = checks };
    }

    /// <summary>Nothing falls out: the solid that is nearest to it.</summary>
    private static TankVerdict Nearest(RecipeFacts recipe)
    {
        var nearest = TankJudgement.MomentsOf(recipe)
            .SelectMany(s => s.Clear!.Solids
                .Where(x => x.Solid.Role == SolidRole.FormsReadily
                    && x.Solid.Owner is not null
                    && Forming.StaysDissolvedBecause(s.Mix, x.Solid) is null)
                .Select(x => (State: s, x.Solid, x.Index)))
            .OrderByDescending(x => Rounding.SixDigits(x.Index))
            .FirstOrDefault();
        if (nearest.Solid is null)
        {
            return new TankVerdict(
                recipe, null, null)
            { Checks = [Check.That("its equilibrium can be computed and holds ions of a solid", false)] };
        }

        var past = new Check("past the limit", Math.Pow(10, nearest.Index), Relation.Over, 1);
        return new TankVerdict(recipe, null, (nearest.State, nearest.Solid))
        {
            Checks = past.Holds
                ? [past, Check.That("something is left of it once all that falls out more readily has settled", false)]
                : [past],
        };
    }

    protected override Finding Describe(TankVerdict verdict, RuleContext context)
    {
        var (recipe, deposit) = (verdict.Recipe, verdict.Deposit!);
        var sureness = deposit.Sureness;
        var state = deposit.State;
        var guess = GuessedPh.Of(recipe);
        var suppliers = Supplier.In(recipe, deposit.Solid);
        var pH = verdict.ClearAtPh;
        var what = $"{Say.Number(deposit.GramsPerLitre * 1000)} mg/L of {deposit.Solid.Called} {Verb(sureness)} out of the tank "
            + $"'{recipe.Recipe.Name}' "
            + $"{Wording.When(null, state)} ({PhOf(state)}): "
                + $"{Wording.BringsTimes(suppliers, deposit.Index, deposit.Solid, fallsOut: true)}{Doubt(deposit)}.";
        var why = deposit.Loss is { } loss
            ? $"{Say.Percent(loss.Share)} of the {IonWords.Of(loss.Metal)} is lost to the plants that way."
            : "It clouds the tank, coats pumps and drippers, and the plants miss what is in it.";
        var bearable = recipe.Profile.Ph?.Low ?? LowestPh;
        var remedy = pH is { } clear && clear >= bearable
            ? new Way($"bring the pH to {Say.Number(clear)} or below, where it stays dissolved", Puts.Acid, clear)
            : deposit.Loss is not null
                ? new Way("use a chelate that holds the metal at this pH", Puts.Chelate)
                : new Way(suppliers.Count > 1
                    ? "dose less of one of the two, or use water that brings less of it"
                    : "dose less of it, or use water that brings less of it");
        var place = suppliers.Count > 0 ? suppliers[0].Place : recipe.Recipe.Place;
        var certainty = DepositWords.CertaintyOf(state, sureness, recipe.Adjustment is not { Amount: null });
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#{deposit.Owner.Name}",
            $"{what} {why} {PhGuess.Sentence(guess)}{context.AdviceFor(recipe).Sentence(remedy)}",
            Harm.Loss,
            PhGuess.Weaken(DepositWords.OddsOf(deposit, certainty, recipe.Adjustment is not { Amount: null }), guess),
            certainty) with
        {
            Related = [.. suppliers.Skip(1).Select(s => new RelatedPlace(s.Place, $"brings the {s.Brings}"))],
            Measured = deposit.Loss is { } lost
                ? new Measured(
                    $"{IonWords.Of(lost.Metal)} lost",
                    Rounding.SixDigits(lost.Share * 100),
                    context.Options<TankPrecipitateOptions>().MetalShare,
                    "%")
                : new Measured(
                    $"{deposit.Solid.Called} that falls out",
                    deposit.GramsPerLitre,
                    context.Options<TankPrecipitateOptions>().Visible,
                    "g/L"),
            Values = [.. Numbers(deposit, pH)],
        };
    }

    protected override Working Work(TankVerdict verdict, RuleContext context)
    {
        var tank = verdict.Recipe.Recipe.Name;
        if (verdict.Nearest is var (near, solid))
        {
            var nearest =
                new WorkingBuilder(
                    $"{solid.Called} in the tank '{tank}' {Wording.When(null, near)}, the solid that is nearest to falling out");
            var (far, _) = Saturation.Write(nearest, near.Clear!, solid);
            return nearest.Check(verdict.Checks[0], far, 1).Statements(verdict).Done();
        }

        if (verdict.Deposit is not { } deposit)
        {
            return new WorkingBuilder($"the tank '{tank}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"{deposit.Solid.Called} in the tank '{tank}' {Wording.When(null, deposit.State, deposit.Solid)}");
        var times = SaltSteps.Times(work, deposit.State, deposit.Solid);
        var decides = DepositSteps.Write(work, verdict, deposit, times, context);
        return work.Statements(verdict).Done(decides);
    }

    /// <summary>
    /// The pH before anything has fallen out, which drives it out, and the one after, which other rules speak of: what the plants meet.
    /// </summary>
    private static string PhOf(SolutionState state)
    {
        if (PhDoubt.Why(state.Mix) is { } why)
        {
            return $"pH {why}";
        }

        var (before, after) = (Say.Ph(Math.Round(state.PhBeforeDeposit, 1)), Say.Ph(Math.Round(state.Ph, 1)));
        return before == after ? $"pH {before}" : $"pH {before} before it falls out, {after} once it has";
    }

    private static IEnumerable<NamedValue> Numbers(JudgedDeposit deposit, double? clearAt)
    {
        yield return new NamedValue("falls out", Rounding.SixDigits(deposit.GramsPerLitre * 1000), "mg/L");
        yield return new NamedValue("saturation index", deposit.Index, "");
        foreach (var before in PhGuess.Values(deposit.State, before: true))
        {
            yield return before;
        }

        if (clearAt is { } pH)
        {
            yield return new NamedValue("clear at pH", pH, "");
        }
    }

    private static string Verb(Sureness sureness) => sureness switch
    {
        Sureness.Clear => "falls",
        Sureness.NearTheLimit => "can fall",
        _ => "can settle",
    };

    private static string Doubt(JudgedDeposit deposit) => deposit.Sureness switch
    {
        Sureness.Clear => "",
        Sureness.NearTheLimit => $" (saturation index {Say.Number(deposit.Index)}, known to ±{Say.Number(deposit.Doubt)})",
        _ => $" (it usually takes {Say.Number(Math.Pow(10, deposit.Solid.StartsInStorage))} times to start without scale already there)",
    };

    /// <summary>A lower pH, purer water, or less of what meets there.</summary>
    protected override IEnumerable<RepairProposal> Repair(TankVerdict verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        if (verdict.ClearAtPh is { } ph)
        {
            foreach (var acid in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59", "sulfuric-37" }
                .OfType<string>()
                .Distinct(StringComparer.Ordinal))
            {
                yield return Waters.Adjust(context, recipe, Math.Min(ph, 6), acid);
            }
        }

        foreach (var water in new[] { "rain", "reverse-osmosis" })
        {
            if (Waters.Pure(recipe, water) is { } pure)
            {
                yield return pure;
            }
        }

        foreach (var place in finding.Related.Select(r => r.Place).Prepend(finding.Place))
        {
            if (context.AdditionAt(place) is { } addition)
            {
                foreach (var iron in addition.ComponentMoles.GetValueOrDefault(Component.FerricIron)
                    + addition.ComponentMoles.GetValueOrDefault(Component.FerrousIron) > 0 ? Additions.OtherIron(context, addition) : [])
                {
                    yield return iron;
                }

                yield return Additions.Less(context, addition);
            }
        }
    }

    /// <summary>What one owner's solids do in a tank, or the solid that is nearest where nothing falls out.</summary>
    internal sealed record TankVerdict(RecipeFacts Recipe, JudgedDeposit? Deposit, (SolutionState State, Solid Solid)? Nearest) : Verdict
    {
        /// <summary>
        /// The highest pH below the present one at which it stays dissolved; null when there is none. Searched when asked for.
        /// </summary>
        public double? ClearAtPh => TankJudgement.NearestPh(Deposit!);
    }
}
