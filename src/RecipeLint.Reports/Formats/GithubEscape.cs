namespace RecipeLint.Reports.Formats;

/// <summary>
/// Text on its way into a workflow command of GitHub Actions ("::error file=a,line=1::message"): the runner takes back %25, %0D and %0A
/// everywhere, %3A and %2C in properties (actions/toolkit, packages/core, command.ts).
/// </summary>
public static class GithubEscape
{
    public static string Message(string text) => Printable.Show(text).Replace("%", "%25", StringComparison.Ordinal);

    public static string Property(string text) =>
        Message(text).Replace(":", "%3A", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal);
}
