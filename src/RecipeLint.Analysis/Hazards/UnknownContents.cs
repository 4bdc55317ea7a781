namespace RecipeLint.Analysis.Hazards;

/// <summary>What is in a stock and nobody can tell more of: no advice can be computed for it.</summary>
/// <param name="Names">Products that state nothing, and what could not be read, as the file writes them; at least one.</param>
/// <param name="IsAll">True when nothing else goes in that is known.</param>
public sealed record UnknownContents(IReadOnlyList<string> Names, bool IsAll)
{
    /// <summary>Null where everything that goes in can be named; extracts can, their kind is known.</summary>
    public static UnknownContents? Of(StockFacts stock)
    {
        var unread = UnreadStep.Of(stock);
        List<string> names =
        [
            .. stock.Additions.Where(a => Held.Of(a).IsNameless).Select(a => a.Substance.Name)
                .Concat(unread.Where(IsNameless).Select(u => u.Written))
                .Distinct(StringComparer.Ordinal),
        ];
        return names.Count == 0 ? null
            : new UnknownContents(names, stock.Additions.All(a => Held.Of(a).IsNameless) && unread.All(IsNameless));
    }

    /// <summary>Nothing is catalogued under its name, whatever that tells of it.</summary>
    private static bool IsNameless(UnreadStep step) => step.Items.All(i => i.Moles.Count == 0 && i.IsNameless);
}
