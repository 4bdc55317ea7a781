using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Fields;

/// <summary>The words for a crop profile that is not known.</summary>
internal static class ProfileNames
{
    private const int Shown = 8;

    public static void Report(Located<string> name, IReadOnlyCollection<string> known, FieldReader fields)
    {
        var near = Spelling.Nearest(name.Value, known);
        IReadOnlyList<string> offered = near.Count > 0 ? near : [.. known.Order(StringComparer.Ordinal).Take(Shown)];
        var write = near.Count > 0
            ? $"{Wording.DidYouMean(near).TrimStart()} Write that"
            : $"Write one such as {Wording.Join([.. offered.Select(n => $"'{n}'")], "or")}";
        fields.Report(new Problem(
            ProblemKind.UnknownProfile,
            name.Place,
            $"'{Wording.Shorten(name.Value)}' is no crop profile known here. {write}, or describe yours in a *.profile.json.")
        {
            Suggestions = near,
        });
    }
}
