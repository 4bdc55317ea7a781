using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>What falls out without an engine that could compute it: known of the substance alone.</summary>
public static class Flocs
{
    /// <summary>True for a finding that an extract flocs or gels in what it meets.</summary>
    public static bool AreToldBy(Finding finding) => finding.Rule.Name == ExtractFallsOut.RuleName;
}
