using RecipeLint.Reports.Markup;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>The way in: search, what a person sees, and all rules by family.</summary>
internal static class IndexPage
{
    public static HandbookFile Make(Page page)
    {
        var links = page.Links;
        var rules = RuleBook.Descriptors;
        var main = Html.Of(
            $"""
            <div class="cover">
            <h1>The rule book</h1>
            <p class="lead">{rules.Length} things that go wrong between the recipe and the plant: what each one is, why it happens, and what to do.</p>
            <p>New here? <a class="go" href="{links.FirstWeek}">Start with your first week</a></p>
            </div>
            <section id="find" class="find" hidden="hidden" aria-labelledby="find-title">
            <h2 id="find-title">Find a rule</h2>
            <label for="query">A word from the bottle, the bag or the message</label>
            <input id="query" type="search" autocomplete="off" autocapitalize="none" spellcheck="false"/>
            <p class="hint">Try gypsum, rust, mould, P2O5 or RL0401.</p>
            <p id="found" role="status"></p>
            <ol id="results" class="rules"></ol>
            </section>
            <noscript><p class="hint">The search needs scripts. Everything is in the lists below; the browser's own search finds words in them.</p></noscript>
            <section class="signs" aria-labelledby="signs">
            <h2 id="signs">Start from what you see</h2>
            <p>A sign is a hint, not a verdict: several causes look alike. Let RecipeLint compute the file before you change anything.</p>
            {Html.Join(Sign.All.Select(s => OneSign(s, links)))}</section>
            <nav class="families" aria-labelledby="families">
            <h2 id="families">All rules by family</h2>
            <ul>
            {Html.Join(Family.All.Select(f => Html.Of($"<li><a class=\"{f.Name}\" href=\"#{f.Name}\">{f.Title}</a></li>\n")))}</ul>
            </nav>
            {Html.Join(Family.All.Select(f => OneFamily(f, rules.Where(r => r.Family == f.Name), links)))}
            """);
        return page.With(main, "find-words.js", "find.js");
    }

    /// <summary>A rule as a line of a list.</summary>
    public static Html Entry(RuleDescriptor rule, PageLinks links) => Html.Of(
        $"""
        <li><a href="{links.Rule(rule.Name)}"><b>{rule.Name}</b> <span class="meta">{rule.Id} {FindingCard.Stamp(rule.Level)}</span> <span class="title">{ChemicalText.Of(rule.Title)}</span></a></li>

        """);

    private static Html OneSign(Sign sign, PageLinks links)
    {
        var danger = sign.Danger is null ? Html.Empty : Html.Of($"<p class=\"danger\"><strong>First:</strong> {sign.Danger}</p>\n");
        return Html.Of(
            $"""
            <details class="sign">
            <summary>{sign.Seen}</summary>
            {danger}<ul class="rules">
            {Html.Join(sign.Rules.Select(n => Entry(RuleBook.Find(n)!, links)))}</ul>
            </details>

            """);
    }

    private static Html OneFamily(Family family, IEnumerable<RuleDescriptor> rules, PageLinks links) => Html.Of(
        $"""
        <section class="family {family.Name}" aria-labelledby="{family.Name}">
        <h2 id="{family.Name}">{family.Title}</h2>
        <p>{family.Blurb} <a href="{links.Lesson(family.Name)}">The lesson, with a picture</a></p>
        <ul class="rules">
        {Html.Join(rules.Select(r => Entry(r, links)))}</ul>
        </section>

        """);
}
