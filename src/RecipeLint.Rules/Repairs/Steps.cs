using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>Changes of the list of steps.</summary>
internal static class Steps
{
    public static Place ListOf(StockFacts stock) => stock.Stock.Place.Child("steps");

    public static int CountOf(StockFacts stock, RepairContext context) => context.Item(ListOf(stock))?.Items.Count ?? 0;

    /// <summary>A step moved in front of another, or behind it.</summary>
    public static JsonEdit? Move(StockFacts stock, RepairContext context, Step step, Step other, bool behind = false)
    {
        var (from, to) = (RepairContext.IndexOf(step), RepairContext.IndexOf(other));
        var target = to > from ? to - 1 : to;
        target += behind ? 1 : 0;
        return from == target ? null : JsonEdit.Move(ListOf(stock), from, target, CountOf(stock, context));
    }

    public static JsonEdit Insert(StockFacts stock, int index, params (string Name, string Value)[] members) =>
        new JsonEdit.InsertElement(ListOf(stock), index, JsonDraft.Of([.. members.Select(m => (m.Name, JsonDraft.Of(m.Value)))]));

    /// <summary>Where something is put in that has to be there before everything else: behind the first water.</summary>
    public static int AfterFirstWater(StockFacts stock) =>
        stock.Stock.Steps is [PourStep first, ..] ? RepairContext.IndexOf(first) + 1 : 0;

    /// <summary>Where the last thing is put in: before the last top-up and what is done right before it, else at the end.</summary>
    public static int BeforeTopUp(StockFacts stock, RepairContext context)
    {
        var last = stock.Stock.Steps.OfType<TopUpStep>().LastOrDefault();
        if (last is null)
        {
            return CountOf(stock, context);
        }

        var index = RepairContext.IndexOf(last);
        while (index > 0 && stock.Stock.Steps.FirstOrDefault(s => RepairContext.IndexOf(s) == index - 1) is HandlingStep)
        {
            index--;
        }

        return index;
    }

    /// <summary>What stands in a file, to be written elsewhere.</summary>
    public static JsonDraft Copy(JsonItem item) => item.Kind switch
    {
        JsonKind.Object => new JsonDraft.Object([.. item.Members.Select(m => new DraftMember(m.Name, Copy(m.Value)))]),
        JsonKind.Array => new JsonDraft.List([.. item.Items.Select(Copy)]),
        JsonKind.Text => JsonDraft.Of(item.Text),
        JsonKind.Number => new JsonDraft.Literal(item.Text),
        JsonKind.True => new JsonDraft.Literal("true"),
        JsonKind.False => new JsonDraft.Literal("false"),
        _ => new JsonDraft.Literal("null"),
    };

    /// <summary>Writes a member of an object: another value, or a new member.</summary>
    public static JsonEdit Set(RepairContext context, Place holder, string name, string value, string? after = null) =>
        context.Item(holder)?[name] is null
            ? new JsonEdit.InsertMember(holder, name, JsonDraft.Of(value), after)
            : new JsonEdit.ReplaceValue(holder.Child(name), JsonDraft.Of(value));

    /// <summary>Writes a member of an object inside the document, with the object where it is missing.</summary>
    public static JsonEdit SetInside(RepairContext context, Place document, string holder, string name, string value) =>
        context.Item(document)?[holder] is null
            ? new JsonEdit.InsertMember(document, holder, JsonDraft.Of((name, JsonDraft.Of(value))))
            : Set(context, document.Child(holder), name, value);
}
