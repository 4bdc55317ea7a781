using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>
/// The rule book as static pages. The findings on them are those of the engine, computed while the pages are made; the same program always
/// makes the same bytes.
/// </summary>
public static class RuleHandbook
{
    /// <summary>
    /// The exercises of the first week as files to change: for each a folder with the bench and the question, the flawed files and the
    /// mended ones.
    /// </summary>
    public static IReadOnlyList<HandbookFile> Exercises() =>
        [.. EmbeddedText.Names(Lesson.Root).Select(n => new HandbookFile(n[Lesson.Root.Length..], EmbeddedText.Read(n)))];

    /// <summary>The files of the lessons on the families, to change and to draw again.</summary>
    public static IReadOnlyList<HandbookFile> Lessons() =>
    [
        .. EmbeddedText.Names(FamilyLesson.Root)
            .Select(n => new HandbookFile("lessons/" + n[FamilyLesson.Root.Length..], EmbeddedText.Read(n))),
    ];

    /// <summary>All files of the handbook, sorted by path.</summary>
    /// <param name="toolVersion">As in "0.1.0".</param>
    public static IReadOnlyList<HandbookFile> Make(string toolVersion)
    {
        var shelf = RuleShelf.Judge(RuleBook.Descriptors);
        var lessons = Lesson.All();
        List<HandbookFile> files =
        [
            new("handbook.css", EmbeddedText.Read("handbook/handbook.css") + EmbeddedText.Read("pages/report.css")),
            new("find.js", EmbeddedText.Read("handbook/find.js")),
            new("find-words.js", FindWords.Of(RuleBook.Descriptors)),
            IndexPage.Make(new Page("index.html", "RecipeLint rule book", "index", toolVersion)),
            ReadingPage.Make(new Page("reading-a-finding.html", "Reading a finding", "plain", toolVersion), lessons[0], toolVersion),
            FilesPage.Make(new Page("files-and-units.html", "Files and units", "plain", toolVersion)),
            WeekPages.Overview(new Page("first-week.html", "Your first week", "week", toolVersion), lessons),
            .. lessons.GroupBy(l => l.Day).Select(day =>
                WeekPages.Day(new Page($"week/day-{day.Key}.html", WeekPages.TitleOf(day.Key), "week", toolVersion), day.Key, [.. day])),
            .. FamilyLesson.All().Select(l =>
                l.Make(new Page($"lessons/{l.Family.Name}.html", l.Title, $"lesson {l.Family.Name}", toolVersion))),
            .. RuleBook.Descriptors.Select(rule =>
                RulePage.Make(new Page(
                    $"rules/{rule.Name}.html", $"{rule.Id} {rule.Name}", $"rule {rule.Family}", toolVersion), rule, shelf, lessons)),
        ];
        return [.. files.OrderBy(f => f.Path, StringComparer.Ordinal)];
    }
}
