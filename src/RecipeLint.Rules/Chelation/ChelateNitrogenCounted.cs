using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>A nitrogen target that is only met when the nitrogen inside chelating agents is counted, which plants do not get.</summary>
public sealed class ChelateNitrogenCounted : RecipeRule, IProposesRepairs
{
    /// <summary>Nitrogen atoms in each agent, from their formulas.</summary>
    internal static readonly (string Component, int Nitrogen)[] Agents =
        [("EDTA-4", 2), ("DTPA-5", 3), ("HEDTA-3", 2), ("EDDHA-4", 2), ("inert:FeHBED-1", 2)];

    public override string Name => "chelate-nitrogen-counted";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete || recipe.Recipe.Targets.FirstOrDefault(t => t.Key.Value == "N") is not { Concentration: { } wanted } target)
        {
            yield break;
        }

        var locked = Agents.Sum(a => a.Nitrogen * recipe.ComponentMoles.GetValueOrDefault(a.Component))
            * AtomicWeights.Of(Element.N) * 1000 / recipe.FinalVolume.Litres;
        var found = recipe.MilligramsPerLitre("N");
        var asked = wanted.MilligramsPerLitre;
        var allowed = target.Tolerance?.HalfWidth(asked) ?? (asked * context.Number("tolerance") / 100);
        var least = Rounding.SixDigits(asked - allowed);
        var counted = Rounding.SixDigits(found + locked);
        if (Rounding.SixDigits(found) >= least || counted < least || counted > Rounding.SixDigits(asked + allowed))
        {
            yield break;
        }

        var message = $"Nitrogen comes to {Say.Number(found)} mg/L where at least {Say.Number(least)} mg/L is wanted; the {Say.Number(locked)} mg/L inside the chelating agents would make up the difference. "
            + "Plants do not get that nitrogen: it stays bound in the agent. "
            + $"Leave it out of the count and add {Say.Number(asked - found)} mg/L as nitrate, or lower the target to what is there.";
        yield return context.Find(target.Place, message) with
        {
            Measured = new Measured("nitrogen", found, least, "mg/L"),
            Values =
            [
                new NamedValue("nitrogen", found, "mg/L"),
                new NamedValue("nitrogen in chelating agents", locked, "mg/L"),
                new NamedValue("least wanted", least, "mg/L"),
            ],
        };
    }

    /// <summary>The target as it is met without the agent's nitrogen.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (RepairContext.Value(finding, "nitrogen") is { } found && context.Item(finding.Place)?.Text.Contains("mg/L", StringComparison.Ordinal) == true
            && Amounts.With(context, finding.Place, Math.Round(found)) is var (edit, text))
        {
            yield return Repair.Chemistry("lower-target", $"Ask for {text} of nitrogen, which is what the plants can get.", edit);
        }
    }
}
