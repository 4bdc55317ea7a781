using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>Other water.</summary>
internal static class Waters
{
    /// <summary>A stock made with distilled water; null when nothing else is poured.</summary>
    /// <param name="alsoWhereOpen">True to write it also where the file leaves the water open.</param>
    public static Repair? Distilled(RepairContext context, StockFacts stock, bool alsoWhereOpen = false)
    {
        var edits = new List<JsonEdit>();
        foreach (var step in stock.Stock.Steps)
        {
            var of = step switch { PourStep pour => pour.Of, TopUpStep topUp => topUp.Of, _ => null };
            if (step is PourStep or TopUpStep && (of is { Value.File: not null } || (of is null && alsoWhereOpen)))
            {
                edits.Add(Steps.Set(context, step.Place, "of", "distilled"));
            }
        }

        return edits.Count == 0
            ? null
            : Repair.Chemistry("distilled-water", $"Make '{stock.Stock.Name}' with distilled water and say so.", [.. edits]);
    }

    /// <summary>A final solution made with rain or reverse-osmosis water.</summary>
    public static Repair? Pure(RecipeFacts recipe, string water) => recipe.Recipe.Water is { Value.File: not null } source
        ? Repair.Chemistry(
            $"{water}-water",
            $"Make '{recipe.Recipe.Name}' with {(water == "rain" ? "rain" : "reverse-osmosis")} water.",
            new JsonEdit.ReplaceValue(source.Place, JsonDraft.Of(water)))
        : null;

    /// <summary>Each kind of pure water in its place.</summary>
    public static IEnumerable<RepairProposal> Purer(RecipeFacts recipe) =>
        new[] { "rain", "reverse-osmosis" }.Select(w => Pure(recipe, w)).OfType<Repair>().Select(RepairProposal.Of);

    /// <summary>The pH of the final solution set with a reagent.</summary>
    public static Repair Adjust(RepairContext context, RecipeFacts recipe, double ph, string reagent)
    {
        var place = recipe.Recipe.Place;
        var text = RecipeLint.Recipes.Quantities.AmountText.Write(Math.Round(ph, 1));
        var name = context.Workspace.Catalogue.ById(reagent)?.Name ?? reagent;
        var adjust = JsonDraft.Of(("pH", JsonDraft.Of(text)), ("using", JsonDraft.Of(reagent)));
        JsonEdit[] edits = context.Item(place)?["adjust"] is null
            ? [new JsonEdit.InsertMember(place, "adjust", adjust, "doses")]
            :
            [
                Steps.Set(context, place.Child("adjust"), "pH", text),
                Steps.Set(context, place.Child("adjust"), "using", reagent),
                // The strength that is stated is that of the reagent before.
                .. context.Item(place.Child("adjust"))?["strength"] is null
                    ? Array.Empty<JsonEdit>() : [new JsonEdit.Remove(place.Child("adjust").Child("strength"))],
            ];
        return Repair.Chemistry($"ph-with-{Slug.Of(reagent, ".")}", $"Set the pH of '{recipe.Recipe.Name}' to {text} with {name}.", edits);
    }
}
