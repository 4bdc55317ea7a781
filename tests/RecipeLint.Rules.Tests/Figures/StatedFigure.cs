namespace RecipeLint.Rules.Tests.Figures;

/// <summary>What stands behind a figure of an explanation.</summary>
internal enum Behind
{
    /// <summary>The engine, or a plain sum, gives it.</summary>
    Computed,

    /// <summary>A limit or a constant that somebody in the code or in a rule's options owns.</summary>
    Owned,

    /// <summary>A published fact, or common practice that says so; its citation stands among the sources of the same explanation.</summary>
    Source,

    /// <summary>What an example or a sum starts from: it states nothing about the world.</summary>
    Given,
}

/// <summary>Words of an explanation that hold figures, and what stands behind them.</summary>
/// <param name="Rule">Name of the rule; <see cref="Everywhere"/> for words that several explanations share.</param>
/// <param name="Words">As they stand in the explanation.</param>
/// <param name="Values">What the engine gives, or the owners of the figures in their order.</param>
/// <param name="Low">Lowest that the words cover of what is computed.</param>
/// <param name="High">Highest that the words cover of what is computed.</param>
/// <param name="Citation">Words of the sources.</param>
internal sealed record StatedFigure(
    string Rule, string Words, Behind Behind, IReadOnlyList<Func<double>> Values, double Low = 0, double High = 0, string Citation = "")
{
    public const string Everywhere = "*";

    public static StatedFigure Computed(string rule, string words, Func<double> given, double low, double high) =>
        new(rule, words, Behind.Computed, [given], low, high);

    public static StatedFigure Owned(string rule, string words, params Func<double>[] owners) => new(rule, words, Behind.Owned, owners);

    public static StatedFigure Source(string rule, string words, string citation) =>
        new(rule, words, Behind.Source, [], Citation: citation);

    public static StatedFigure Given(string rule, string words) => new(rule, words, Behind.Given, []);

    public bool IsOf(string rule) => Rule == rule || Rule == Everywhere;
}
