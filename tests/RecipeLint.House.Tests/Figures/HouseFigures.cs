using System.Globalization;
using RecipeLint.House.Tests.Reading;

namespace RecipeLint.House.Tests.Figures;

/// <summary>One figure of the house.</summary>
/// <param name="What">What is counted, in words; the key of the tables.</param>
/// <param name="Count">The count; the smaller the better where it is an aim.</param>
/// <param name="Detail">The largest or first of what was counted, for the table.</param>
/// <param name="Places">Every place that counts, for whoever has to mend it.</param>
internal sealed record Figure(string What, int Count, string Detail, IReadOnlyList<string> Places);

/// <summary>All figures of a checkout, counted the same way for every checkout.</summary>
internal static class HouseFigures
{
    public const string LargestClass = "members of the largest class";

    public const string LongMethods = "methods over 60 lines";

    public const string Circles = "folders that depend on each other in circles";

    public const string LongLines = "lines over the declared length";

    public const string DirectSolver = "direct calls of the solver outside the rooms of equilibrium";

    public const string ForeignRules = "names of foreign rules as strings";

    /// <summary>What the house aims at; a figure without an aim here is only shown.</summary>
    public static IReadOnlyDictionary<string, int> Aims { get; } = new Dictionary<string, int>(StringComparer.Ordinal)
    {
        [LargestClass] = 39,
        [LongMethods] = 0,
        [Circles] = 0,
        [LongLines] = 0,
        [ForeignRules] = 0,
        [DirectSolver] = 0,
    };

    private const int LongestMethod = 60;

    public static IReadOnlyList<Figure> Of(Checkout house) =>
        [
            .. Size(house), .. Rooms(house), .. Strings(house),
            Of(DirectSolver, Uses.DirectSolverCalls(house)), Of("places that put the one question to the equilibrium", Uses.Questions(house)),
        ];

    private static IEnumerable<Figure> Size(Checkout house)
    {
        var files = Sizes.Files(house);
        yield return new Figure("files", files.Count, "", []);
        yield return new Figure("lines", files.Sum(f => f.Lines), "", []);
        yield return new Figure("lines of the median file", files[files.Count / 2].Lines, "", []);
        yield return Largest("lines of the longest file", [.. files.Select(f => (Last(f.What), f.Lines))]);
        var methods = Sizes.Methods(house);
        yield return Largest("lines of the longest method", [.. methods.Select(m => (Last(m.What), m.Lines))]);
        yield return Of(LongMethods, [.. methods.Where(m => m.Lines > LongestMethod).Select(m => $"{m.What}: {m.Lines}")], 0);
        var classes = Sizes.Classes(house);
        yield return Largest(LargestClass, [.. classes.Select(c => (c.What[(c.What.LastIndexOf('.') + 1)..], c.Members))])
            with
        { Places = [.. classes.Where(c => c.Members > Aims[LargestClass]).Select(c => $"{c.What}: {c.Members}")] };
        yield return Of(LongLines, Sizes.LongLines(house), 0);
    }

    private static IEnumerable<Figure> Rooms(Checkout house)
    {
        var graphs = house.Projects.Select(p => new FolderGraph(p.Name, house.References)).ToList();
        yield return new Figure(
            Circles,
            graphs.Sum(g => g.FoldersInCircles),
            string.Join(", ", graphs.Where(g => g.FoldersInCircles > 0).Select(g => $"{Last(g.Project)} {g.FoldersInCircles}")),
            [.. graphs.SelectMany(g => g.Offences().Select(o => $"{g.Project}: {o}"))]);
        var athome = house.Projects.Select(p => (p.Name, Types: Uses.PublicAtHomeOnly(house, p))).ToList();
        yield return new Figure(
            "public types used only in their own project",
            athome.Sum(p => p.Types.Count),
            string.Join(", ", athome.Where(p => p.Types.Count > 0).Select(p => $"{Last(p.Name)} {p.Types.Count}")),
            [.. athome.SelectMany(p => p.Types)]);
    }

    private static IEnumerable<Figure> Strings(Checkout house)
    {
        yield return Of("names of ions as strings", Names.Ions(house));
        yield return Of(ForeignRules, Names.ForeignRules(house));
        yield return Of("options of rules read by a string", Names.Options(house));
    }

    private static Figure Largest(string what, IReadOnlyList<(string What, int Count)> sorted) =>
        new(what, sorted[0].Count, string.Join(", ", sorted.Take(5).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.What} {s.Count}"))), []);

    /// <summary>The count of places, with the files that hold most of them.</summary>
    private static Figure Of(string what, IReadOnlyList<string> places, int files = 3)
    {
        var most = places.GroupBy(p => p.Split(':')[0], StringComparer.Ordinal).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).ToList();
        var detail = files == 0 || places.Count == 0 ? "" : $"in {most.Count} files; {string.Join(", ", most.Take(files).Select(g => $"{Last(g.Key)} {g.Count()}"))}";
        return new Figure(what, places.Count, detail, places);
    }

    private static string Last(string path)
    {
        var name = path[(path.LastIndexOf('/') + 1)..];
        return name.StartsWith("RecipeLint.", StringComparison.Ordinal) ? name["RecipeLint.".Length..] : name;
    }
}
