using System.Globalization;
using RecipeLint.Analysis.Equilibria;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>Numbers in reasons.</summary>
internal static class DiagnosisWords
{
    public static string At(SolutionState state) => state.Moment == StateMoment.Aged
        ? "once the air has oxidised the iron"
        : state.Moment == StateMoment.Turned
        ? state.Mix.PyrophosphateTurned > 0
            ? "once part of the pyrophosphate has turned to orthophosphate"
            : "once part of the sulfamic acid has turned to ammonium and sulfate"
        : string.Create(CultureInfo.InvariantCulture, $"at {state.Temperature.Celsius:0.#} °C");

    public static string Grams(double grams) => grams < 0.1
        ? string.Create(CultureInfo.InvariantCulture, $"{grams * 1000:0} mg")
        : grams < 10
            ? string.Create(CultureInfo.InvariantCulture, $"{grams:0.##} g")
            : string.Create(CultureInfo.InvariantCulture, $"{grams:0} g");

    /// <summary>"3.2 times", from an index.</summary>
    public static string Times(double index)
    {
        var times = Math.Pow(10, index);
        return times > 1000 ? "more than a thousand times" : string.Create(CultureInfo.InvariantCulture, $"{times:0.#} times");
    }
}
