using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>What a rule gets besides its subject: all facts, its descriptor and its options with the shop's values applied.</summary>
public sealed class RuleContext(
    Facts facts,
    RuleDescriptor descriptor,
    IReadOnlyDictionary<string, string> options,
    Func<string, RuleContext>? forFile = null)
{
    public Facts Facts
    {
        get
        {
            Reach?.All();
            return facts;
        }
    }

    public RuleDescriptor Descriptor { get; } = descriptor;

    /// <summary>The day the run is held against; null leaves dates unjudged.</summary>
    public DateOnly? Today { get; init; }

    /// <summary>
    /// True where verdicts that do not fire are dropped unread: a rule may leave out what only a working of such a one would show.
    /// </summary>
    public bool OnlyWhatFires { get; init; }

    /// <summary>The tuning that holds for a file, where the run remembers it; null reads it from the settings.</summary>
    internal Func<string, RuleTuning>? TuningFor { get; init; }

    /// <summary>Told how far the rule looks; null where nobody wants to know.</summary>
    internal RuleReach? Reach { get; init; }

    /// <summary>What the rule is known to have nothing to say of, and its number among the rules; null where none is.</summary>
    internal (SilentSubjects Stocks, SilentSubjects Recipes, int Rule)? Known { get; init; }

    /// <summary>What <see cref="DepositOptions"/> made of the options; threads that ask at once come to the same.</summary>
    internal OwnerLimits? DepositLimits { get; set; }

    /// <summary>The options of the rule with the values of the shop; the record is named after the rule ("ChelateShortOptions").</summary>
    public T Options<T>()
        where T : IRuleOptions<T> => options is OptionValues values ? values.As<T>() : T.From(options);

    /// <summary>An option as number; the unit is the one rule.json states.</summary>
    public double Number(string option) => double.Parse(options[option], NumberStyles.Float, CultureInfo.InvariantCulture);

    public string Word(string option) => options[option];

    /// <summary>The same with the options that hold for another file; for workspace rules, whose own context holds the defaults.</summary>
    public RuleContext For(string file)
    {
        Reach?.At(file);
        return forFile?.Invoke(file) ?? this;
    }

    /// <summary>What reading found wrong in a file.</summary>
    public IReadOnlyList<Problem> ProblemsOf(string file)
    {
        Reach?.At(file);
        return facts.Workspace.ProblemsOf(file);
    }

    /// <summary>
    /// What a rule on all files says of each stock by itself, without those that it is known to have nothing to say of.
    /// </summary>
    /// <param name="judge">Looks at nothing but the stock and what its own settings say.</param>
    internal IEnumerable<TVerdict> OfEachStockAlone<TVerdict>(Func<StockFacts, IEnumerable<TVerdict>> judge)
        where TVerdict : Verdict => OfEachAlone(facts.Stocks, judge, Known?.Stocks);

    /// <summary>The same of each recipe, with the stocks it doses.</summary>
    /// <param name="judge">Looks at nothing but the recipe, what it was read with and what its own settings say.</param>
    internal IEnumerable<TVerdict> OfEachRecipeAlone<TVerdict>(Func<RecipeFacts, IEnumerable<TVerdict>> judge)
        where TVerdict : Verdict => OfEachAlone(facts.Recipes, judge, Known?.Recipes);

    private IEnumerable<TVerdict> OfEachAlone<TSubject, TVerdict>(
        IReadOnlyList<TSubject> subjects, Func<TSubject, IEnumerable<TVerdict>> judge, SilentSubjects? silent)
        where TVerdict : Verdict
    {
        for (var i = 0; i < subjects.Count; i++)
        {
            if (silent?.IsSilent(i, Known!.Value.Rule) == true)
            {
                continue;
            }

            var fires = false;
            foreach (var verdict in judge(subjects[i]))
            {
                fires |= verdict.Fires;
                yield return verdict;
            }

            if (!fires)
            {
                silent?.Learn(i, Known!.Value.Rule);
            }
        }
    }

    /// <summary>
    /// Another rule's context as it holds for a file, for a rule that leaves to its neighbour what that one reports; null where the shop
    /// has switched the neighbour off.
    /// </summary>
    /// <exception cref="KeyNotFoundException">No rule has this name.</exception>
    public RuleContext? Neighbour(string rule, string file)
    {
        var neighbour = RuleBook.Find(rule) ?? throw new KeyNotFoundException($"No rule is called '{rule}'.");
        Reach?.At(file);
        var tuning = TuningFor?.Invoke(file) ?? RuleTuning.Read(facts.Workspace.SettingsFor(file));
        return tuning.IsOff(neighbour) ? null
            : new RuleContext(facts, neighbour, tuning.OptionsOf(neighbour)) { TuningFor = TuningFor, Reach = Reach };
    }

    /// <summary>What may be advised to do with a stock, asked of the hazard gate.</summary>
    public VesselAdvice AdviceFor(StockFacts stock) => VesselAdvice.Of(stock, Facts.Workspace.Catalogue);

    /// <summary>The same of the tank of a recipe.</summary>
    public VesselAdvice AdviceFor(RecipeFacts recipe) => VesselAdvice.Of(recipe, Facts.Workspace.Catalogue);

    /// <summary>A finding whose level follows from its harm and how sure that is, whatever method found it.</summary>
    public Finding Find(Place place, string idPath, string message, Harm harm, Odds odds, Certainty? certainty = null) =>
        Find(place, idPath, new Lazy<string>(message), harm, odds, certainty);

    /// <inheritdoc cref="Find(Place, string, string, Harm, Odds, Certainty?)"/>
    /// <param name="message">For a message that takes long to find.</param>
    public Finding Find(Place place, string idPath, Lazy<string> message, Harm harm, Odds odds, Certainty? certainty = null) => new()
    {
        Rule = Descriptor,
        Level = LevelTable.Of(harm, odds),
        Certainty = certainty ?? Descriptor.Certainty,
        Place = place,
        IdPath = idPath,
        Told = message,
    };

    /// <inheritdoc cref="Find(Place, string, string, Harm, Odds, Certainty?)"/>
    public Finding Find(Place place, string message, Harm harm, Odds odds, Certainty? certainty = null) =>
        Find(place, IdPath.Of(Facts.Workspace, place), message, harm, odds, certainty);
}
