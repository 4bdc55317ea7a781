using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Mend = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Plant;

/// <summary>
/// The pH the recipe aims at against the window of the crop, and whether it gets there. A feed without adjustment is hardly buffered and
/// rests near pH 5, so it is judged only where roots would be harmed.
/// </summary>
internal sealed class PhOutsideWindow : RecipeRule<PhOfFeed>, IProposesRepairs
{
    public const string RuleName = "ph-outside-window";

    /// <summary>meq/L of alkalinity from which a high pH is told as alkalinity.</summary>
    private const double AlkalinityTold = 1;

    public override string Name => RuleName;

    protected override IEnumerable<PhOfFeed> Judge(RecipeFacts recipe, RuleContext context)
    {
        var target = RecipePlaces.Target(recipe, "pH");
        if (recipe.Recipe.IsForLeaves)
        {
            // Only what the recipe itself wants; the window of the crop is one of roots.
            return target is null && recipe.Adjustment is null ? [] : [Reached(recipe, target, context)];
        }

        var aims = Aims(recipe, target).DistinctBy(a => a.Value).Select(a => Aimed(recipe, a)).OfType<PhOfFeed>().ToList();
        return aims.Exists(a => a.Fires) ? aims : [.. aims, Reached(recipe, target, context)];
    }

    protected override Finding Describe(PhOfFeed verdict, RuleContext context) => verdict.Question switch
    {
        PhQuestion.Aim => AimedWrong(verdict, context),
        PhQuestion.Reagent => Unreachable(verdict, context),
        PhQuestion.Target => Missed(verdict, context),
        PhQuestion.Mixed => Deadly(verdict, context),
        _ => Extreme(verdict, context),
    };

    protected override Working Work(PhOfFeed verdict, RuleContext context)
    {
        var name = verdict.Recipe.Recipe.Name;
        var work = new WorkingBuilder(verdict.Question == PhQuestion.Aim ? $"the pH that '{name}' aims at"
            : $"the pH that '{name}' comes to");
        if (verdict.Off is not { } check)
        {
            if (verdict.Question != PhQuestion.Reagent)
            {
                return work.Statements(verdict).Done();
            }

            var start = work.Given("pH before the reagent", verdict.Ph, "", From.Engine);
            work.Given("pH wanted", verdict.Limit, "", From.File);
            return work.Statements(verdict).Done(start);
        }

        var options = context.Options<PhOutsideWindowOptions>();
        var ph = work.Given(
            verdict.Question == PhQuestion.Aim ? "pH aimed at" : verdict.Question == PhQuestion.Mixed ? "pH as mixed"
                : "pH at rest with the air", verdict.Ph, "",
                verdict.Question == PhQuestion.Aim ? From.File : From.Engine);
        if (verdict.Question == PhQuestion.Target)
        {
            var wanted = work.Given("target", verdict.Limit, "", From.File);
            var allowed = verdict.Target!.Tolerance is null ? work.Option("allowed, ±", options.Tolerance)
                : work.Given("allowed, ±", check.Limit, "", From.File);
            work.Check(check, work.Result("distance", "|found - target|", Term.Size(ph - wanted)), allowed);
            return work.Done(ph);
        }

        if (verdict.Question == PhQuestion.Mixed)
        {
            var deadly = work.Given("pH from which no roots live", verdict.Limit, "", "common practice, less certain than the pH is known");
            return work.Check(check, ph, deadly).Done(ph);
        }

        var bound = verdict.Question == PhQuestion.Aim
            ? work.Given(verdict.IsHigh ? "upper end of the window" : "lower end of the window", verdict.Limit, "",
            $"'{verdict.Recipe.Profile.Name}' profile")
            : verdict.IsHigh ? work.Option("highest pH", options.Highest) : work.Option("lowest pH", options.Lowest);
        return work.Check(check, ph, bound).Statements(verdict).Done(ph);
    }

    /// <summary>The aim inside the window, or a reagent that gets there.</summary>
    protected override IEnumerable<RepairProposal> Repair(PhOfFeed verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { Profile: var profile } recipe)
        {
            yield break;
        }

