namespace RecipeLint.Reports.Markup;

/// <summary>Paths on a page: they may break behind a slash and before a point, and so never in the middle of a word on a phone.</summary>
internal static class PathText
{
    /// <summary>True for a text that is the path of one of our files and nothing else.</summary>
    public static bool Is(string text) =>
        text.EndsWith(".json", StringComparison.OrdinalIgnoreCase) && !text.Contains(' ', StringComparison.Ordinal);

    public static Html Of(string path) => Html.Join(
        Html.Of($"/<wbr/>"),
        path.Split('/').Select(part => Html.Join(Html.Of($"<wbr/>."), part.Split('.').Select(Html.Text))));
}
