using System.Text.Json.Nodes;
using RecipeLint.Editor.Documents;
using RecipeLint.Editor.Sessions;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Editor.Features;

/// <summary>Repairs of findings, each tried out before it is offered. Safe ones change only how a file says something.</summary>
internal static class CodeActions
{
    /// <param name="cancelled">Looked at between two findings: trying out takes a while.</param>
    public static JsonNode Of(View view, Desk desk, TextRange range, CancellationToken cancelled)
    {
        var repairs = desk.RepairsFor(view);
        var actions = new JsonArray();
        foreach (var finding in view.Findings.Where(f => view.RangeOf(f.Place).Touches(range)))
        {
            cancelled.ThrowIfCancellationRequested();
            var found = repairs.For(finding);
            foreach (var repair in found)
            {
                actions.Add((JsonNode)Of(view, finding, repair, isBest: ReferenceEquals(repair, found[0])));
            }
        }

        return actions;
    }

    private static JsonObject Of(View view, Finding finding, VerifiedRepair repair, bool isBest)
    {
        var safe = repair.Repair.Kind == RepairKind.Safe;
        return new JsonObject
        {
            ["title"] = $"{repair.Repair.Title.TrimEnd('.')} ({repair.Name}{(safe ? "" : ": changes what is mixed")})",
            ["kind"] = "quickfix",
            ["diagnostics"] = new JsonArray(Diagnostics.Of(view, finding)),
            ["isPreferred"] = safe && isBest,
            ["edit"] = Edit(view, repair),
        };
    }

    private static JsonObject Edit(View view, VerifiedRepair repair)
    {
        var changes = new JsonArray();
        foreach (var (file, patch) in repair.Patches)
        {
            var uri = view.UriOf(file);
            if (patch.IsNew)
            {
                changes.Add((JsonNode)new JsonObject { ["kind"] = "create", ["uri"] = uri });
            }

            var edits = patch.Edits.Select(e => (JsonNode)Lsp.Edit(patch.IsNew ? default : view.RangeOf(file, e.Span), e.Text));
            changes.Add((JsonNode)new JsonObject
            {
                ["textDocument"] = new JsonObject { ["uri"] = uri, ["version"] = view.Documents.At(view.FullPathOf(file))?.Version },
                ["edits"] = Lsp.Array(edits),
            });
        }

        return new JsonObject { ["documentChanges"] = changes };
    }
}
