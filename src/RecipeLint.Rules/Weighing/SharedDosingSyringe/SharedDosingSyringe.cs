using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>One syringe, pipette or dropper for two stocks that cloud where they meet undiluted.</summary>
internal sealed class SharedDosingSyringe : RecipeRule<SharedDosingSyringe.Meeting>, IProposesRepairs
{
    public const string RuleName = "shared-dosing-syringe";

    /// <summary>
    /// What is dipped into the bottle and keeps a remnant behind its nozzle. A cylinder or jug is poured into and drains; it is left alone.
    /// </summary>
    private static readonly MeasureKind[] _dipped = [MeasureKind.Syringe, MeasureKind.Pipette, MeasureKind.Dropper];

    private static readonly string[] _shown = [Component.Calcium, Component.Sulfate, Component.Phosphate];

    public override string Name => RuleName;

    protected override IEnumerable<Meeting> Judge(RecipeFacts recipe, RuleContext context)
    {
        var limit = context.Options<SharedDosingSyringeOptions>().Deposit;
        var groups = recipe.Doses
            .Where(d => d is { Stock: not null, Measure: { } measure } && _dipped.Contains(measure.Kind))
            .GroupBy(d => d.Measure!.Name, StringComparer.Ordinal)
            .Where(g => g.Count() > 1)
            .ToList();
        if (groups.Count == 0)
        {
            yield return new Meeting(
                recipe, null, null, 0, "", limit)
            { Checks = [Check.That("one of them takes two different stocks", false)] };
        }

        foreach (var group in groups)
        {
            var worst = Pairs([.. group])
                .Select(p => (p.First, p.Second, Deposit: DepositWhereTheyMeet(p.First.Stock!, p.Second.Stock!)))
                .OrderByDescending(p => p.Deposit.Grams)
                .FirstOrDefault();
            if (worst.First is not null)
            {
                var grams = Rounding.SixDigits(worst.Deposit.Grams);
                yield return new Meeting(recipe, worst.First, worst.Second, grams, worst.Deposit.Names, limit)
                {
                    Checks = [new Check("enough to see", grams, Relation.AtLeast, limit, "g/L")],
                };
            }
        }
    }

    protected override Finding Describe(Meeting verdict, RuleContext context)
    {
        var (first, second, grams, names) = (verdict.First!, verdict.Second!, verdict.GramsPerLitre, verdict.Names);
        var (measure, one, other) = (first.Measure!, first.Stock!.Stock.Name, second.Stock!.Stock.Name);
        var kind = measure.Kind switch { MeasureKind.Syringe => "syringe", MeasureKind.Pipette => "pipette", _ => "dropper" };
        var place = second.Entry.With?.Place ?? second.Entry.Place;
        var message =
            $"'{measure.Name}' takes '{one}' and then '{other}': where a remnant of the one meets the other undiluted, "
                + $"{Say.Number(grams)} g/L of {names} falls out. "
            + $"The remnant in a {kind} is carried back into the bottle, and the crust in its nozzle makes each dose short. "
            + $"Keep a marked {kind} for each stock, or rinse it with clean water between the two.";
        return context.Find(
            place, message, Harm.Damage, grams < context.Options<SharedDosingSyringeOptions>().Crust ? Odds.Possible : Odds.Certain) with
        {
            Measured = new Measured("deposit where they meet", grams, verdict.Limit, "g/L"),
            Values = [new NamedValue("deposit where they meet", grams, "g/L")],
            Related = [new RelatedPlace(first.Entry.With?.Place ?? first.Entry.Place, $"the same {kind} takes '{one}'")],
        };
    }

