using System.Text.Json.Nodes;
using RecipeLint.Editor.Sessions;
using RecipeLint.Reports;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Editor.Features;

/// <summary>Findings as the protocol marks them in a document.</summary>
internal static class Diagnostics
{
    public const string Source = "recipelint";

    public static JsonArray Of(View view) => Lsp.Array(view.Findings.Select(f => Of(view, f)));

    public static JsonObject Of(View view, Finding finding)
    {
        var diagnostic = new JsonObject
        {
            ["range"] = Lsp.Node(view.RangeOf(finding.Place)),
            ["severity"] = Severity(finding.Level),
            ["code"] = finding.Rule.Id,
            ["codeDescription"] = new JsonObject { ["href"] = RuleLink.Of(finding.Rule).AbsoluteUri },
            ["source"] = Source,
            ["message"] = $"{finding.Message} ({finding.Rule.Name})",
            ["data"] = new JsonObject { ["fingerprint"] = Fingerprint.Of(finding) },
        };
        if (finding.Related.Count > 0)
        {
            diagnostic["relatedInformation"] = Lsp.Array(finding.Related.Select(r =>
                new JsonObject { ["location"] = Lsp.Location(view, r.Place), ["message"] = r.Label }));
        }

        return diagnostic;
    }

    /// <summary>Error 1, warning 2, a note is information: 3.</summary>
    private static int Severity(Level level) => level switch
    {
        Level.Error => 1,
        Level.Warning => 2,
        _ => 3,
    };
}
