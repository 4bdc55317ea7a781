using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>The computed conductivity against the recipe's own target, else against the window of the crop.</summary>
internal sealed class EcOutsideWindow : RecipeRule<ConductivityOfFeed>, IProposesRepairs
{
    public const string RuleName = "ec-outside-window";

    /// <summary>mS/cm of feeds for seedlings and cuttings (common practice, no source).</summary>
    internal const double SeedlingFrom = 0.3, SeedlingTo = 0.8;

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<ConductivityOfFeed> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (recipe is { IsComplete: true, Profile.Ec: not null, Chemistry: { IsComplete: true, Final: { IsSolved: true } final } }
            && final.Conductivity.At25 is null)
        {
            var strength = new Check(
                "too salty for a conductivity to be computed", Rounding.SixDigits(final.IonicStrengthMolPerKg), Relation.Over,
                SolutionConductivity.MaxIonicStrength, "mol/kg");
            return [new ConductivityPastComputing(recipe, strength) { Checks = [strength] }];
        }

        if (!recipe.IsComplete
            || recipe.Chemistry is not { IsComplete: true, Final: { IsSolved: true, Conductivity: { At25: { } at25 } conductivity } })
        {
            return [new ConductivityOfFeed(recipe, 0, 0, false, null) { Checks = [Check.That("a conductivity can be computed", false)] }];
        }

        var found = Rounding.SixDigits(at25.MillisiemensPerCentimetre);
        ConductivityOfFeed? missed = null;
        if (RecipePlaces.Target(recipe, "EC") is { Number: > 0 and { } asked } target)
        {
            var stated = target.Tolerance?.HalfWidth(asked);
            var allowed = stated ?? (asked * context.Options<EcOutsideWindowOptions>().Tolerance / 100);
            var off = new Check("further off than allowed", Rounding.SixDigits(Math.Abs(found - asked)), Relation.Over,
                Rounding.SixDigits(allowed), "mS/cm")
            {
                Meter = Meter.TankConductivity,
                From = asked,
            };
            missed = new ConductivityOffTarget(
                recipe, found, asked, conductivity.EstimateBecause.Count > 0, off, target, stated is not null)
            { Checks = [off] };
        }

        if (missed is { Fires: true } || recipe.Profile.Ec is not var (low, high))
        {
            return [missed ?? new ConductivityOfFeed(recipe, found, 0, false,
                null) { Checks = [Check.That("the recipe states a target or the profile has a window", false)] }];
        }

