namespace RecipeLint.Rules.Engine;

/// <summary>Where the numbers of a working come from, as it stands in brackets behind them.</summary>
internal static class From
{
    internal const string File = "file";

    internal const string Engine = "engine";

    internal const string Amounts = "amounts in the file";

    internal const string Profile = "profile";

    internal const string VolumeModel = "volume model";

    internal const string SolubilityTable = "solubility table";

    internal const string AtomicWeights = "atomic weights";

    internal const string Count = "count";
}
