using System.Text;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Workings;

namespace RecipeLint.Reports.Handbook;

/// <summary>A possible answer to "what is wrong?".</summary>
/// <param name="Rule">The rule that says it.</param>
/// <param name="IsRight">True where that rule speaks of the flawed files.</param>
public sealed record LearnChoice(string Rule, string Text, bool IsRight);

/// <summary>What became of the files of an exercise.</summary>
/// <param name="IsMended">Nothing is objected to and nothing that the plants need is gone.</param>
/// <param name="Says">What still stands in the way, one paragraph each; empty when mended.</param>
public sealed record LearnVerdict(bool IsMended, IReadOnlyList<string> Says);

/// <summary>One exercise of the first week as it is walked on a terminal. The answers are those of the engine.</summary>
public sealed class LearnExercise
{
    private const int OtherChoices = 3;

    private readonly Lesson _lesson;
    private readonly IReadOnlyList<string> _week;

    private LearnExercise(Lesson lesson, string name, IReadOnlyList<string> week)
    {
        _lesson = lesson;
        _week = week;
        Name = name;
    }

    /// <summary>The folder of the exercise, "1a-calcium-with-sulfate".</summary>
    public string Name { get; }

    public int Number => _lesson.Number;

    public string Title => _lesson.Title;

    /// <summary>Markdown.</summary>
    public string Bench => _lesson.Section("The bench");

    /// <summary>Markdown.</summary>
    public string Question => _lesson.Section("Question");

    /// <summary>Markdown.</summary>
    public string HowToMend => _lesson.Section("How to mend it");

    /// <summary>Markdown.</summary>
    public string Remember => _lesson.Section("Remember");

    /// <summary>The flawed files by path in the exercise's folder.</summary>
    public IReadOnlyList<(string Path, string Text)> Flawed => Texts(_lesson.Flawed);

    /// <summary>One way to mend them.</summary>
    public IReadOnlyList<(string Path, string Text)> Mended => Texts(_lesson.Mended);

    /// <summary>What the rule of the exercise says of the flawed files.</summary>
    public IReadOnlyList<string> Finding => [.. _lesson.Flawed.Of(Rule(_lesson.Rule)).Select(f => f.Finding.Message)];

    public static IReadOnlyList<LearnExercise> All()
    {
        var lessons = Lesson.All();
        var week = lessons.Select(l => l.Rule).ToList();
        return [.. lessons.Select(l => new LearnExercise(l, $"{l.Day}{(char)('a' + ((l.Number - 1) % 2))}-{l.Rule}", week))];
    }

    /// <summary>
    /// The right answer among three rules of the week that were asked as well and say nothing here; always in the same order.
    /// </summary>
    public IReadOnlyList<LearnChoice> Choices()
    {
        var speaking = _lesson.Flawed.Findings.Select(f => f.Finding.Rule.Name).ToHashSet(StringComparer.Ordinal);
        var own = _week.ToList().IndexOf(_lesson.Rule);
        var silent = Enumerable.Range(1, _week.Count - 1).Select(i => _week[(own + (3 * i)) % _week.Count])
            .Where(r => !speaking.Contains(r) && r != _lesson.Rule)
            .Distinct(StringComparer.Ordinal)
            .Take(OtherChoices)
            .Select(r => new LearnChoice(r, Rule(r).Title, false))
            .ToList();
        silent.Insert(own % (silent.Count + 1), new LearnChoice(_lesson.Rule, Rule(_lesson.Rule).Title, true));
        return silent;
    }

    /// <summary>Why a wrong answer is wrong, with the figures of the flawed files where the rule has any.</summary>
    public string WhyNot(LearnChoice choice)
    {
        var rule = RuleList.All.First(r => RuleBook.Of(r).Name == choice.Rule);
        var facts = Analyzer.Analyse(_lesson.Flawed.Workspace);
        var nearest = _lesson.Flawed.Workspace.Asked
            .SelectMany(file => RuleOnFile.Of(facts, rule, file).Workings)
            .MinBy(w => w.Distance);
        return nearest?.Prevented switch
        {
            TestStep test => $"It was looked at: {test.Check.What}? {nearest.Title}: {test.Left.Text}{Unit(test)} against "
                + $"{test.Right.Text}{Unit(test)}. No.",
            ConditionStep condition => $"It was looked at: {condition.Check.What}? No.",
            _ => "It was looked at, and there is nothing of the kind in these files.",
        };

        static string Unit(TestStep test) => test.Check.Unit.Length == 0 ? "" : " " + test.Check.Unit;
    }

    /// <summary>Judges files as a check would, alone in a folder.</summary>
    public LearnVerdict Judge(IReadOnlyList<(string Path, byte[] Bytes)> files)
    {
        if (files.Count == 0)
        {
            return new LearnVerdict(false, ["The folder of the exercise is empty."]);
        }

        var judged = new ShelfFolder(Name, files, new Dictionary<string, string>()).Judge();
        var says = judged.Findings.Where(f => f.Finding.Level >= Level.Warning).Select(f =>
            $"{f.Spot.File}:{f.Spot.Lines.Start.Line}: {Words.Of(f.Finding.Level)} {f.Finding.Rule.Id} {f.Finding.Rule.Name}: "
                + f.Finding.Message)
            .ToList();
        if (says.Count == 0)
        {
            var gone = Elements(_lesson.Mended).Except(Elements(judged), StringComparer.Ordinal).ToList();
            if (gone.Count > 0)
            {
                says.Add(
                    $"Nothing objects any more, but {Say.List(gone)} is gone as well: the plants need it. Mend it without leaving it out.");
            }
        }

        return new LearnVerdict(says.Count == 0, says);
    }

    /// <summary>What the stocks and recipes of a folder bring.</summary>
    private static IEnumerable<string> Elements(JudgedFolder folder)
    {
        var facts = Analyzer.Analyse(folder.Workspace);
        return facts.Stocks.SelectMany(s => NutrientKeys.Grams(ElementTotals.Sum(s.Additions.Select(a => a.Elements))))
            .Where(g => g.Grams > 0)
            .Select(g => g.Key)
            .Concat(facts.Recipes.SelectMany(r => r.Elements.Where(e => e.Value.Concentration.GramsPerLitre > 0).Select(e => e.Key)))
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal);
    }

    private static RuleDescriptor Rule(string name) => RuleBook.Find(name)!;

    private static IReadOnlyList<(string Path, string Text)> Texts(JudgedFolder folder) =>
        [.. folder.Folder.Files.Select(f => (f.Path, Encoding.UTF8.GetString(f.Bytes).ReplaceLineEndings("\n")))];
}
