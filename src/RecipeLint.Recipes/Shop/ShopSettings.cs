using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Shop;

/// <summary>A balance of the shop.</summary>
/// <param name="Readability">The smallest step of the display.</param>
/// <param name="Repeatability">Standard deviation of repeated weighings; null when not stated (1.5 times the readability is then
/// used).</param>
/// <param name="MinimumWeight">Stated by the maker; null when not stated.</param>
public sealed record Scale(string Name, Place Place, Mass? Capacity, Mass Readability, Mass? Repeatability, Mass? MinimumWeight);

public enum MeasureKind
{
    Cylinder,
    Flask,
    Pipette,
    Syringe,
    Injector,
    Jug,
    Dropper,
    Spoon,
}

/// <summary>A volume measure or dosing device of the shop.</summary>
/// <param name="Readability">Graduation; null when it has a single mark.</param>
/// <param name="Tolerance">Stated accuracy at full volume.</param>
public sealed record Measure(string Name, Place Place, MeasureKind Kind, Volume? Capacity, Volume? Readability, Tolerance? Tolerance);

/// <summary>What a meter reads.</summary>
public enum MeterKind
{
    Ph,
    Conductivity,
}

/// <summary>A pH or EC meter of the shop.</summary>
/// <param name="Accuracy">Half-width of a reading; absolute ones in pH or mS/cm.</param>
public sealed record Meter(string Name, Place Place, MeterKind Kind, Tolerance Accuracy);

/// <summary>A vessel: empty mass counts against a scale's capacity.</summary>
public sealed record Vessel(string Name, Place Place, Volume? Capacity, Mass? Tare);

/// <summary>A place where stocks are kept.</summary>
public sealed record Site(string Name, Place Place, Interval<Temperature> At);

/// <summary>What something costs.</summary>
/// <param name="Of">The substance or product as the settings name it.</param>
/// <param name="Cost">In the shop's currency, for the mass or the volume.</param>
/// <param name="Mass">Null where a volume is bought.</param>
/// <param name="Volume">Null where a mass is bought.</param>
/// <param name="Substance">The one that the name fits; null when it fits none or several (already reported).</param>
public sealed record Price(string Of, Place Place, double Cost, Mass? Mass, Volume? Volume, Substance? Substance);

/// <summary>When a scale or meter was calibrated, and until when that holds.</summary>
/// <param name="Name">Of the scale or meter.</param>
/// <param name="Place">Of the day.</param>
/// <param name="Due">The last day it holds.</param>
public sealed record Calibration(string Name, Place Place, DateOnly Done, DateOnly Due);

/// <summary>What the shop says of the rules for some of its files.</summary>
/// <param name="Patterns">In the syntax of gitignore, from the folder of the settings file on.</param>
public sealed record PathRules(Place Place, IReadOnlyList<string> Patterns, IReadOnlyList<RuleSetting> Rules);

/// <summary>What the shop says of one rule.</summary>
/// <param name="Level">"off", "note", "warning", "error"; null when only options are set.</param>
/// <param name="Options">Option values as JSON literals by option name; read with the type the rule states.</param>
public sealed record RuleSetting(string Rule, Place Place, string? Level, IReadOnlyDictionary<string, Located<string>> Options);

/// <summary>An accepted finding.</summary>
/// <param name="IdPath">Ids inside the file ("steps/edta/amount"); null for any place in it.</param>
/// <param name="Accepted">The accepted value; a worse one reopens the finding.</param>
/// <param name="Expires">Last day it holds; null for no end.</param>
public sealed record Suppression(Place Place, string Rule, string File, string? IdPath, string Reason, double? Accepted, DateOnly? Expires);

/// <summary>The shop: equipment, sites and how strictly it wants to be judged.</summary>
public sealed record ShopSettings
{
    /// <summary>Null when no settings file was found and the built-in defaults hold.</summary>
    public string? File { get; init; }

    public IReadOnlyList<Scale> Scales { get; init; } = [];

    public IReadOnlyList<Measure> Measures { get; init; } = [];

    /// <summary>pH and EC meters.</summary>
    public IReadOnlyList<Meter> Meters { get; init; } = [];

    public IReadOnlyList<Vessel> Vessels { get; init; } = [];

    public IReadOnlyList<Site> Sites { get; init; } = [];

    /// <summary>What substances and products cost.</summary>
    public IReadOnlyList<Price> Prices { get; init; } = [];

    /// <summary>What prices are counted in; null when not stated.</summary>
    public string? Currency { get; init; }

    /// <summary>Default crop profile.</summary>
    public Located<string>? Profile { get; init; }

    /// <summary>The shop's own file of that profile; null for a built-in one.</summary>
    public string? ProfileFile { get; init; }

    public IReadOnlyList<RuleSetting> Rules { get; init; } = [];

    public IReadOnlyList<Suppression> Suppressions { get; init; } = [];

    /// <summary>Calibrations of scales and meters that state how long they hold.</summary>
    public IReadOnlyList<Calibration> Calibrations { get; init; } = [];

    /// <summary>
    /// Levels and options for some of the files, in the order of the file; what fits a file is already among <see cref="Rules"/>.
    /// </summary>
    public IReadOnlyList<PathRules> Paths { get; init; } = [];

    /// <summary>Which of <see cref="Paths"/> are among the rules; settings of one file that differ in this judge differently.</summary>
    public string Variant { get; init; } = "";

    /// <summary>The settings file this one extends, as written; null when it stands alone.</summary>
    public Located<string>? Extends { get; init; }

    /// <summary>The name of the data the shop was last looked over with.</summary>
    public Located<string>? PinnedData { get; init; }

    /// <summary>The file of findings that were there from the start, relative to the root; null when there is none.</summary>
    public string? Baseline { get; init; }

    /// <summary>
    /// Folders that hold the shop's own rules, as written, relative to the settings file; empty when any folder of the shop may.
    /// </summary>
    public IReadOnlyList<Located<string>> HouseRuleFolders { get; init; } = [];

    /// <summary>The shop's own rules, in the order of their files; each id and name once.</summary>
    public IReadOnlyList<HouseRuleDocument> HouseRules { get; init; } = [];

    /// <summary>
    /// Names of equipment and sites whose entry could not be read (already reported), so that their use is not reported as well.
    /// </summary>
    public IReadOnlySet<string> UnreadNames { get; init; } = new HashSet<string>();

    /// <summary>False when the settings file itself could not be read (already reported); nothing is then known of the equipment.</summary>
    public bool IsReadable { get; init; } = true;

    /// <summary>What findings are tuned and suppressed by, once the files themselves are let go: no equipment, sites or prices.</summary>
    public ShopSettings ForFindings() => new()
    {
        File = File,
        Variant = Variant,
        Rules = Rules,
        Suppressions = Suppressions,
        HouseRules = HouseRules,
        IsReadable = IsReadable,
    };

    /// <summary>Where the first one listed stands alone, it is the scale every weighing uses.</summary>
    public Scale? FindScale(string name) => Scales.FirstOrDefault(s => s.Name == name);

    public Measure? FindMeasure(string name) => Measures.FirstOrDefault(m => m.Name == name);
}