        var over = found > high || (found >= low && high / found < found / low);
        var past = over
            ? new Check("over the window", found, Relation.Over, high * Bound.Upper, "mS/cm") { Meter = Meter.TankConductivity }
            : new Check("under the window", found, Relation.Under, low * Bound.Lower, "mS/cm") { Meter = Meter.TankConductivity };
        var window = new ConductivityOutsideWindow(recipe, found, over ? high : low, true, past, over)
        {
            // Where a main nutrient is missing altogether, the low EC follows from that.
            Checks = [past, .. !over && Nutrients.LacksAMainNutrient(recipe)
                ? new[] { Check.That("no main nutrient is missing altogether", false) } : []],
        };
        return missed is null ? [window] : [missed, window];
    }

    protected override Finding Describe(ConductivityOfFeed verdict, RuleContext context) => verdict switch
    {
        ConductivityOffTarget target => Describe(target, context),
        ConductivityPastComputing past => Describe(past, context),
        var window => Describe((ConductivityOutsideWindow)window, context),
    };

    protected override Working Work(ConductivityOfFeed verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"conductivity of '{verdict.Recipe.Recipe.Name}' at 25 °C");
        if (verdict.Off is not { } check)
        {
            return work.Statements(verdict).Done();
        }

        if (verdict is ConductivityPastComputing)
        {
            var strength = work.Given("ionic strength", check.Value, "mol/kg", From.Engine);
            return work.Check(check, strength, work.Given("highest that is computed", check.Limit, "mol/kg", From.Engine)).Done(strength);
        }

        work.Given("cations", verdict.Recipe.Charge.Cations.MilliequivalentsPerLitre, "meq/L", From.Amounts);
        var found = work.Given("conductivity", verdict.Found, "mS/cm", From.Engine);
        work.Remark("A rough check (common practice, no source): a feed has about 1 mS/cm for each 10 meq/L of cations.");
        if (verdict is ConductivityOffTarget target)
        {
            var wanted = work.Given("target", target.Limit, "mS/cm", From.File);
            var allowed = target.IsStated
                ? work.Given("allowed, ±", check.Limit, "mS/cm", From.File)
                : work.Result(
                    "allowed, ±", "target × tolerance / 100",
                    wanted * work.Option("tolerance", context.Options<EcOutsideWindowOptions>().Tolerance) / 100, "mS/cm");
            var off = work.Result("distance from the target", "|found - target|", Term.Size(found - wanted), "mS/cm");
            return work.Check(check, off, allowed).Done(found);
        }

        var over = ((ConductivityOutsideWindow)verdict).IsOver;
        var bound = work.Given(over ? "upper end of the window" : "lower end of the window", verdict.Limit, "mS/cm",
            $"'{verdict.Recipe.Profile.Name}' profile");
        return work.Check(check, found, Bound.Edge(work, bound, "end", over, "mS/cm")).Statements(verdict).Done(found);
    }

    /// <summary>All doses in one proportion.</summary>
    protected override IEnumerable<RepairProposal> Repair(ConductivityOfFeed verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        if (verdict is ConductivityPastComputing)
        {
            if (recipe.Doses.FirstOrDefault(d => d.Direct == Largest(recipe).Addition)?.Direct is { } poured
                && Additions.Times(context, poured, 0.001, "thousandth") is { } thousandth)
            {
                yield return thousandth;
            }
        }
        else
        {
            // Conductivity follows the doses nearly, not quite, in proportion. A target has two sides, a window is passed on one.
            var ratio = verdict.Limit / verdict.Found;
            yield return verdict is ConductivityOffTarget
                ? new RepairProposal.Ladder(
                    new[] { 1, 1.05, 1.1, 0.95, 1.15, 0.9, 1.2 }
                        .Select(p => Contributions.AllDoses(context, recipe, Math.Pow(ratio, p)))
                        .OfType<Repair>())
                : new RepairProposal.Tuned(f => Contributions.AllDoses(context, recipe, f), 1, verdict.Found > verdict.Limit ? 0.2 : 5);
        }
    }

    private static Finding Describe(ConductivityOutsideWindow verdict, RuleContext context)
    {
        var (recipe, found, limit) = (verdict.Recipe, verdict.Found, verdict.Limit);
        var (low, high) = recipe.Profile.Ec!.Value;
        var place = RecipePlaces.TargetOrDoses(recipe, "EC");
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#EC",
            $"The final solution computes to {Say.Number(found)} mS/cm at 25 °C; the '{recipe.Profile.Name}' profile runs from "
                + $"{Say.Number(low)} to {Say.Number(high)} mS/cm. "
            + (verdict.IsOver
                ? "Salt holds back the water the roots want, and leaf edges burn on a bright day. "
                : "The proportions may be right, but there is too little of everything for a growing crop. ")
            + (verdict.MayBeForSeedlings
                ? $"Seedlings and cuttings are fed at {Say.Number(SeedlingFrom)} to {Say.Number(SeedlingTo)} mS/cm: name the crop or the "
                    + "stage if they are meant. "
                : "")
            + $"All doses times {Say.Number(limit / found)} would bring it to the {(verdict.IsOver ? "upper" : "lower")} end, as far "
            + "as the doses and not the water make it.",
            verdict.IsFarPast && !verdict.MayBeWeakOnPurpose ? Harm.Loss : Harm.Damage,
            verdict.MayBeForSeedlings && Nutrients.NamesNoCrop(recipe) ? Odds.Possible : Odds.Certain,
            recipe.Profile.WindowsArePractice ? Certainty.Practice : Certainty.Estimate) with
        {
            Measured = new Measured("EC", found, limit, "mS/cm"),
            Values = [new NamedValue("EC", found, "mS/cm"), new NamedValue("limit", limit, "mS/cm")],
            Related = recipe.Water?.Water is { Ec: { } ec } ? [new RelatedPlace(ec.Place, "conductivity of the source water")] : [],
        };
    }

    /// <summary>No feed comes near: an amount is off by a power of ten, or a concentrate stands where its dilution belongs.</summary>
    private static Finding Describe(ConductivityPastComputing verdict, RuleContext context)
    {
        var (recipe, strength) = (verdict.Recipe, verdict.Off!.Value);
        var place = RecipePlaces.TargetOrDoses(recipe, "EC");
        var (largest, grams) = Largest(recipe);
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#EC",
            "The final solution is too salty for a conductivity to be computed: its ionic strength is "
                + $"{Say.Number(strength)} mol/kg, where feeds have 0.01 to 0.05, and the '{recipe.Profile.Name}' profile ends at "
                + $"{Say.Number(recipe.Profile.Ec!.Value.High)} mS/cm. It takes the water out of roots within hours. "
                + $"Most of it is {largest.Substance.Name}, {Say.Grams(grams)} in each litre: look for a unit that is off by a "
                + "thousand, or for a concentrate that was to be diluted.",
            Harm.Loss,
            Odds.Certain,
            Certainty.Estimate) with
        {
            Measured = new Measured("ionic strength", strength, verdict.Off.Limit, "mol/kg"),
            Values = [new NamedValue("ionic strength", strength, "mol/kg"), new NamedValue("limit", verdict.Off.Limit, "mol/kg")],
        };
    }

    /// <summary>What the tank holds most of, by mass, and how much of it in each litre.</summary>
    private static (AdditionFacts Addition, double GramsPerLitre) Largest(RecipeFacts recipe) => recipe.Doses
        .SelectMany(d => d.Direct is { } direct ? [(Addition: direct, direct.Mass.Grams)]
            : d.Stock is { Volume.Litres: > 0 } stock
                ? stock.Additions.Select(a => (Addition: a, Grams: a.Mass.Grams * d.Volume.Litres / stock.Volume.Litres)) : [])
        .Select(a => (a.Addition, GramsPerLitre: a.Grams / recipe.FinalVolume.Litres))
        .MaxBy(a => a.GramsPerLitre);

    private static Finding Describe(ConductivityOffTarget verdict, RuleContext context) =>
        context.Find(
            verdict.Target.Place,
            $"The final solution computes to {Say.Number(verdict.Found)} mS/cm at 25 °C where {Say.Number(verdict.Limit)} mS/cm is "
                + $"wanted (allowed ±{Say.Number(verdict.Off!.Limit)}). "
            + "Either a dose or the target is wrong, or the figure was meant on another scale or at another temperature. "
            + "Compare the doses with the recipe the target comes from.",
            verdict.IsFarOff ? Harm.Loss : Harm.Damage,
            Odds.Certain,
            verdict.IsEstimate ? Certainty.Estimate : Certainty.Computed) with
        {
            Measured = new Measured("EC", verdict.Found, verdict.Limit, "mS/cm"),
            Values = [new NamedValue("EC", verdict.Found, "mS/cm"), new NamedValue("target", verdict.Limit, "mS/cm")],
        };
}

