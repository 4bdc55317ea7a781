using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Charges from mg/L.</summary>
internal sealed partial class ChargeImbalance
{
    protected override Working Work(ChargeBalance verdict, RuleContext context) => verdict switch
    {
        TargetCharges targets => Work(targets, context),
        var solution => Work((SolutionCharges)solution, context),
    };

    private static Working Work(TargetCharges verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"charges of the targets of '{verdict.Recipe.Recipe.Name}'");
        var wanted = verdict.Milligrams;
        var (cations, anions) = (new List<Term>(), new List<Term>());
        Term? ammoniumWanted = null;
        foreach (var (key, charge) in _charges.Where(c => wanted.ContainsKey(c.Key)))
        {
            var equivalents = Equivalents(work, key, wanted[key], Math.Abs(charge));
            (charge > 0 ? cations : anions).Add(equivalents);
            ammoniumWanted = key == "NH4-N" ? equivalents : ammoniumWanted;
        }

        var plus = work.Result("cations", "sum", Term.Sum(cations), "meq/L");
        var minus = work.Result("anions", "sum", Term.Sum(anions), "meq/L");
        if (!verdict.ByForm)
        {
            (plus, minus) = WithNitrogen(work, wanted["N"], ammoniumWanted, plus, minus);
        }

        var apart = work.Result("apart", "100 × |cations - anions| / (cations + anions)", 100 * Term.Size(plus - minus) / (plus + minus),
            "%");
        return work.Check(verdict.Apart, apart,
            work.Option("limit", context.Options<ChargeImbalanceOptions>().TargetTolerance)).Done(apart);
    }

    /// <summary>Nitrogen without a form, as it balances best.</summary>
    private static (Term Cations, Term Anions) WithNitrogen(
        WorkingBuilder work, double nitrogen, Term? ammoniumWanted, Term plus, Term minus)
    {
        var all = Equivalents(work, "N", nitrogen, 1);
        if (ammoniumWanted is not null)
        {
            var rest = work.Result("nitrogen without a stated form", "N - NH4-N", all - ammoniumWanted, "meq/L");
            return (plus, work.Result("anions with it as nitrate", "anions + nitrogen", minus + rest, "meq/L"));
        }

        var ammonium = work.Result(
            "part of the nitrogen that is best taken as ammonium",
            "(anions + nitrogen - cations) / 2, between 0 and all", Term.Larger(0, Term.Smaller((minus + all - plus) / 2, all)), "meq/L");
        return (
            work.Result("cations with it", "cations + ammonium", plus + ammonium, "meq/L"),
            work.Result("anions with the rest as nitrate", "anions + nitrogen - ammonium", minus + all - ammonium, "meq/L"));
    }

    private static Term Equivalents(WorkingBuilder work, string key, double milligrams, int charge)
    {
        var amount = work.Given($"{key} wanted", milligrams, "mg/L", From.File);
        var weight = AtomicWeights.Of(NutrientKeys.ElementOf(key));
        return work.Result($"{key} by charge", $"mg/L / {((Term)weight).Text} × {charge}", amount / weight * charge, "meq/L");
    }

    private static Working Work(SolutionCharges verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"charges of the solution '{verdict.Recipe.Recipe.Name}'");
        if (verdict.Share is not { } check)
        {
            return work.Statements(verdict).Done();
        }

        var cations = work.Given("cations of all salts and the water", verdict.Cations, "meq/L", From.Amounts);
        var open = work.Given("charge that a label or a water analysis leaves open", verdict.Open, "meq/L", From.Amounts);
        var percent = work.Result("of the cations", "100 × |open| / cations", 100 * Term.Size(open) / cations, "%");
        return work.Check(check, percent, work.Option("limit",
            context.Options<ChargeImbalanceOptions>().Tolerance)).Statements(verdict).Done(percent);
    }
}