        // The nearest pH inside the window, to one digit; where the recipe states what it wants, that.
        var wanted = RecipePlaces.Target(recipe, "pH")?.Number ?? recipe.Recipe.Adjust?.Target?.Value ?? verdict.Limit;
        var inside = profile.Ph is var (low, high) ? Math.Clamp(wanted, low, high) : wanted;
        if (Amounts.With(context, finding.Place, inside) is var (edit, text))
        {
            yield return Mend.Chemistry("aim-inside", $"Aim at pH {text}.", edit);
        }

        if (verdict is { Question: PhQuestion.Roots, IsHigh: false } && AcidOf(recipe) is { } acid)
        {
            yield return Additions.Less(context, acid);
        }

        foreach (var reagent in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59", "koh-10",
            "naoh-10" }.OfType<string>().Distinct(StringComparer.Ordinal).Where(r => Works(r, verdict, inside)))
        {
            yield return Waters.Adjust(context, recipe, inside, reagent);
        }
    }

    /// <summary>No acid raises a pH, no alkali lowers it; an aim that is moved may need either.</summary>
    private static bool Works(string reagent, PhOfFeed verdict, double inside) => verdict.Question == PhQuestion.Aim
        || SubstanceCatalogue.BuiltIn.ById(reagent)?.Kind != (verdict.Ph < inside ? SubstanceKind.Acid : SubstanceKind.Base);

    /// <summary>The acid that is dosed as it is, the largest where there are several; null for none.</summary>
    private static AdditionFacts? AcidOf(RecipeFacts recipe) => recipe.Doses.Select(d => d.Direct).OfType<AdditionFacts>()
        .Where(d => d.Substance.Kind == SubstanceKind.Acid).MaxBy(d => d.Mass.Grams);

    private static IEnumerable<Located<double>> Aims(RecipeFacts recipe, Target? target)
    {
        if (recipe.Recipe.Adjust?.Target is { } adjusted)
        {
            yield return adjusted;
        }

        if (target is { Number: { } stated })
        {
            yield return new Located<double>(stated, target.Place);
        }
    }

    /// <summary>What is aimed at against the window; null where the profile has none.</summary>
    private static PhOfFeed? Aimed(RecipeFacts recipe, Located<double> aim)
    {
        if (recipe.Profile.Ph is not var (low, high))
        {
            return null;
        }

        var over = aim.Value > high || (aim.Value >= low && high - aim.Value < aim.Value - low);
        var past = over
            ? new Check("over the window", aim.Value, Relation.Over, high)
            : new Check("under the window", aim.Value, Relation.Under, low);
        return new PhOfFeed(
            recipe, PhQuestion.Aim, Rounding.SixDigits(aim.Value), past.Limit, over, aim.Place, null, past)
        { Checks = [past] };
    }

    /// <summary>What the solution comes to, against what the recipe wants or roots bear.</summary>
    private static PhOfFeed Reached(RecipeFacts recipe, Target? target, RuleContext context)
    {
        if (recipe.IsComplete && recipe.Adjustment is { Amount: null, Reagent: not null, TargetPh: { } aimed, PhBefore: { } before } stuck)
        {
            return new PhOfFeed(recipe, PhQuestion.Reagent, before, aimed, before > aimed, stuck.Place, null, null)
            {
                Checks = [Check.That("the reagent cannot bring it there", true)],
            };
        }

        if (!recipe.IsComplete || recipe.Chemistry is not { IsComplete: true, Final: { TellsPh: true, Ph: var ph } })
        {
            return new PhOfFeed(recipe, PhQuestion.Roots, 0, 0, false, null, null,
                null)
            { Checks = [Check.That("its equilibrium can be computed", false)] };
        }

        var found = Rounding.SixDigits(ph);
        var options = context.Options<PhOutsideWindowOptions>();
        if (target is null && recipe.Recipe.IsForLeaves)
        {
            return new PhOfFeed(recipe, PhQuestion.Roots, found, 0, false, null, null, null)
            {
                Checks = [Check.That("it is given to roots", false)],
            };
        }

        if (target is { Number: { } asked })
        {
            var off = new Check(
                "further off than allowed", Rounding.SixDigits(Math.Abs(found - asked)), Relation.Over,
                    target.Tolerance?.HalfWidth(asked) ?? options.Tolerance)
            {
                Meter = Meter.TankPh,
                From = asked,
            };
            return new PhOfFeed(recipe, PhQuestion.Target, found, asked, found > asked, target.Place, target, off) { Checks = [off] };
        }

        if (RootsPh.AsMixed(recipe) is { } mixed && RootsPh.Kills(mixed) && !RootsPh.Kills(ph))
        {
            var deadly = new Check("so high that no roots live until the air has brought it down", mixed, Relation.AtLeast,
                RootsPh.KillsFrom);
            return new PhOfFeed(recipe, PhQuestion.Mixed, mixed, deadly.Limit, true, null, null, deadly) { Checks = [deadly] };
        }

        var above = Math.Abs(ph - options.Highest) < Math.Abs(ph - options.Lowest);
        var harmful = above
            ? new Check("so high that roots are harmed", found, Relation.Over, options.Highest) { Meter = Meter.TankPh }
            : new Check("so low that roots are harmed", found, Relation.Under, options.Lowest) { Meter = Meter.TankPh };
        return new PhOfFeed(recipe, PhQuestion.Roots, found, harmful.Limit, above, null, null, harmful)
        {
            Checks =
            [
                harmful,
                .. above && FeedAlkalinity.Left(recipe) > AlkalinityTold
                    ? new[] { Check.That("no alkalinity is left that another rule reports", false) } : [],
            ],
        };
    }

    private static Finding AimedWrong(PhOfFeed verdict, RuleContext context)
    {
        var profile = verdict.Recipe.Profile;
        var (low, high) = profile.Ph!.Value;
        return context.Find(
            verdict.Place!,
            $"The recipe aims at pH {Say.Number(verdict.Ph)}; the '{profile.Name}' profile runs from {Say.Number(low)} to "
                + $"{Say.Number(high)}. "
            + (verdict.IsHigh
                ? "Iron, manganese and phosphate are hard to take up there. "
                : "Roots suffer and calcium and magnesium are hard to take up there. ")
            + $"Aim between {Say.Number(low)} and {Say.Number(high)}.",
            verdict.IsFarPast(context.Options<PhOutsideWindowOptions>()) ? Harm.Loss : Harm.Damage,
            Odds.Certain,
            profile.WindowsArePractice ? Certainty.Practice : Certainty.Computed) with
        {
            Measured = new Measured("pH", verdict.Ph, verdict.Limit, ""),
            Values = [new NamedValue("pH", verdict.Ph, ""), new NamedValue("limit", verdict.Limit, "")],
        };
    }

    private static Finding Unreachable(PhOfFeed verdict, RuleContext context)
    {
        var (aimed, before) = (verdict.Limit, verdict.Ph);
        return context.Find(
            verdict.Place!,
            $"pH {Say.Number(aimed)} cannot be reached with {verdict.Recipe.Adjustment!.Reagent!.Name}: the solution already stands at "
                + $"pH {Say.Ph(before)}. "
            + (before < aimed ? "An acid or a neutral salt only takes it further down. "
                : "An alkali or a neutral salt only takes it further up. ")
            + context.AdviceFor(verdict.Recipe).Sentence(
                before < aimed
                    ? new Way("name an alkali, such as potassium hydroxide", Puts.Alkali, aimed)
                    : new Way("name an acid, such as nitric acid", Puts.Acid, aimed),
                new Way("leave the pH as it is")),
            RootsPh.Kills(before) ? Harm.Loss : Harm.Damage,
            Odds.Certain,
            Certainty.Estimate) with
        {
            Measured = new Measured("pH", Rounding.SixDigits(before), aimed, ""),
            Values = [new NamedValue("pH before", Rounding.SixDigits(before), ""), new NamedValue("pH", aimed, "")],
        };
    }

    private static Finding Missed(PhOfFeed verdict, RuleContext context)
    {
        var (found, asked, isAdjusted) = (verdict.Ph, verdict.Limit, verdict.Recipe.Adjustment is not null);
        return context.Find(
            verdict.Place!,
            $"The final solution computes to pH {Say.Ph(found)} at rest with the air where pH {Say.Number(asked)} "
                + $"±{Say.Number(verdict.Off!.Limit)} is wanted. "
            + (isAdjusted ? "The reagent is dosed for another pH. " : "Nothing in the recipe sets the pH. ")
            + (isAdjusted
                ? "Make the target and 'adjust' agree."
                : context.AdviceFor(verdict.Recipe).Sentence(new Way(
                    $"write an 'adjust' with {(found < asked ? "an alkali" : "an acid")}, so that what it brings is counted too",
                    found < asked ? Puts.Alkali : Puts.Acid,
                    asked))),
            Harm.Damage,
            isAdjusted ? Odds.Certain : Odds.Possible,
            Certainty.Estimate) with
        {
            Measured = new Measured("pH", found, asked, ""),
            Values = [new NamedValue("pH", found, ""), new NamedValue("target", asked, "")],
        };
    }

    /// <summary>A lye that the air would bring down within a day, when the roots are dead.</summary>
    private static Finding Deadly(PhOfFeed verdict, RuleContext context)
    {
        var place = RecipePlaces.Doses(verdict.Recipe);
        var rest = verdict.Recipe.Chemistry.Final.Ph;
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#pH",
            $"The final solution computes to pH {Say.Number(Math.Round(verdict.Ph, 1))} as it is mixed, and the recipe does not adjust it. "
                + $"No roots live there: only a day or so of stirring in air would bring it to {Say.Number(Math.Round(rest, 1))}. "
            + context.AdviceFor(verdict.Recipe).Sentence(
                new Way("give less of what is alkaline"), new Way("write an 'adjust' with an acid", Puts.Acid)),
            Harm.Loss,
            Odds.Certain,
            Certainty.Estimate) with
        {
            Measured = new Measured("pH", verdict.Ph, verdict.Limit, ""),
            Values = [new NamedValue("pH", verdict.Ph, ""), new NamedValue("limit", verdict.Limit, "")],
        };
    }

    private static Finding Extreme(PhOfFeed verdict, RuleContext context)
    {
        var (found, limit) = (verdict.Ph, verdict.Limit);
        var place = RecipePlaces.Doses(verdict.Recipe);
        var guess = GuessedPh.Of(verdict.Recipe);
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#pH",
            $"The final solution computes to pH {Say.Ph(found)} at rest with the air, past {Say.Number(limit)}, and the recipe "
                + "does not adjust it. " + PhGuess.Sentence(guess)
            + (verdict.IsHigh ? "Iron, manganese and phosphate drop out or stay locked there. "
                : "Root tips die back there, and calcium is not taken up. ")
            + context.AdviceFor(verdict.Recipe).Sentence(verdict.IsHigh
                ? [new("write an 'adjust' with an acid", Puts.Acid)]
                :
                [
                    .. AcidOf(verdict.Recipe) is { Substance.Name: var acid } ? new[] { new Way($"give less {acid}") } : [],
                    new("write an 'adjust' with an alkali", Puts.Alkali),
                    new("use a water whose alkalinity takes up the acid"),
                ]),
            RootsPh.Kills(found) ? Harm.Loss : Harm.Damage,
            PhGuess.Weaken(Odds.Certain, guess),
            Certainty.Estimate) with
        {
            Measured = new Measured("pH", found, limit, ""),
            Values = [new NamedValue("pH", found, ""), new NamedValue("limit", limit, "")],
        };
    }
}

/// <summary>What is asked of a pH.</summary>
internal enum PhQuestion
{
    /// <summary>Whether the recipe aims inside the window of the crop.</summary>
    Aim,

    /// <summary>Whether the reagent can bring it there.</summary>
    Reagent,

    /// <summary>Whether it comes to the target.</summary>
    Target,

    /// <summary>Whether roots bear it.</summary>
    Roots,

    /// <summary>Whether they live in what is poured together, before the air brings its pH down.</summary>
    Mixed,
}

/// <summary>The pH of a final solution.</summary>
/// <param name="Limit">The end of the window, what is wanted, or what roots bear.</param>
/// <param name="Off">Null where nothing is compared.</param>
internal sealed record PhOfFeed(
    RecipeFacts Recipe, PhQuestion Question, double Ph, double Limit, bool IsHigh, Place? Place, Target? Target, Check? Off) : Verdict
{
    /// <summary>Past the pH that harms roots of any crop, not only outside the window of this one.</summary>
    internal bool IsFarPast(PhOutsideWindowOptions options) => Ph < options.Lowest || Ph > options.Highest;
}
