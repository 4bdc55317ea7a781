using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>What is wrong with what a shop says of the rules.</summary>
/// <param name="IsUnknownRule">True for a name that fits no rule; false for an option or level that cannot be used.</param>
public sealed record SettingIssue(bool IsUnknownRule, Place Place, string IdPath, string Message, IReadOnlyList<string> Suggestions);

/// <summary>
/// One shop's levels and options, checked against the rule book. Whatever cannot be used is an issue and the default holds.
/// </summary>
public sealed class RuleTuning
{
    private readonly Dictionary<string, (bool Off, Level? Level)> _levels = [];
    private readonly Dictionary<string, Dictionary<string, string>> _options = [];
    private readonly List<SettingIssue> _issues = [];
    private readonly ConcurrentDictionary<string, IReadOnlyDictionary<string, string>> _optionsOf = new(StringComparer.Ordinal);

    private RuleTuning()
    {
    }

    public IReadOnlyList<SettingIssue> Issues => _issues;

    public static RuleTuning Read(ShopSettings settings)
    {
        var tuning = new RuleTuning();
        var seen = new HashSet<(string Rule, string List)>();
        foreach (var setting in settings.Rules)
        {
            if (HouseRules.Find(settings, setting.Rule) is not { } rule)
            {
                tuning.AddUnknown(setting.Rule, setting.Place.Key, "rules/" + setting.Rule);
                continue;
            }

            // Set once for all files and once for some, or here and in the file this one extends, is no slip.
            var pointer = setting.Place.Pointer.Tokens;
            if (!seen.Add((rule.Id, setting.Place.File + "/" + (pointer is ["paths", var entry, ..] ? entry : ""))))
            {
                tuning.Add(
                    setting.Place.Key,
                    "rules/" + setting.Rule,
                    $"The rule '{rule.Name}' ({rule.Id}) is set twice, once by its name and once by its id. Only the last one holds. Keep "
                        + "one of the two.",
                    []);
            }

            tuning.ReadLevel(rule, setting);
            foreach (var (name, value) in setting.Options)
            {
                tuning.ReadOption(rule, setting.Rule, name, value);
            }
        }

        foreach (var suppression in settings.Suppressions.Where(s => HouseRules.Find(settings, s.Rule) is null))
        {
            tuning.AddUnknown(suppression.Rule, suppression.Place.Child("rule"), SuppressionUse.IdPathOf(suppression) + "/rule");
        }

        foreach (var own in settings.HouseRules.Where(r => RuleBook.Find(r.Name.Value) is not null))
        {
            tuning.Add(
                own.Name.Place,
                "name",
                $"'{own.Name.Value}' is the name of a built-in rule, which settings and suppressions mean by it. Give this house rule a "
                    + "name of its own.",
                []);
        }

        return tuning;
    }

    public bool IsOff(RuleDescriptor rule) => _levels.TryGetValue(rule.Id, out var level) && level.Off;

    /// <summary>The level the shop gives a rule; null when it leaves it alone.</summary>
    public Level? LevelOf(RuleDescriptor rule) => _levels.TryGetValue(rule.Id, out var level) ? level.Level : null;

    /// <summary>The finding at the level the shop gives its rule; null where the shop has switched it off.</summary>
    internal Finding? Apply(Finding finding) =>
        IsOff(finding.Rule) ? null
        : LevelOf(finding.Rule) is { } level ? finding with { Level = level }
        : finding.Rule.IsPreview ? finding with { Level = Level.Note }
        : finding;

    /// <summary>Every option of the rule with the shop's value or the default.</summary>
    public IReadOnlyDictionary<string, string> OptionsOf(RuleDescriptor rule) => !_options.ContainsKey(rule.Id)
        ? rule.Defaults.Value
        : _optionsOf.GetOrAdd(rule.Id, static (_, r) => r.Tuning.MakeOptions(r.Rule), (Tuning: this, Rule: rule));

    private OptionValues MakeOptions(RuleDescriptor rule)
    {
        var values = new OptionValues(rule.Defaults.Value);
        foreach (var (name, value) in _options[rule.Id])
        {
            values[name] = value;
        }

        return values;
    }

