using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>What the words of a finding mean, in the handbook's own sentences.</summary>
internal static class Levels
{
    public static string Meaning(Level level) => level switch
    {
        Level.Error => "It will fail or hurt. Do not mix before it is mended.",
        Level.Warning => "Likely to go wrong, or costly. Mend it, or know why not.",
        _ => "Worth knowing. Nothing has to change.",
    };

    public static string Meaning(Certainty certainty) => certainty switch
    {
        Certainty.Computed => "It follows from the numbers in your file and well-known constants.",
        Certainty.Estimate => "A simplified calculation, or a constant on which sources differ. Near the limit, try it small first.",
        _ => "A habit of the trade. Your own experience may outweigh it.",
    };

    public static string Meaning(RuleScope scope) => scope switch
    {
        RuleScope.Stock => "One stock at a time",
        RuleScope.Recipe => "One recipe with its stocks and water",
        _ => "All files together",
    };

    public static string Confidence(string confidence) => confidence switch
    {
        "found" => "(read there)",
        "memory" => "(recalled, not read again)",
        "derived" => "(arithmetic)",
        _ => "(practice)",
    };
}
