using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Advice.Slips;

/// <summary>What kind of single mistake at the bench; common ones first (common practice, no source).</summary>
public enum SlipKind
{
    LeftOut,
    Twice,
    Half,
    OtherHydrate,
    OtherStrength,
    OtherWater,
    VolumeOver,
    VolumeShort,
    PhNotSet,
    Exchanged,
    OtherSubstance,
    TenTimes,
    Tenth,
}

/// <summary>A single mistake, as the stock that it makes.</summary>
/// <param name="Id">Stable: kind and step ("twice/epsom").</param>
/// <param name="Text">What was done instead ("twice the magnesium sulfate (142 g instead of 71 g)").</param>
/// <param name="Facts">What the bottle then holds.</param>
public sealed record Slip(string Id, SlipKind Kind, string Text, StockFacts Facts)
{
    /// <summary>A slip made by changing the document in thought; null when the changed stock cannot be analysed.</summary>
    internal static Slip? Of(string id, SlipKind kind, string text, Workspace workspace, StockDocument changed) =>
        Analyzer.AnalyseStock(workspace.With(changed), changed.File) is { } facts ? new Slip(id, kind, text, facts) : null;
}
