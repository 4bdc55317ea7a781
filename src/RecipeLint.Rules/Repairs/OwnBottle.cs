using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>An addition taken into a new stock of its own, as strong and dosed alike, so that the plants get the same.</summary>
internal static class OwnBottle
{
    public static Repair? Of(RepairContext context, StockFacts stock, AdditionFacts addition)
    {
        var users = context.UsersOf(stock).ToList();
        if (context.Item(stock.Stock.Place) is not { } document || document["makes"] is not { } makes
            || RepairContext.StepAt(stock, addition.Place) is not AddStep || context.Item(addition.Place) is not { } step
            || users.Exists(u => u.Dose.Entry is not StockDose { Strokes: null }))
        {
            return null;
        }

        var slash = stock.Stock.File.LastIndexOf('/') + 1;
        var (folder, own) = (stock.Stock.File[..slash], stock.Stock.File[slash..]);
        var name = $"{Slug.Of(addition.Substance.Id, ".")}.stock.json";
        var edits = new List<JsonEdit>
        {
            new JsonEdit.NewFile(Place.Whole(folder + name), Document(document, makes, step, addition)),
            new JsonEdit.Remove(addition.Place),
        };
        foreach (var (recipe, dose) in users)
        {
            var entry = (StockDose)dose.Entry;
            if (context.Item(entry.Place) is not { Kind: JsonKind.Object } item
                || !entry.Stock.Value.EndsWith(own, StringComparison.Ordinal))
            {
                return null;
            }

            // The same entry for the new bottle, without the id that is taken.
            var copy = new JsonDraft.Object(
            [
                .. item.Members.Where(m => m.Name != "id")
                    .Select(m => new DraftMember(
                        m.Name, m.Name == "stock" ? JsonDraft.Of(entry.Stock.Value[..^own.Length] + name) : Steps.Copy(m.Value))),
            ]);
            edits.Add(new JsonEdit.InsertElement(
                recipe.Recipe.Place.Child("doses"),
                int.Parse(entry.Place.Pointer.Tokens[^1], System.Globalization.CultureInfo.InvariantCulture) + 1,
                copy));
        }

        return Repair.Chemistry(
            $"own-bottle-{Slug.Of(addition.Id, ".")}",
            $"Keep {addition.Substance.Name} in a bottle of its own ('{name}'), made and dosed like '{stock.Stock.Name}'.",
            [.. edits]);
    }

    private static JsonDraft.Object Document(JsonItem document, JsonItem makes, JsonItem step, AdditionFacts addition)
    {
        var members = new List<DraftMember>
        {
            new("format", new JsonDraft.Literal("1")),
            new("name", JsonDraft.Of(Say.Capital(addition.Substance.Name))),
            new("makes", Steps.Copy(makes)),
        };
        members.AddRange(document.Members
            .Where(m => m.Name is "dose" or "keep" or "use")
            .Select(m => new DraftMember(m.Name, Steps.Copy(m.Value))));
        var steps = new List<JsonDraft>();
        if (RecipeLint.Recipes.Quantities.AmountText.Times(makes.Text, 0.8) is { } start)
        {
            steps.Add(JsonDraft.Of(("pour", JsonDraft.Of(start)), ("of", JsonDraft.Of("distilled"))));
        }

        steps.Add(Steps.Copy(step));
        steps.Add(JsonDraft.Of(("topUp", Steps.Copy(makes)), ("of", JsonDraft.Of("distilled"))));
        members.Add(new DraftMember("steps", new JsonDraft.List(steps)));
        return new JsonDraft.Object(members);
    }
}
