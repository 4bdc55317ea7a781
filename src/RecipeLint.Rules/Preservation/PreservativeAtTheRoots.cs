using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Preservation;

/// <summary>
/// What roots bear of a preservative, whether one stock carries it to them or all doses together: the options of the rule on stocks own it.
/// </summary>
/// <param name="NoteFrom">µmol/L in the feed from which it is told.</param>
/// <param name="HarmFrom">µmol/L from which it is certain.</param>
internal sealed record PreservativeAtTheRoots(NumberOption NoteFrom, NumberOption HarmFrom)
{
    /// <summary>By the shop that a file belongs to.</summary>
    public static PreservativeAtTheRoots Of(ShopSettings shop) =>
        Of(RuleTuning.Read(shop).Options<PreservativeTooStrongOptions>(RuleBook.Find(PreservativeTooStrong.RuleName)!));

    public static PreservativeAtTheRoots Of(PreservativeTooStrongOptions options) => new(options.MostCarriedOver, options.HarmFrom);

    /// <summary>The one comparison on which both verdicts turn.</summary>
    /// <param name="found">µmol/L in the feed.</param>
    public Check Check(double found) => new("more than plants should get", found, Relation.Over, NoteFrom, "µmol/L");

    public Odds Sure(double found) => found >= HarmFrom ? Odds.Certain : Odds.Possible;

    /// <summary>Why it matters, a whole sentence.</summary>
    public string Why =>
        $"Benzoic acid held back strawberry plantlets from {Say.Number(NoteFrom)} µmol/L on, and slime in the tank lives on the rest.";
}
