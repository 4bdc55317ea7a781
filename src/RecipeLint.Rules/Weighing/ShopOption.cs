using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>
/// What the shop says of another rule, so that one cause is reported by one rule only: a rule leaves to its neighbour what that one reports,
/// with the limits the shop gave the neighbour.
/// </summary>
internal static class ShopOption
{
    /// <summary>A numeric option of a rule as it holds for a file; null where the shop has switched the rule off.</summary>
    internal static double? Of(Facts facts, string file, string rule, string option)
    {
        var descriptor = RuleBook.Find(rule) ?? throw new KeyNotFoundException($"No rule is called '{rule}'.");
        var tuning = RuleTuning.Read(facts.Workspace.SettingsFor(file));
        return tuning.IsOff(descriptor) ? null : double.Parse(tuning.OptionsOf(descriptor)[option], NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
