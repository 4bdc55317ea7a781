using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>What is left of stocks and recipes after they were judged: little, so that it can be kept of any number of files.</summary>
public sealed record RunInBrief
{
    /// <summary>Stocks that were asked about and that nothing read uses.</summary>
    internal IReadOnlyList<StockInBrief> Unused { get; init; } = [];

    /// <summary>
    /// Every stock that was asked about; of a shop that was read whole only those whose name another one has as well.
    /// </summary>
    internal IReadOnlyList<StockInBrief> Stocks { get; init; } = [];

    /// <summary>How many recipes were asked about, by the settings file of their shop; empty for none.</summary>
    internal IReadOnlyDictionary<string, int> RecipesByShop { get; init; } = new Dictionary<string, int>();

    /// <summary>
    /// What substances are called in the files asked about, each way of a shop once, where it stands first; of a shop that was read whole
    /// only what is called several ways.
    /// </summary>
    internal IReadOnlyList<NameInBrief> Names { get; init; } = [];

    public static RunInBrief Of(Workspace workspace)
    {
        string Shop(string file) => workspace.SettingsFor(file).File ?? "";
        var used = workspace.Recipes.SelectMany(r => r.Doses).OfType<StockDose>().Select(d => d.StockFile)
            .Concat(workspace.Stocks.SelectMany(s => s.Steps).OfType<AliquotStep>().Select(a => a.StockFile ?? a.NotFollowed))
            .OfType<string>()
            .ToHashSet(StringComparer.Ordinal);
        var recipesByShop = workspace.Recipes
            .Where(r => workspace.Asked.Contains(r.File))
            .GroupBy(r => Shop(r.File), StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        StockInBrief[] stocks =
        [
            .. workspace.Stocks.Where(s => workspace.Asked.Contains(s.File)).Select(s => new StockInBrief(s.Name, s.Place, Shop(s.File))),
        ];
        return new RunInBrief
        {
            Unused = [.. stocks.Where(s => !used.Contains(s.Place.File))],
            Stocks = Worth(stocks, workspace, s => (GroupOf(s.Shop, s.Place.File), NameKey(s.Name))),
            RecipesByShop = recipesByShop,
            Names = Worth(Joined(NamesOf(workspace, Shop)), workspace, n => (n.Shop, n.Substance)),
        };
    }

    /// <summary>Names that look alike on a bottle are one.</summary>
    internal static string NameKey(string name) => name.Trim().ToUpperInvariant();

    /// <summary>
    /// What has to be kept for the end of the run. Where no other piece can know of the same shop, one thing alone never becomes two.
    /// </summary>
    private static IReadOnlyList<T> Worth<T>(IReadOnlyList<T> all, Workspace workspace, Func<T, (string Group, string Key)> same) =>
        workspace.HoldsAllBelow is not { } holdsAll ? all
        :
        [
            .. all.GroupBy(same)
                .Where(g => g.Count() > 1 || !holdsAll(g.Key.Group[..Math.Max(0, g.Key.Group.LastIndexOf('/'))]))
                .SelectMany(g => g),
        ];

    public static RunInBrief Together(IEnumerable<RunInBrief> parts)
    {
        var all = parts.ToList();
        var recipes = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (shop, count) in all.SelectMany(p => p.RecipesByShop))
        {
            recipes[shop] = recipes.GetValueOrDefault(shop) + count;
        }

        return new RunInBrief
        {
            Unused = [.. all.SelectMany(p => p.Unused).OrderBy(s => s.Place.File, StringComparer.Ordinal)],
            Stocks = [.. all.SelectMany(p => p.Stocks).OrderBy(s => s.Place.File, StringComparer.Ordinal)],
            RecipesByShop = recipes,
            Names = Joined(all.SelectMany(p => p.Names)),
        };
    }

    private static IEnumerable<NameInBrief> NamesOf(Workspace workspace, Func<string, string> shop)
    {
        NameInBrief Name(Substance substance, Located<string> what) => new(
            GroupOf(shop(what.Place.File), what.Place.File), substance.Id, substance.Name, what.Value.Trim(), what.Place,
            IdPath.Of(workspace, what.Place), 1);
        return workspace.Stocks.Where(s => workspace.Asked.Contains(s.File))
            .SelectMany(s => s.Steps).OfType<AddStep>()
            .Where(a => a.Substance is not null).Select(a => Name(a.Substance!, a.What))
            .Concat(workspace.Recipes.Where(r => workspace.Asked.Contains(r.File))
                .SelectMany(r => r.Doses).OfType<DirectDose>()
                .Where(d => d.Substance is not null).Select(d => Name(d.Substance!, d.What)));
    }

    /// <summary>Each name of a substance in a shop once, with how often it stands there.</summary>
    private static List<NameInBrief> Joined(IEnumerable<NameInBrief> names) =>
    [
        .. names.GroupBy(n => (n.Shop, n.Substance, n.Text))
            .Select(g => g.OrderBy(n => n.Place.File, StringComparer.Ordinal).First() with { Count = g.Sum(n => n.Count) })
            .OrderBy(n => n.Shop, StringComparer.Ordinal)
            .ThenBy(n => n.Substance, StringComparer.Ordinal)
            .ThenBy(n => n.Text, StringComparer.Ordinal),
    ];

    /// <summary>What belongs together: the files of one settings file, without one those of a folder.</summary>
    internal static string GroupOf(string shop, string file) =>
        shop.Length > 0 ? shop : file.LastIndexOf('/') is >= 0 and var slash ? file[..(slash + 1)] : "";
}

/// <param name="Shop">The settings file that holds for it; empty for none.</param>
internal sealed record StockInBrief(string Name, Place Place, string Shop);

/// <summary>One way in which a substance is called.</summary>
/// <param name="Shop">The settings file, without one the folder.</param>
/// <param name="Substance">Its id.</param>
/// <param name="SubstanceName">Its name for people.</param>
/// <param name="Text">As written.</param>
/// <param name="Place">Where it stands first, by the order of files.</param>
/// <param name="Count">How often it stands in the shop.</param>
internal sealed record NameInBrief(string Shop, string Substance, string SubstanceName, string Text, Place Place, string At, int Count);