    /// <summary>The same as the typed record of the rule.</summary>
    public T Options<T>(RuleDescriptor rule)
        where T : IRuleOptions<T> => T.From(OptionsOf(rule));

    private void ReadLevel(RuleDescriptor rule, RuleSetting setting)
    {
        switch (setting.Level)
        {
            case null:
                break;
            case "off":
                _levels[rule.Id] = (true, null);
                break;
            case "note":
                _levels[rule.Id] = (false, Level.Note);
                break;
            case "warning":
                _levels[rule.Id] = (false, Level.Warning);
                break;
            case "error":
                _levels[rule.Id] = (false, Level.Error);
                break;
            default:
                Add(
                    setting.Place,
                    $"rules/{setting.Rule}/level",
                    $"'{setting.Level}' is not a level. The rule '{rule.Name}' keeps its own, {Words.Of(rule.Level)}. Write off, note, "
                        + "warning or error.",
                    Spelling.Nearest(setting.Level, ["off", "note", "warning", "error"], 1));
                break;
        }
    }

    private void ReadOption(RuleDescriptor rule, string writtenRule, string name, Located<string> value)
    {
        var idPath = $"rules/{writtenRule}/{name}";
        if (rule.Options.FirstOrDefault(o => o.Name == name) is not { } option)
        {
            var names = rule.Options.Select(o => o.Name).ToList();
            var known = names.Count switch
            {
                0 => "It has no options",
                1 => $"Its only option is '{names[0]}'",
                _ => $"Its options are {Say.List(names.Select(n => $"'{n}'"))}",
            };
            Add(
                value.Place.Key,
                idPath,
                $"The rule '{rule.Name}' has no option '{name}'. {known}, so this line changes nothing. Correct the name or remove the "
                    + "line.",
                Spelling.Nearest(name, names, 2));
            return;
        }

        if (Parse(option, value.Value) is not { } parsed)
        {
            var wanted = option.IsNumber ? option.Unit.Length == 0 ? "a number" : $"a number in {option.Unit}" : "a text";
            var unit = option.Unit.Length == 0 ? "" : " " + option.Unit;
            Add(
                value.Place,
                idPath,
                $"'{Unquote(value.Value)}' cannot be used for the option '{name}' of the rule '{rule.Name}'. "
                + $"The default {option.Default}{unit} holds instead. Write {wanted}.",
                []);
            return;
        }

        if (!_options.TryGetValue(rule.Id, out var values))
        {
            _options[rule.Id] = values = [];
        }

        values[name] = parsed;
    }

    private static string? Parse(RuleOption option, string literal)
    {
        var text = Unquote(literal).Trim();
        if (!option.IsNumber)
        {
            return text.Length > 0 ? text : null;
        }

        if (option.Unit.Length > 0 && text.EndsWith(option.Unit, StringComparison.Ordinal))
        {
            text = text[..^option.Unit.Length].TrimEnd();
        }

        return TryNumber(text, out _) ? text : null;
    }

    private static bool TryNumber(string text, out double number) =>
        double.TryParse(
            text,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture,
            out number)
        && double.IsFinite(number);

    private static string Unquote(string literal)
    {
        if (!literal.StartsWith('"'))
        {
            return literal;
        }

        try
        {
            using var document = JsonDocument.Parse(literal);
            return document.RootElement.GetString() ?? "";
        }
        catch (JsonException)
        {
            return literal;
        }
    }

    private void AddUnknown(string name, Place place, string idPath)
    {
        var suggestions = RuleBook.Suggest(name);
        var hint = suggestions.Count == 0
            ? "Run 'recipelint rules' for the list of rules"
            : $"Did you mean '{suggestions[0]}'? Correct the name or remove the entry";
        _issues.Add(new SettingIssue(
            true, place, idPath, $"No rule is called '{name}'. This entry therefore changes nothing. {hint}.", suggestions));
    }

    private void Add(Place place, string idPath, string message, IReadOnlyList<string> suggestions) =>
        _issues.Add(new SettingIssue(false, place, idPath, message, suggestions));
}
