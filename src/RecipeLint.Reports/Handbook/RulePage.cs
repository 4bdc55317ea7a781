using System.Globalization;
using RecipeLint.Reports.Markup;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>The card of one rule.</summary>
internal static class RulePage
{
    public static HandbookFile Make(Page page, RuleDescriptor rule, RuleShelf shelf, IReadOnlyList<Lesson> lessons)
    {
        var links = page.Links;
        var text = new MarkdownHtml(name => name != rule.Name && RuleBook.Find(name) is { } other ? links.Rule(other.Name) : null);
        var examples = shelf.Examples(rule);
        var failing = Html.Join(examples.Where(e => e.Folder.IsFailing).Select(e => Failing(e, rule, links)));
        var passing = Html.Join(examples.Where(e => !e.Folder.IsFailing).Select(e => Passing(e, links)));
        var main = Html.Of(
            $"""
            <article class="card">
            <header class="tab">
            <p class="number"><a href="{links.Index}#{rule.Family}">{Family.Of(rule.Family).Title}</a> <span>{rule.Id}</span></p>
            <h1>{ChemicalText.Of(rule.Title.TrimEnd('.'))}</h1>
            <p class="says">{FindingCard.Stamp(rule.Level)} <code>{rule.Name}</code></p>
            </header>
            {Glance(rule, links, lessons)}{Section("finds", "What it finds", text.Render(rule.Section("What it finds")))}{Section("do", "What to do", text.Render(rule.Section("What to do")))}<section class="caution" aria-labelledby="cautions">
            <h2 id="cautions">Cautions</h2>
            {text.Render(rule.Section("Cautions"))}</section>
            {Section("why", "Why it matters", text.Render(rule.Section("Why it matters")))}{Broad("fails", "Where it speaks", Html.Of($"<p class=\"lead\">In short:</p>\n{text.Render(rule.Section("Failing"))}{failing}"))}{Broad("passes", "Where it is silent", Html.Of($"<p class=\"lead\">In short:</p>\n{text.Render(rule.Section("Passing"))}{passing}"))}{Section("options", "Options", Options(rule, text))}{Section("sources", "Sources", Sources(rule))}{Section("see", "See also", SeeAlso(rule, shelf, links))}</article>

            """);
        return page.With(main);
    }

    private static Html Section(string id, string title, Html body) =>
        Html.Of($"<section aria-labelledby=\"{id}\">\n<h2 id=\"{id}\">{title}</h2>\n{body}</section>\n");

    /// <summary>A section with files in it, which need the whole width of the card.</summary>
    private static Html Broad(string id, string title, Html body) =>
        Html.Of($"<section class=\"broad\" aria-labelledby=\"{id}\">\n<h2 id=\"{id}\">{title}</h2>\n{body}</section>\n");

    private static Html Glance(RuleDescriptor rule, PageLinks links, IReadOnlyList<Lesson> lessons)
    {
        var exercise = lessons.FirstOrDefault(l => l.Rule == rule.Name) is { } lesson
            ? Html.Of($"<div><dt>Practise it</dt><dd><a href=\"{links.Day(lesson.Day)}#{lesson.Anchor}\">Exercise {lesson.Number} of the first week</a></dd></div>\n")
            : Html.Empty;
        return Html.Of(
            $"""
            <aside class="glance" aria-label="At a glance">
            <dl>
            <div><dt>How grave: {Words.Of(rule.Level)}</dt><dd>{Levels.Meaning(rule.Level)}</dd></div>
            <div><dt>How sure: {Words.Of(rule.Certainty)}</dt><dd>{Levels.Meaning(rule.Certainty)}</dd></div>
            <div><dt>Looks at</dt><dd>{Levels.Meaning(rule.Scope)}</dd></div>
            {exercise}</dl>
            </aside>

            """);
    }

    private static Html Failing(JudgedFolder example, RuleDescriptor rule, PageLinks links)
    {
        var own = example.Of(rule).ToList();
        var others = example.NotOf(rule).Select(f => f.Finding.Rule).DistinctBy(r => r.Name).ToList();
        var also = others.Count == 0
            ? Html.Empty
            : Html.Of($"<div class=\"others\"><p>Other rules speak here too:</p>\n<ul>\n{Html.Join(others.Select(o => Other(o, example.Folder, links)))}</ul></div>\n");
        return Html.Of(
            $"""
            <div class="example">
            <h3 id="{example.Folder.Name}">{ChemicalText.Of(example.Folder.Title)}</h3>
            {Files(example, own)}<div class="answer">
            <p class="lead">RecipeLint says:</p>
            {Html.Join(own.Select(f => FindingCard.Of(f, links)))}</div>
            {also}</div>

            """);
    }

