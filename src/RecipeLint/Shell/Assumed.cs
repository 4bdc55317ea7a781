using RecipeLint.Analysis;

namespace RecipeLint.Shell;

/// <summary>Defaults that entered a verdict, gathered so that twenty stocks do not say the same thing twenty times.</summary>
internal static class Assumed
{
    /// <summary>One line each with the file it is about, in the order of the files; a kind that several files share is told once with how many they are.</summary>
    public static IReadOnlyList<string> Lines(Facts facts)
    {
        var asked = facts.Workspace.Asked;
        var all = facts.Stocks.Where(s => asked.Contains(s.Stock.File)).SelectMany(s => s.Assumptions.Select(a => (s.Stock.File, Assumption: a)))
            .Concat(facts.Recipes.Where(r => asked.Contains(r.Recipe.File)).SelectMany(r => r.Assumptions.Select(a => (r.Recipe.File, Assumption: a))));
        return
        [
            .. all.GroupBy(a => a.Assumption.Key, StringComparer.Ordinal).Select(kind =>
            {
                var files = kind.Select(k => k.File).Distinct(StringComparer.Ordinal).ToList();
                var text = kind.First().Assumption.Text;
                return files.Count == 1
                    ? $"{files[0]}: {text}"
                    : $"{files[0]}: {text.TrimEnd('.')} (and alike in {files.Count - 1} more file{(files.Count == 2 ? "" : "s")}).";
            }),
        ];
    }
}
