using RecipeLint.Reports.Markup;
using RecipeLint.Reports.Pages;

namespace RecipeLint.Reports.Labels;

/// <summary>Several labels on sheets for a printer, at their true size.</summary>
public static class LabelSheet
{
    /// <param name="label">The drawing of one.</param>
    /// <param name="copies">How many.</param>
    public static string Of(string label, BottleLabel what, LabelSize size, int copies, string toolVersion)
    {
        var each = Html.Of($"<li>{Html.Drawn(label)}</li>\n");
        var main = Html.Of(
            $"""
            <h1 class="no-print">Labels of {what.Name}, {size.ToString()} mm</h1>
            <p class="no-print">Print at true size ("100 %") and without margins. {what.Source}</p>
            <ul class="labels">
            {Html.Join(Enumerable.Repeat(each, copies))}</ul>

            """);
        return new ReportFrame($"Labels of {what.Name}", null, toolVersion).With(main, moreStyle: "pages/labels.css");
    }
}