    private static Html Other(RuleDescriptor rule, ShelfFolder folder, PageLinks links) =>
        Html.Of($"<li><a href=\"{links.Rule(rule.Name)}\">{rule.Name}</a>: {ChemicalText.Of(folder.Reasons.GetValueOrDefault(rule.Name, rule.Title))}</li>\n");

    private static Html Passing(JudgedFolder example, PageLinks links)
    {
        var others = example.Findings.Select(f => f.Finding.Rule).DistinctBy(r => r.Name).ToList();
        var said = others.Count == 0
            ? Html.Of($"<p class=\"silent\">No rule objects.</p>\n")
            : Html.Of($"<p class=\"silent\">This rule is silent. Others speak: {Html.Join(Html.Of($", "), others.Select(o => Html.Of($"<a href=\"{links.Rule(o.Name)}\">{o.Name}</a>")))}.</p>\n");
        return Html.Of(
            $"""
            <details class="example" id="{example.Folder.Name}">
            <summary>{ChemicalText.Of(example.Folder.Title)}</summary>
            {Files(example, [])}{said}</details>

            """);
    }

    /// <summary>The files of a folder as figures, with the places of findings marked, or what is new against an earlier state.</summary>
    internal static Html Files(JudgedFolder example, IReadOnlyList<PlacedFinding> marked, JudgedFolder? before = null) =>
        Html.Join(example.Folder.Files.Where(f => example.Workspace.Sources.ContainsKey(f.Path)).Select(f =>
        {
            var source = example.Workspace.Sources[f.Path];
            var old = before?.Workspace.Sources.GetValueOrDefault(f.Path);
            return MarkedFile.Figure(
                source, marked, old is null ? new HashSet<int>() : AddedLines.Between(old, source), before is not null && old is null);
        }));

    private static Html Options(RuleDescriptor rule, MarkdownHtml text)
    {
        if (rule.Options.Count == 0)
        {
            return text.Render(rule.Section("Options"));
        }

        var rows = Html.Join(rule.Options.Select(o => Html.Of(
            $"""
            <div>
            <dt><code>{o.Name}</code> <span class="default">{Value(o)}</span></dt>
            <dd><p>{ChemicalText.Of(o.Description)}</p><p class="source">Default from: {ChemicalText.Of(o.Source.TrimEnd('.'))}.</p></dd>
            </div>

            """)));
        return Html.Of(
            $"""
            <dl class="options">
            {rows}</dl>
            <p>To change one, write it into <code>recipelint.json</code> with a value of your own:</p>
            {CodeBlock.Of(SettingsSnippet(rule))}
            """);
    }

    /// <summary>Settings that give the first option the value it has anyway; three lines.</summary>
    internal static string SettingsSnippet(RuleDescriptor rule)
    {
        var option = rule.Options[0];
        var value = option.Unit.Length == 0 && IsBare(option.Default) ? option.Default : $"\"{Value(option)}\"";
        return $"{{ \"rules\": {{\n  \"{rule.Name}\": {{ \"level\": \"{Words.Of(rule.Level)}\", \"{option.Name}\": {value} }}\n}} }}";
    }

    private static bool IsBare(string text) =>
        text is "true" or "false" || double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _);

    private static string Value(RuleOption option) => option.Unit.Length == 0 ? option.Default : $"{option.Default} {option.Unit}";

    private static Html Sources(RuleDescriptor rule) =>
        Html.Of($"<ul class=\"sources\">\n{Html.Join(rule.Sources.Select(s => Html.Of($"<li>{ChemicalText.Of(s.Text)} <span class=\"confidence\">{Levels.Confidence(s.Confidence)}</span></li>\n")))}</ul>\n");

    private static Html SeeAlso(RuleDescriptor rule, RuleShelf shelf, PageLinks links)
    {
        var related = shelf.Related(rule).Select(n => RuleBook.Find(n)!).ToList();
        var family = RuleBook.Descriptors.Where(d => d.Family == rule.Family).ToList();
        var at = family.IndexOf(rule);
        var steps = new List<Html>();
        if (at > 0)
        {
            steps.Add(
                Html.Of($"<a rel=\"prev\" href=\"{links.Rule(family[at - 1].Name)}\"><span>Before</span> {family[at - 1].Name}</a>\n"));
        }

        if (at + 1 < family.Count)
        {
            steps.Add(
                Html.Of($"<a rel=\"next\" href=\"{links.Rule(family[at + 1].Name)}\"><span>After</span> {family[at + 1].Name}</a>\n"));
        }

        var list = related.Count == 0
            ? Html.Empty
            : Html.Of($"<ul class=\"rules\">\n{Html.Join(related.Select(r => IndexPage.Entry(r, links)))}</ul>\n");
        return Html.Of($"{list}<nav class=\"steps\" aria-label=\"Rules of this family\">\n{Html.Join(steps)}</nav>\n");
    }
}
