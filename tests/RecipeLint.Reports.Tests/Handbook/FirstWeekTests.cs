using RecipeLint.Reports.Handbook;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Tests.Handbook;

/// <summary>The exercises do what they promise.</summary>
public sealed class FirstWeekTests
{
    private static readonly Lazy<IReadOnlyList<Lesson>> _lessons = new(Lesson.All);

    public static TheoryData<int> Numbers => [.. Enumerable.Range(1, 10)];

    [Fact]
    public void TenRulesOfMostFamiliesInFiveDays()
    {
        var lessons = _lessons.Value;
        Assert.Equal(Enumerable.Range(1, 10), lessons.Select(l => l.Number));
        Assert.Equal([1, 1, 2, 2, 3, 3, 4, 4, 5, 5], lessons.Select(l => l.Day));
        Assert.Equal(10, lessons.Select(l => l.Rule).Distinct().Count());
        Assert.Equal(Family.All.Count, lessons.Select(l => RuleBook.Find(l.Rule)!.Family).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void TheFlawedFilesRaiseTheRuleAndTheMendedOnesNone(int number)
    {
        var lesson = _lessons.Value[number - 1];
        Assert.Contains(lesson.Flawed.Findings, f => f.Finding.Rule.Name == lesson.Rule);
        Assert.True(lesson.Mended.Findings.Count == 0, string.Join('\n', lesson.Mended.Findings.Select(f => f.Finding.Message)));
        Assert.NotEmpty(lesson.Mended.Workspace.Asked);
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void EveryFileSaysThatItIsInvented(int number)
    {
        var lesson = _lessons.Value[number - 1];
        Assert.All(lesson.Flawed.Folder.Files.Concat(lesson.Mended.Folder.Files), f =>
            Assert.Contains("\"note\": \"Invented", System.Text.Encoding.UTF8.GetString(f.Bytes), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void ThePageAsksBeforeItTells(int number)
    {
        var lesson = _lessons.Value[number - 1];
        var exercise = Book.Pages[$"week/day-{lesson.Day}.html"].Descendants("section").Single(s => s.Attr("aria-labelledby") == lesson.Anchor);
        Assert.All(new[] { "The bench", "Question", "How to mend it", "Remember" }, h => Assert.NotEmpty(lesson.Section(h)));
        var answers = exercise.Elements("details").ToList();
        Assert.Equal(2, answers.Count);
        Assert.All(answers, a => Assert.Null(a.Attr("open")));
        Assert.Contains(answers[0].Descendants("a"), a => a.Value.EndsWith(lesson.Rule, StringComparison.Ordinal));
        Assert.NotEmpty(answers[0].Descendants("mark"));
        Assert.NotEmpty(answers[1].Descendants("ins"));
        var open = exercise.Elements().Where(e => e.Name != "details" && e.Attr("class") != "remember");
        Assert.DoesNotContain(open.SelectMany(e => e.DescendantsAndSelf()), e => e.Name == "mark" || e.Value.Contains(lesson.Rule, StringComparison.Ordinal));
    }
}
