using RecipeLint.Analysis;

namespace RecipeLint.Shell;

/// <summary>Defaults that entered a verdict, gathered so that twenty stocks do not say the same thing twenty times.</summary>
internal sealed class Assumed
{
    /// <summary>The kind that each product has a text of its own for.</summary>
    private const string OfAProduct = "substance";

    private readonly Dictionary<string, Kind> _kinds = new(StringComparer.Ordinal);

    /// <summary>Those of the files that were asked about.</summary>
    public static Assumed Of(Facts facts)
    {
        var gathered = new Assumed();
        foreach (var stock in facts.Stocks)
        {
            gathered.Add(facts, stock.Stock.File, 0, stock.Assumptions);
        }

        foreach (var recipe in facts.Recipes)
        {
            gathered.Add(facts, recipe.Recipe.File, 1, recipe.Assumptions);
        }

        return gathered;
    }

    /// <summary>Those of several parts of a run.</summary>
    public static Assumed Together(IEnumerable<Assumed> parts)
    {
        var all = new Assumed();
        foreach (var (key, kind) in parts.SelectMany(p => p._kinds))
        {
            all._kinds[key] = all._kinds.TryGetValue(key, out var known)
                ? (known.First.CompareTo(kind.First) <= 0 ? known : kind) with { Files = known.Files + kind.Files }
                : kind;
        }

        return all;
    }

    /// <summary>
    /// One line each with the file it is about, stocks before recipes and in the order of the files; a kind that several files share is
    /// told once with how many they are.
    /// </summary>
    public IReadOnlyList<string> Lines() =>
    [
        .. _kinds.Values.OrderBy(k => k.First).Select(k => k.Files == 1
            ? $"{k.First.File}: {k.Text}"
            : $"{k.First.File}: {k.Text.TrimEnd('.')} (and alike in {k.Files - 1} more file{(k.Files == 2 ? "" : "s")})."),
    ];

    private void Add(Facts facts, string file, int rank, IReadOnlyList<Assumption> assumptions)
    {
        if (!facts.Workspace.Asked.Contains(file))
        {
            return;
        }

        for (var i = 0; i < assumptions.Count; i++)
        {
            var (kind, text, _) = assumptions[i];

            // What is assumed of one product says nothing of another: each label is told in a line of its own.
            var key = kind == OfAProduct ? text : kind;
            if (!_kinds.TryGetValue(key, out var known))
            {
                _kinds.Add(key, new Kind(new Spot(rank, file, i), text, 1, file));
            }
            else if (known.Last != file)
            {
                _kinds[key] = known with { Files = known.Files + 1, Last = file };
            }
        }
    }

    /// <summary>Where it is assumed first.</summary>
    private readonly record struct Spot(int Rank, string File, int Index) : IComparable<Spot>
    {
        public int CompareTo(Spot other)
        {
            var result = Rank.CompareTo(other.Rank);
            result = result != 0 ? result : string.CompareOrdinal(File, other.File);
            return result != 0 ? result : Index.CompareTo(other.Index);
        }
    }

    private sealed record Kind(Spot First, string Text, int Files, string Last);
}
