using RecipeLint.Reports.Markup;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>The learning path: five days, two exercises a day, ten rules.</summary>
internal static class WeekPages
{
    private static readonly (string Name, string Subject)[] _days =
    [
        ("Monday", "What must not meet, and what the cold does"),
        ("Tuesday", "Small weights and other people's labels"),
        ("Wednesday", "Keeping iron in solution"),
        ("Thursday", "Names, and what lives in a bottle"),
        ("Friday", "The water, and you"),
    ];

    public static string TitleOf(int day) => _days[day - 1].Name;

    public static HandbookFile Overview(Page page, IReadOnlyList<Lesson> lessons)
    {
        var days = Html.Join(lessons.GroupBy(l => l.Day).Select(day => Html.Of(
            $"""
            <li><h2><a href="{page.Links.Day(day.Key)}">{TitleOf(day.Key)}</a></h2>
            <p>{_days[day.Key - 1].Subject}.</p>
            <ul>
            {Html.Join(day.Select(l => Html.Of($"<li><a href=\"{page.Links.Day(l.Day)}#{l.Anchor}\">{l.Number}. {l.Title}</a></li>\n")))}</ul></li>

            """)));
        var main = Html.Of(
            $"""
            <article class="card">
            <header class="tab"><p class="number">Learning path</p>
            <h1>Your first week</h1>
            <p class="lead">Ten rules in five days, two exercises a day. Each takes a quarter of an hour, a pencil, and no chemistry degree.</p></header>
            <section aria-labelledby="how">
            <h2 id="how">How to work</h2>
            <ol>
            <li>Read what stands on the bench and the file below it. The steps of a stock are in the order they are done.</li>
            <li>Answer the question on paper before you open anything.</li>
            <li>Open what RecipeLint says. The marked place is the one to change.</li>
            <li>Mend the file in your head, then open the mended one. New lines are underlined.</li>
            </ol>
            <p>Want to try it for real? Type the file into a folder of its own and run <code>recipelint check</code> on that folder.</p>
            </section>
            <section class="caution" aria-labelledby="cautions">
            <h2 id="cautions">On paper only</h2>
            <p>Every file here is invented and half of them are wrong on purpose. Mix none of them. When you do mix, read the supplier's safety data sheet first, wear goggles and gloves, pour acid into water, keep food away, and have somebody with experience beside you the first time.</p>
            </section>
            <ol class="days">
            {days}</ol>
            </article>

            """);
        return page.With(main);
    }

    public static HandbookFile Day(Page page, int day, IReadOnlyList<Lesson> lessons)
    {
        var links = page.Links;
        var text = new MarkdownHtml(name => RuleBook.Find(name) is { } rule ? links.Rule(rule.Name) : null);
        var steps = new List<Html>();
        if (day > 1)
        {
            steps.Add(Html.Of($"<a rel=\"prev\" href=\"{links.Day(day - 1)}\"><span>Before</span> {TitleOf(day - 1)}</a>\n"));
        }

        steps.Add(day < _days.Length
            ? Html.Of($"<a rel=\"next\" href=\"{links.Day(day + 1)}\"><span>After</span> {TitleOf(day + 1)}</a>\n")
            : Html.Of($"<a rel=\"next\" href=\"{links.Index}\"><span>Done</span> All rules</a>\n"));
        var main = Html.Of(
            $"""
            <article class="card">
            <header class="tab"><p class="number"><a href="{links.FirstWeek}">Your first week</a> <span>Day {day} of {_days.Length}</span></p>
            <h1>{TitleOf(day)}</h1>
            <p class="lead">{_days[day - 1].Subject}.</p></header>
            {Html.Join(lessons.Select(l => Exercise(l, links, text)))}<nav class="steps" aria-label="Days">
            {Html.Join(steps)}</nav>
            </article>

            """);
        return page.With(main);
    }

    private static Html Exercise(Lesson lesson, PageLinks links, MarkdownHtml text)
    {
        var rule = RuleBook.Find(lesson.Rule)!;
        var findings = lesson.Flawed.Of(rule).Concat(lesson.Flawed.NotOf(rule)).ToList();
        return Html.Of(
            $"""
            <section class="exercise" aria-labelledby="{lesson.Anchor}">
            <h2 id="{lesson.Anchor}">{lesson.Number}. {lesson.Title}</h2>
            {text.Render(lesson.Section("The bench"))}<p class="invented">Invented, and wrong on purpose:</p>
            {RulePage.Files(lesson.Flawed, [])}<div class="question">
            <h3>Question</h3>
            {text.Render(lesson.Section("Question"))}</div>
            <details>
            <summary>What RecipeLint says</summary>
            {RulePage.Files(lesson.Flawed, [.. lesson.Flawed.Of(rule)])}<div class="answer">
            {Html.Join(findings.Select(f => FindingCard.Of(f, links)))}</div>
            </details>
            <details>
            <summary>How to mend it</summary>
            {text.Render(lesson.Section("How to mend it"))}{RulePage.Files(lesson.Mended, [], lesson.Flawed)}<p class="silent">RecipeLint checked the mended files: no rule objects.</p>
            <div class="remember">
            <h3>Remember</h3>
            {text.Render(lesson.Section("Remember"))}</div>
            <p>More on the card of <a href="{links.Rule(rule.Name)}">{rule.Name}</a>.</p>
            </details>
            </section>

            """);
    }
}