    protected override Working Work(Meeting verdict, RuleContext context)
    {
        if (verdict is not { First: { Stock: { } one, Measure: { } measure }, Second.Stock: { } other })
        {
            return new WorkingBuilder($"the syringes and pipettes of '{verdict.Recipe.Recipe.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"'{one.Stock.Name}' meets '{other.Stock.Name}' in '{measure.Name}'");
        work.Remark("A remnant of the one, half diluted by the other: equal parts of both.");
        foreach (var component in _shown)
        {
            var (ofOne, ofOther) = (one.Concentration(component).MolesPerLitre, other.Concentration(component).MolesPerLitre);
            if (ofOne + ofOther > 0)
            {
                var a = work.Given($"{IonWords.Of(component)} in the one", ofOne, "mol/L", "amounts in the file");
                var b = work.Given($"{IonWords.Of(component)} in the other", ofOther, "mol/L", "amounts in the file");
                work.Result($"{IonWords.Of(component)} where they meet", "half of each", (a + b) / 2, "mol/L");
            }
        }

        var grams = work.Given(
            $"falls out of that{(verdict.Names.Length > 0 ? $" ({verdict.Names})" : "")}", verdict.GramsPerLitre, "g/L", "engine");
        return work.Check(verdict.Checks[0], grams, work.Option("deposit from which a finding is given", verdict.Limit)).Done(grams);
    }

    /// <summary>Another measure of the shop for the second stock.</summary>
    protected override IEnumerable<RepairProposal> Repair(Meeting verdict, Finding finding, RepairContext context) =>
        Equipment.OtherMeasures(finding, context);

    private static IEnumerable<(DoseFacts First, DoseFacts Second)> Pairs(List<DoseFacts> doses)
    {
        for (var i = 0; i < doses.Count; i++)
        {
            for (var j = i + 1; j < doses.Count; j++)
            {
                if (doses[i].Stock!.Stock.File != doses[j].Stock!.Stock.File)
                {
                    yield return (doses[i], doses[j]);
                }
            }
        }
    }

    /// <summary>
    /// g/L of the solids that fall out of equal parts of two stocks at 20 °C and out of neither diluted by half on its own; zero where the
    /// chemistry gives no answer.
    /// </summary>
    private static (double Grams, string Names) DepositWhereTheyMeet(StockFacts first, StockFacts second)
    {
        var (one, other) = (Half(first), Half(second));
        var limits = DepositOptions.Of(first.Settings);
        var met = Deposits(ComponentMoles.Sum([one, other]), limits);
        var alone = Deposits(one, limits).Concat(Deposits(other, limits)).Select(c => c.Solid).ToHashSet();
        var own = met.Where(c => !alone.Contains(c.Solid)).OrderByDescending(c => c.Mass.GramsPerLitre).ToList();
        return (own.Sum(c => c.Mass.GramsPerLitre), Say.List(own.Take(2).Select(c => Plain(c.Solid.Name))));
    }

    /// <summary>A mineral's name inside a sentence.</summary>
    private static string Plain(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static ComponentMoles Half(StockFacts stock) =>
        stock.ComponentMoles.Times(0.5 / stock.Volume.Litres);

    /// <summary>What falls out and is no soluble salt, which the next dose takes up again.</summary>
    private static List<SolidDeposit> Deposits(ComponentMoles molesPerLitre, DepositLimits limits) =>
    [
        .. DepositJudgement.Of(StateSolver.Solve(SolutionMix.Of(molesPerLitre, new Volume(1)), SolutionMix.FilledAtCelsius), limits)
            .Deposits.Where(d => !d.Owner.IsOfSalts).SelectMany(d => d.Deposits),
    ];

    /// <summary>Of the stocks that one measure takes the two that cloud most where they meet.</summary>
    /// <param name="First">Null where no measure takes two stocks.</param>
    /// <param name="GramsPerLitre">Of deposit, to six digits.</param>
    /// <param name="Names">Of the deposits, for a sentence.</param>
    /// <param name="Limit">g/L.</param>
    internal sealed record Meeting(
        RecipeFacts Recipe, DoseFacts? First, DoseFacts? Second, double GramsPerLitre, string Names, NumberOption Limit) : Verdict;
}
