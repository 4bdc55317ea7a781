using System.Text.Json.Nodes;
using RecipeLint.Editor.Documents;
using RecipeLint.Editor.Sessions;
using RecipeLint.Recipes.Patching;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Editor.Features;

/// <summary>Repairs of findings, each tried out before it is offered. Safe ones change only how a file says something.</summary>
internal static class CodeActions
{
    private const string AcceptedHere = "Accepted in the editor; write here why.";

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

            if (Accept(view, finding) is { } accept)
            {
                actions.Add((JsonNode)accept);
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
            ["edit"] = Edit(view, repair.Patches),
        };
    }

    /// <summary>
    /// Writes the suppression that keeps the finding out of reports until it gets worse; null where the settings cannot hold it.
    /// </summary>
    private static JsonObject? Accept(View view, Finding finding) =>
        RuleList.All.All(r => r is not SuppressionRule || r.Name != finding.Rule.Name)
        && Acceptance.Of(view.Judged, finding, AcceptedHere, null) is { Patch: { Bytes: not null } patch, File: var settings }
            ? new JsonObject
            {
                ["title"] = $"Accept {finding.Rule.Id} {finding.Rule.Name} here, in {settings} (the reason is yours to write there)",
                ["kind"] = "quickfix",
                ["diagnostics"] = new JsonArray(Diagnostics.Of(view, finding)),
                ["isPreferred"] = false,
                ["edit"] = Edit(view, new Dictionary<string, PatchResult> { [settings] = patch }),
            }
            : null;

    private static JsonObject Edit(View view, IReadOnlyDictionary<string, PatchResult> patches)
    {
        var changes = new JsonArray();
        foreach (var (file, patch) in patches)
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
