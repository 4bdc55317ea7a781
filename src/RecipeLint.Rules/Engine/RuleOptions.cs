using System.Globalization;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// The options of one rule as a record of typed members. The records are made from rule.json when the program is built:
/// the rule 'water-onto-acid' has WaterOntoAcidOptions, its option 'nitricFrom' the member NitricFrom.
/// </summary>
/// <typeparam name="T">The record itself.</typeparam>
public interface IRuleOptions<T>
    where T : IRuleOptions<T>
{
    /// <summary>The record with what a shop says.</summary>
    /// <param name="values">Every option by its name, numbers in invariant culture.</param>
    static abstract T From(IReadOnlyDictionary<string, string> values);
}

/// <summary>A number a shop may change; it counts as its value wherever a number is wanted.</summary>
/// <param name="Name">As in rule.json and in the shop's settings.</param>
/// <param name="Value">In the unit; finite.</param>
/// <param name="Unit">Empty for a ratio.</param>
public readonly record struct NumberOption(string Name, double Value, string Unit)
{
    public static implicit operator double(NumberOption option) => option.Value;

    /// <exception cref="FormatException">The text is not a number.</exception>
    public static NumberOption Read(string name, string text, string unit) =>
        new(name, double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture), unit);

    public override string ToString() => Value.ToString(CultureInfo.InvariantCulture);
}
