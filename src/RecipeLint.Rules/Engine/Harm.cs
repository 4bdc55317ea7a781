namespace RecipeLint.Rules.Engine;

/// <summary>What comes of it when nobody acts, from mild to grave.</summary>
public enum Harm
{
    /// <summary>Work is harder or less tidy than it need be.</summary>
    Habit,

    /// <summary>A crop grows worse, a stock does not keep its time, or a figure is known too badly.</summary>
    Damage,

    /// <summary>
    /// A crop or a batch is lost, the plants do not get what the file says, or more than half of an element is gone before it reaches them.
    /// </summary>
    Loss,

    /// <summary>Someone can be hurt.</summary>
    Person,
}

/// <summary>How sure the harm is, whatever method found it.</summary>
public enum Odds
{
    /// <summary>Past its limit by more than the stated uncertainty, or twice a sourced limit.</summary>
    Certain,

    /// <summary>Past its limit by less than the uncertainty.</summary>
    NearTheLimit,

    /// <summary>It may well not happen: it takes weeks, a slip, or a crystal to start from.</summary>
    Possible,
}

/// <summary>The one table from harm and odds to level; it stands in DEVELOPERS.md too, and a test holds the two together.</summary>
public static class LevelTable
{
    public static Level Of(Harm harm, Odds odds) => (harm, odds) switch
    {
        (Harm.Person, Odds.Possible) => Level.Warning,
        (Harm.Person, _) => Level.Error,
        (Harm.Loss, Odds.Certain) => Level.Error,
        (Harm.Loss, Odds.NearTheLimit) => Level.Warning,
        (Harm.Damage, Odds.Certain or Odds.NearTheLimit) => Level.Warning,
        _ => Level.Note,
    };
}
