using RecipeLint.Reports.Markup;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>Teaches the parts of a finding on a real one.</summary>
internal static class ReadingPage
{
    public static HandbookFile Make(Page page, Lesson lesson, string toolVersion)
    {
        var levels = Html.Join(new[] { Level.Error, Level.Warning, Level.Note }.Select(l =>
            Html.Of($"<div><dt>{FindingCard.Stamp(l)}</dt><dd>{Levels.Meaning(l)}</dd></div>\n")));
        var certainties = Html.Join(new[] { Certainty.Computed, Certainty.Estimate, Certainty.Practice }.Select(c =>
            Html.Of($"<div><dt>{Words.Of(c)}</dt><dd>{Levels.Meaning(c)}</dd></div>\n")));
        var main = Html.Of(
            $"""
            <article class="card">
            <header class="tab"><p class="number">Guide</p>
            <h1>Reading a finding</h1>
            <p class="lead">A finding says what goes wrong and by how much, why, and what to do. This one comes from the first exercise.</p></header>
            {CodeBlock.Of(ReportOf(lesson, toolVersion))}<section aria-labelledby="parts">
            <h2 id="parts">Its parts</h2>
            <ol>
            <li><strong>Where.</strong> File, line and column of the smallest place that has to change.</li>
            <li><strong>How grave.</strong> Error, warning or note.</li>
            <li><strong>Which rule.</strong> Its number and its name. Look the name up in this book, or run <code>recipelint explain {lesson.Rule}</code>. How sure it is follows in brackets where it is not plain arithmetic.</li>
            <li><strong>What, why, what to do.</strong> Two or three sentences with the numbers of your file.</li>
            <li><strong>The lines.</strong> The line with <code>&gt;</code> and <code>^^^</code> is the one to change. Lines with <code>---</code> have a part in it.</li>
            </ol>
            <p>In this book the same lines are printed with the place <mark>marked</mark> and the others <span class="also">underlined</span>.</p>
            </section>
            <section aria-labelledby="levels">
            <h2 id="levels">How grave</h2>
            <dl class="words">
            {levels}</dl>
            </section>
            <section aria-labelledby="certainty">
            <h2 id="certainty">How sure</h2>
            <dl class="words">
            {certainties}</dl>
            <p>A verdict that is an estimate or a practice is a warning at most, except where it protects people.</p>
            </section>
            <section aria-labelledby="then">
            <h2 id="then">What to do with it</h2>
            <ol>
            <li>Start at the top of the file and at the errors. One slip often raises several findings.</li>
            <li>Change one thing, save, check again.</li>
            <li>If you know better, write the finding into <code>suppressions</code> of <code>recipelint.json</code> with your reason. It comes back when the number gets worse.</li>
            </ol>
            </section>
            <section class="caution" aria-labelledby="silence">
            <h2 id="silence">Silence is no promise</h2>
            <p>RecipeLint knows what stands in the file. It does not know a mislabelled bag, a dirty jug or a wrong turn of the valve. Mix a small bottle first, and watch it for a week.</p>
            </section>
            </article>

            """);
        return page.With(main);
    }

    private static string ReportOf(Lesson lesson, string toolVersion)
    {
        var writer = new StringWriter { NewLine = "\n" };
        var report = new Report
        {
            Result = new LintResult { Findings = [.. lesson.Flawed.Findings.Select(f => f.Finding)], Suppressed = [], Faults = [] },
            Sources = lesson.Flawed.Workspace.Sources,
            FilesChecked = lesson.Flawed.Folder.Files.Count,
            ToolVersion = toolVersion,
        };
        TextReport.Write(writer, report, new TextOptions(Width: 80));
        return writer.ToString();
    }
}
