using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Editor.Reading;
using RecipeLint.Editor.Sessions;
using RecipeLint.Recipes.Schema;
using RecipeLint.Reports.Labels;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Editor.Features;

/// <summary>
/// What is told of the thing under the pointer: a substance, a line's share, a stock, a rule, a key; and why a finding stands there.
/// </summary>
internal static class Hover
{
    public static JsonNode? Of(View view, int offset)
    {
        if (Under.At(view.Source?.Tree, offset) is not { } under)
        {
            return null;
        }

        var parts = new List<string>();
        if (Things.At(view.Workspace, view.File, under) is { } thing)
        {
            parts.AddRange(Tell(view, thing));
        }

        if (!under.OnKey)
        {
            parts.AddRange(Line(view, under));
        }
        else if (parts.Count == 0 && SchemaGuide.For(DocumentKinds.FromFileName(view.File))?.KeyAt(under.Tokens) is { } key)
        {
            parts.Add($"**{Lsp.Plain(key.Name)}**: {Lsp.Plain(key.Description)}");
        }

        parts.AddRange(Findings(view, offset));
        return parts.Count == 0 ? null : new JsonObject
        {
            ["contents"] = Lsp.Markdown(string.Join("\n\n", parts)),
            ["range"] = Lsp.Node(view.RangeOf(view.File, under.Span)),
        };
    }

    private static IEnumerable<string> Tell(View view, Thing thing)
    {
        switch (thing.Kind)
        {
            case ThingKind.Substance when view.Workspace.Catalogue.ById(thing.Key) is { } substance:
                yield return Tell(substance);
                break;
            case ThingKind.Rule when Things.SettingsOf(view.Workspace).Select(s => HouseRules.Find(s, thing.Key)).OfType<RuleDescriptor>()
                .FirstOrDefault() is { } rule:
                yield return Tell(rule);
                break;
            case ThingKind.File when view.Facts.FindStock(thing.Key) is { } stock && thing.Key != view.File:
                yield return Tell(view, stock);
                break;
        }
    }

    private static string Tell(Substance substance)
    {
        var text = new StringBuilder();
        text.Append("**").Append(Lsp.Plain(substance.Name)).Append("** (`").Append(substance.Id).Append("`)");
        text.Append(substance.Formula is { } formula ? $", {Lsp.Plain(formula.Text)}" : "")
            .Append(substance.Cas is { } cas ? $", CAS {cas}" : "").Append("\n\n");
        var content = NutrientKeys.Grams(ElementTotals.Of(substance.Content, new(100))).Select(g => $"{g.Key} {Figures.Of(g.Grams)} %")
            .ToList();
        text.Append(content.Count == 0 ? "Composition not known." : "By weight, as bought: " + string.Join(", ", content) + ".");
        if (substance.Hazards is { } hazards)
        {
            var codes = hazards.Statements.Concat(hazards.SupplierAdds).ToList();
            var words = codes.Count == 0 ? "none classified" : string.Join(", ", codes.Select(GhsWords.InASentence));
            text.Append("\n\nHazards: ").Append(words).Append(" (")
                .Append(Lsp.Plain(hazards.Source))
                .Append("). The supplier's safety data sheet decides.");
        }

        text.Append(substance.Note is { } note ? "\n\n" + Lsp.Plain(note.Value) : "");
        return text.ToString();
    }

    /// <summary>The rule's own explanation: what it finds and why it matters.</summary>
    private static string Tell(RuleDescriptor rule) =>
        ($"**{rule.Id} {rule.Name}** ({Words.Of(rule.Level)}, {Words.Of(rule.Certainty)})\n\n"
            + $"{rule.Section("What it finds")}\n\n{rule.Section("Why it matters")}").TrimEnd();

    private static string Tell(View view, StockFacts stock)
    {
        var mixing = stock.Chemistry.Mixing;
        var ph = mixing.IsSolved ? $", pH {Say.PhShown(mixing.Ph)} when mixed" : "";
        var counts = Verdicts.Words(view.Judged.Result.Findings.Where(f => f.Place.File == stock.Stock.File));
        return $"**{Lsp.Plain(stock.Stock.Name)}**: makes {Figures.Of(stock.Volume.Litres)} L{ph}; {counts}.";
    }

    /// <summary>What the line under the pointer brings: its share of each element, in the stock or in the tank.</summary>
    private static IEnumerable<string> Line(View view, Under under)
    {
        if (view.Stock is { } stock && Figures.EntryOf(under.Tokens, "steps") is { } step)
        {
            var additions = stock.Additions.Where(a => a.Place.Pointer.Value == step).ToList();
            if (additions.Count > 0)
            {
                yield return Shares(ElementTotals.Sum(additions.Select(a => a.Elements)), stock.Totals, stock.Volume.Litres, "this stock");
            }
        }

        if (view.Recipe is { } recipe && Figures.EntryOf(under.Tokens, "doses") is { } entry
            && recipe.Doses.FirstOrDefault(d => d.Entry.Place.Pointer.Value == entry) is { } dose)
        {
            var whole = ElementTotals.Sum([.. recipe.Doses.Select(d => d.Elements), .. recipe.Water is { } water ? [water.Elements]
                : Array.Empty<ElementTotals>()]);
            yield return Shares(dose.Elements, whole, recipe.FinalVolume.Litres, "the final solution");
        }
    }

    private static string Shares(ElementTotals part, ElementTotals whole, double litres, string of)
    {
        var shares = Figures.Shares(part, whole).ToDictionary(s => s.Key, s => s.Share, StringComparer.Ordinal);
        var text = new StringBuilder($"| brings | mg/L in {of} | share |\n| --- | ---: | ---: |\n");
        foreach (var (key, amount) in Figures.PerLitre(part, litres).Where(p => shares.ContainsKey(p.Key)))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {key} | {Figures.Of(amount)} | {shares[key] * 100:0.#} % |\n");
        }

        return text.ToString().TrimEnd();
    }

    private static IEnumerable<string> Findings(View view, int offset) =>
        view.Findings.Where(f => view.Source!.Resolve(f.Place) is var span && offset >= span.Start && offset <= span.End
            && span.Length < view.Source.Bytes.Length / 2)
            .Select(f => f.Rule).Distinct().Take(3).Select(Tell);
}
