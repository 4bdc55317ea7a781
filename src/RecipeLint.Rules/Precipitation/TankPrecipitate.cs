using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Something falls out of the final solution, with its source water and after the pH is adjusted.</summary>
public sealed class TankPrecipitate : RecipeRule, IProposesRepairs
{
    private const double LowestPh = 4, PhStep = 0.05;

    /// <summary>From this share of the iron on a chelating agent is meant for it: why it lets go is a matter of the rules on chelates.</summary>
    private const double MeantForIron = 0.1;

    internal static readonly string[] TraceMetals = ["Fe+2", "Fe+3", "Mn+2", "Zn+2", "Cu+2"];

    private static readonly string[] Iron = ["Fe+2", "Fe+3"];

    private static readonly string[] ChelatingAgents = ["EDTA-4", "DTPA-5", "HEDTA-3", "EDDHA-4"];

    public override string Name => "tank-precipitate";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        var solved = JudgedStates(recipe);
        var owners = solved.SelectMany(s => s.Deposits).Select(d => SolidOwners.Of(d.Solid)?.Rule).OfType<string>().Distinct(StringComparer.Ordinal);
        foreach (var owner in owners.Order(StringComparer.Ordinal))
        {
            if (Fallout.Worst(solved, d => SolidOwners.Of(d.Solid)?.Rule == owner, 0) is { } fallout && Counts(recipe, fallout, context) is { } loss)
            {
                yield return Describe(recipe, owner, fallout, loss, context);
            }
        }
    }

    /// <summary>With a pH adjustment the adjusted tank is what the plants get; what it was before lasts minutes.</summary>
    internal static List<SolutionState> JudgedStates(RecipeFacts recipe)
    {
        var chemistry = recipe.Chemistry;
        SolutionState[] states = chemistry.TankAdjusted is { } adjusted ? [adjusted] : [chemistry.Tank, chemistry.TankInAir];
        return [.. states.Where(s => s.IsSolved)];
    }

    /// <summary>What makes a deposit worth a finding: its weight, or the share of a trace metal it takes.</summary>
    internal static DepositLoss? Counts(RecipeFacts recipe, Fallout fallout, RuleContext context)
    {
        var metal = TraceMetals.MaxBy(fallout.ShareOf)!;
        var share = fallout.ShareOf(metal);
        if (share > 0)
        {
            if (Iron.Contains(metal) && Moles(recipe, ChelatingAgents) >= MeantForIron * Moles(recipe, Iron))
            {
                return null;
            }

            return share >= context.Number("metalShare") / 100 ? new DepositLoss(metal, share) : null;
        }

        return fallout.GramsPerLitre >= context.Number("visible") ? new DepositLoss(null, 0) : null;
    }

    private static double Moles(RecipeFacts recipe, string[] components) => components.Sum(c => recipe.ComponentMoles.GetValueOrDefault(c));

    private static Finding Describe(RecipeFacts recipe, string owner, Fallout fallout, DepositLoss loss, RuleContext context)
    {
        var modelError = context.Number("nearLimit");
        var sureness = fallout.HowSure(modelError);
        var state = fallout.State;
        var suppliers = Supplier.In(recipe, fallout.Largest.Solid);
        var pH = NearestPh(recipe, owner, fallout);
        var what = $"{Say.Number(fallout.GramsPerLitre * 1000)} mg/L of {fallout.Owned.Called} {Verb(sureness)} out of the tank '{recipe.Recipe.Name}' "
            + $"{Wording.When(state)} (pH {Say.Number(Math.Round(state.PhBeforeDeposit, 1))}): {Wording.BringsTimes(suppliers, fallout.Index)}{Doubt(fallout, sureness, modelError)}.";
        var why = loss.Metal is { } metal
            ? $"{Say.Percent(loss.Share)} of the {IonWords.Of(metal)} is lost to the plants that way."
            : "It clouds the tank, coats pumps and drippers, and the plants miss what is in it.";
        var bearable = recipe.Profile.Ph?.Low ?? LowestPh;
        var remedy = pH is { } clear && clear >= bearable
            ? $"Bring the pH to {Say.Number(clear)} or below; there it stays dissolved."
            : loss.Metal is not null ? "Use a chelate that holds the metal at this pH." : "Dose less of one of the two, or use water that brings less of it.";
        var place = suppliers.Count > 0 ? suppliers[0].Place : recipe.Recipe.Place;
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#{owner}",
            $"{what} {why} {remedy}",
            DepositWords.LevelOf(sureness),
            DepositWords.CertaintyOf(state, sureness, recipe.Adjustment is not { Amount: null })) with
        {
            Related = [.. suppliers.Skip(1).Select(s => new RelatedPlace(s.Place, $"brings the {s.Brings}"))],
            Measured = loss.Metal is { } lost
                ? new Measured($"{IonWords.Of(lost)} lost", Rounding.SixDigits(loss.Share * 100), context.Number("metalShare"), "%")
                : new Measured($"{fallout.Owned.Called} that falls out", Rounding.SixDigits(fallout.GramsPerLitre), context.Number("visible"), "g/L"),
            Values = [.. Numbers(fallout, pH)],
        };
    }

    private static IEnumerable<NamedValue> Numbers(Fallout fallout, double? clearAt)
    {
        yield return new NamedValue("falls out", Rounding.SixDigits(fallout.GramsPerLitre * 1000), "mg/L");
        yield return new NamedValue("saturation index", fallout.Index, "");
        yield return new NamedValue("pH", Rounding.SixDigits(fallout.State.PhBeforeDeposit), "");
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

    private static string Doubt(Fallout fallout, Sureness sureness, double modelError) => sureness switch
    {
        Sureness.Clear => "",
        Sureness.NearTheLimit => $" (saturation index {Say.Number(fallout.Index)}, known to ±{Say.Number(fallout.Doubt(modelError))})",
        _ => $" (it usually takes {Say.Number(Math.Pow(10, fallout.Owned.StartsAt))} times to start without scale already there)",
    };

    /// <summary>The highest pH below the present one at which no solid of the same owner is past its limit; null when there is none from 4 up.</summary>
    private static double? NearestPh(RecipeFacts recipe, string owner, Fallout fallout)
    {
        var mix = fallout.State.Moment == StateMoment.TankAdjusted ? recipe.Chemistry.AdjustedMix! : recipe.Chemistry.Mix;
        var input = mix.Input(fallout.State.Temperature.Celsius);
        for (var pH = Math.Floor(fallout.State.PhBeforeDeposit / PhStep) * PhStep; pH >= LowestPh; pH -= PhStep)
        {
            var state = EquilibriumSolver.Product.Solve(input with { FixedPh = pH });
            if (state.Converged && state.Solids.All(s => s.Index <= 0 || s.Solid.Role != SolidRole.FormsReadily || SolidOwners.Of(s.Solid)?.Rule != owner))
            {
                return Math.Floor((pH + 1e-9) * 10) / 10;
            }
        }

        return null;
    }

    /// <summary>A lower pH, purer water, or less of what meets there.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        if (RepairContext.Value(finding, "clear at pH") is { } ph)
        {
            foreach (var acid in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59", "sulfuric-37", "citric-acid-h2o" }.OfType<string>().Distinct(StringComparer.Ordinal))
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
                foreach (var iron in addition.ComponentMoles.GetValueOrDefault("Fe+3") + addition.ComponentMoles.GetValueOrDefault("Fe+2") > 0 ? Additions.OtherIron(context, addition) : [])
                {
                    yield return iron;
                }

                yield return Additions.Less(context, addition);
            }
        }
    }
}

/// <summary>What makes a deposit in a tank worth a finding.</summary>
/// <param name="Metal">The trace metal that counts; null when the weight does.</param>
internal sealed record DepositLoss(string? Metal, double Share);
