using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Preservation;

/// <summary>Whether a stock is kept so long that something can grow or get lost.</summary>
internal static class KeptLong
{
    /// <summary>Null where the file does not say how long it is kept: then it is taken as kept.</summary>
    internal static Check? Check(StockFacts stock, double freshDays) => stock.Stock.Keep?.For is { } shelf
        ? new Check("kept longer than fresh", shelf.Value.Days, Relation.Over, freshDays, "days")
        : null;

    internal static void Write(WorkingBuilder work, Check? kept, NumberOption fresh)
    {
        if (kept is null)
        {
            work.Remark("The file does not say how long it is kept: it is taken as kept.");
            return;
        }

        work.Check(kept, work.Given("kept for", kept.Value, "days", From.File), work.Option("fresh", fresh));
    }
}
