using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>
/// An addition moved to another part that every recipe doses beside this one; the amount follows the doses, so that the plants get the
/// same.
/// </summary>
internal static class OtherPart
{
    /// <summary>The parts are dosed in one proportion in all recipes when their factors lie this close.</summary>
    private const double SameFactor = 1e-3;

    public static IEnumerable<RepairProposal> Moves(RepairContext context, StockFacts stock, AdditionFacts addition)
    {
        var users = context.UsersOf(stock).Where(u => u.Dose.Dose is { LitresPerLitre: > 0 }).ToList();
        if (users.Count == 0 || RepairContext.StepAt(stock, addition.Place) is not AddStep step)
        {
            yield break;
        }

        foreach (var other in users[0].Recipe.Doses
            .Select(d => d.Stock)
            .OfType<StockFacts>()
            .Where(s => s.Stock.File != stock.Stock.File)
            .DistinctBy(s => s.Stock.File))
        {
            var factors = users.Select(u => Factor(u.Dose, u.Recipe, other)).ToList();
            var isOnlyUser = context.UsersOf(other).All(u => users.Exists(v => v.Recipe.Recipe.File == u.Recipe.Recipe.File));
            if (isOnlyUser && factors[0] is { } factor && factors.TrueForAll(f => f is { } same
                && Math.Abs((same / factor) - 1) < SameFactor)
                && To(context, stock, addition, step, other, factor) is { } repair)
            {
                yield return repair;
            }
        }
    }

    /// <summary>What a litre of this part becomes in a litre of the other, from how the two are dosed.</summary>
    private static double? Factor(DoseFacts dose, RecipeFacts recipe, StockFacts other) =>
        recipe.Doses.Where(d => d.Stock?.Stock.File == other.Stock.File).ToList() is [{ Dose: { LitresPerLitre: > 0 } theirs }]
            ? dose.Dose!.Value.LitresPerLitre / theirs.LitresPerLitre
            : null;

    private static Repair? To(
        RepairContext context, StockFacts stock, AdditionFacts addition, AddStep step, StockFacts other, double perLitre)
    {
        var isPerLitre = step.Amount?.Value is Portion.PerLitreMass or Portion.PerLitreAmount or Portion.PerLitreVolume;
        var factor = isPerLitre ? perLitre : perLitre * other.Volume.Litres / stock.Volume.Litres;
        if (context.Item(step.Place) is not { Kind: JsonKind.Object } item || item["amount"] is not { Kind: JsonKind.Text } amount)
        {
            return null;
        }

        var text = Math.Abs(factor - 1) < SameFactor ? amount.Text
            : AmountText.NumberOf(amount.Text) is { } number ? AmountText.With(amount.Text, AmountText.ToDigits(number * factor, 4)) : null;
        if (text is null)
        {
            return null;
        }

        var taken = other.Stock.Steps.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        var copy = new JsonDraft.Object(
        [
            .. item.Members.Where(m => m.Name != "id" || !taken.Contains(m.Value.Text))
                .Select(m => new DraftMember(m.Name, m.Name == "amount" ? JsonDraft.Of(text) : Steps.Copy(m.Value))),
        ]);
        var name = other.Stock.File.Split('/')[^1].Split('.')[0];
        return Repair.Chemistry(
            $"move-{Slug.Of(step.Id, ".")}-to-{Slug.Of(name, ".")}",
            $"Move {addition.Substance.Name} to '{other.Stock.Name}', {text} there.",
            new JsonEdit.Remove(step.Place),
            new JsonEdit.InsertElement(Steps.ListOf(other), Steps.BeforeTopUp(other, context), copy));
    }
}
