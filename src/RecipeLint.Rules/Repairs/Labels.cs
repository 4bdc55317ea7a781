using RecipeLint.Analysis;
using RecipeLint.Recipes.Patching;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>What is written on the bottle.</summary>
internal static class Labels
{
    /// <summary>Members put on the label; a label where there is none.</summary>
    public static JsonEdit[] Add(RepairContext context, StockFacts stock, params (string Name, string Value)[] members)
    {
        var place = stock.Stock.Place;
        return context.Item(place)?["label"] is null
            ? [new JsonEdit.InsertMember(place, "label", JsonDraft.Of([.. members.Select(m => (m.Name, JsonDraft.Of(m.Value)))]))]
            : [.. members.Select(m => Steps.Set(context, place.Child("label"), m.Name, m.Value))];
    }
}