/// <summary>The conductivity of a final solution.</summary>
/// <param name="Found">mS/cm at 25 °C, to six digits.</param>
/// <param name="Limit">The target, or the end of the window, mS/cm.</param>
/// <param name="Off">Null where there is nothing to compare.</param>
internal record ConductivityOfFeed(RecipeFacts Recipe, double Found, double Limit, bool IsEstimate, Check? Off) : Verdict;

/// <summary>Against the recipe's own target.</summary>
/// <param name="IsStated">Whether the recipe states how far off it may be.</param>
internal sealed record ConductivityOffTarget(
    RecipeFacts Recipe, double Found, double Limit, bool IsEstimate, Check Off, Target Target, bool IsStated)
    : ConductivityOfFeed(Recipe, Found, Limit, IsEstimate, Off)
{
    /// <summary>Half as much again, or two thirds: more than the model, a meter and another reference temperature together.</summary>
    public bool IsFarOff => Found >= 1.5 * Limit || 1.5 * Found <= Limit;
}

/// <summary>Saltier than anything of which a conductivity is computed, and so far past every window.</summary>
internal sealed record ConductivityPastComputing(RecipeFacts Recipe, Check Off) : ConductivityOfFeed(Recipe, 0, 0, true, Off);

/// <summary>Against the window of the crop.</summary>
internal sealed record ConductivityOutsideWindow(RecipeFacts Recipe, double Found, double Limit, bool IsEstimate, Check Off, bool IsOver)
    : ConductivityOfFeed(Recipe, Found, Limit, IsEstimate, Off)
{
    /// <summary>Twice the upper end or half of the lower: no error of model or meter reaches so far.</summary>
    public bool IsFarPast => IsOver ? Found >= 2 * Limit : 2 * Found <= Limit;

    /// <summary>
    /// A thin feed harms nobody: without a crop it may be meant so, and without a stage down to what seedlings get.
    /// </summary>
    public bool MayBeWeakOnPurpose =>
        !IsOver
        && (Recipe.Profile.Name == ProfileLibrary.GenericName || (Recipe.Recipe.Stage is null && Found >= EcOutsideWindow.SeedlingFrom));

    /// <summary>As strong as what seedlings get, and nothing says who gets it.</summary>
    public bool MayBeForSeedlings => MayBeWeakOnPurpose && Found is >= EcOutsideWindow.SeedlingFrom and <= EcOutsideWindow.SeedlingTo;
}
