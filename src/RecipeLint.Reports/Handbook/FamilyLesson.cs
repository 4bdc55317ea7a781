using RecipeLint.Analysis.Workspaces;
using RecipeLint.Reports.Markup;
using RecipeLint.Reports.Pictures;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>One page on a family of rules: what it is about, a file to change, and a picture that is computed from that file.</summary>
/// <param name="Text">Markdown: "What it is about", "Look at the picture", "Try it", "Remember".</param>
internal sealed record FamilyLesson(Family Family, string Text, JudgedFolder Folder, IReadOnlyList<Picture> Pictures)
{
    /// <summary>Where the lessons are embedded.</summary>
    public const string Root = "handbook/families/";

    private const string TextName = "lesson.md";

    public string Title => Text.Split('\n')[0].TrimStart('#').Trim();

    /// <summary>One for each family, in the order of the families.</summary>
    public static IReadOnlyList<FamilyLesson> All() => [.. Family.All.AsParallel().AsOrdered().Select(Of)];

    private static FamilyLesson Of(Family family)
    {
        var prefix = $"{Root}{family.Name}/";
        var files = EmbeddedText.Names(prefix).Where(n => !n.EndsWith('/' + TextName, StringComparison.Ordinal))
            .Select(n => (n[prefix.Length..], EmbeddedText.Bytes(n)))
            .ToList();
        var folder = new ShelfFolder(family.Name, files, new Dictionary<string, string>()).Judge();
        return new FamilyLesson(
            family, EmbeddedText.Read(prefix + TextName), folder, FamilyPictures.Of(family.Name, Analyzer.Analyse(folder.Workspace)));
    }

    public HandbookFile Make(Page page)
    {
        var links = page.Links;
        var text = new MarkdownHtml(name => RuleBook.Find(name) is { } rule ? links.Rule(rule.Name) : null);
        var rules = RuleBook.Descriptors.Where(r => r.Family == Family.Name);
        var main = Html.Of(
            $"""
            <article class="card">
            <header class="tab"><p class="number"><a href="{links.Index}#{Family.Name}">{Family.Title}</a> <span>Lesson</span></p>
            <h1>{Title}</h1>
            <p class="lead">{Family.Blurb}</p></header>
            {Section("about", "What it is about", text)}<section class="broad" aria-labelledby="file">
            <h2 id="file">The file</h2>
            <p class="invented">Invented; never mix it:</p>
            {RulePage.Files(Folder, Folder.Findings)}</section>
            <section class="broad" aria-labelledby="picture">
            <h2 id="picture">The picture</h2>
            {text.Render(RuleDescriptor.SectionOf(Text, "Look at the picture"))}{Html.Join(Pictures.Select(PictureFigure.Of))}</section>
            <section class="broad" aria-labelledby="says">
            <h2 id="says">What RecipeLint says of it</h2>
            {Says(links)}</section>
            {Section("try", "Try it", text)}<section aria-labelledby="how">
            <h2 id="how">With your own hands</h2>
            <p><code>recipelint handbook --exercises FOLDER</code> writes this file into <code>FOLDER/lessons/{Family.Name}</code>. Change it, then draw its page again with <code>recipelint report FOLDER/lessons/{Family.Name} -o page.html</code>.</p>
            </section>
            <div class="remember">
            {Section("remember", "Remember", text)}</div>
            <section aria-labelledby="rules">
            <h2 id="rules">The rules of this family</h2>
            <ul class="rules">
            {Html.Join(rules.Select(r => IndexPage.Entry(r, links)))}</ul>
            </section>
            </article>

            """);
        return page.With(main);
    }

    private Html Section(string id, string heading, MarkdownHtml text) => Html.Of(
        $"<section aria-labelledby=\"{id}\">\n<h2 id=\"{id}\">{heading}</h2>\n{text.Render(RuleDescriptor.SectionOf(Text, heading))}</section>\n");

    private Html Says(PageLinks links) => Folder.Findings.Count == 0
        ? Html.Of($"<p class=\"silent\">No rule objects.</p>\n")
        : Html.Join(Folder.Findings.Select(f => FindingCard.Of(f, links)));
}
