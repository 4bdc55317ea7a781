using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;
using Component = RecipeLint.Chemistry.Equilibrium.Component;
using Components = RecipeLint.Chemistry.Equilibrium.Components;

namespace RecipeLint.Reports.Pictures;

/// <summary>Who holds each metal over pH: its chelates, no chelate, or the bottom of the vessel.</summary>
public static class ChelatePictures
{
    private const double LowestPh = 3, HighestPh = 9, PhStep = 0.25;

    /// <summary>An agent that never holds this share of a metal is not drawn.</summary>
    private const double NotableShare = 0.01;

    private static readonly string[] Metals =
        [
            Component.FerricIron, Component.FerrousIron, Component.Manganese, Component.Zinc, Component.Copper, Component.Nickel,
            Component.Cobalt,
        ];

    private static readonly Ink[] Inks = [Ink.First, Ink.Second, Ink.Third, Ink.Fourth, Ink.Fifth, Ink.Sixth];

    /// <summary>One picture for each metal that some agent holds; none without chelating agents.</summary>
    /// <param name="ph">Of the solution as it is; null where it is not known.</param>
    /// <param name="key">Unique on the page.</param>
    public static IReadOnlyList<Picture> Of(SolutionMix mix, double? ph, string name, string key)
    {
        if (mix.Failure is not null || !Components.Chelators.Any(c => mix.Totals[c] > 0))
        {
            return [];
        }

        var states = Solve(mix);
        return [.. Metals.Where(m => mix.Totals[m] > 0).Select(m => Of(states, m, ph, name, key)).OfType<Picture>()];
    }

    private static List<(double Ph, SolutionState State)> Solve(SolutionMix mix)
    {
        var states = new List<(double, SolutionState)>();
        for (var ph = LowestPh; ph <= HighestPh; ph += PhStep)
        {
            var state = StateSolver.Solve(
                mix, new StateRequest(StateMoment.Tank, new Temperature(SolutionMix.FilledAtCelsius), false, []) { SetPh = ph });
            if (state.IsSolved)
            {
                states.Add((ph, state));
            }
        }

        return states;
    }

    private static Picture? Of(List<(double Ph, SolutionState State)> states, string metal, double? ph, string name, string key)
    {
        var agents = states.SelectMany(s => s.State.Chelates).Where(c => c.Metal == metal && c.OfMetal > NotableShare)
            .GroupBy(c => c.Agent, StringComparer.Ordinal)
            .OrderByDescending(g => g.Max(c => c.OfMetal))
            .Select(g => g.Key)
            .Take(Inks.Length - 2)
            .ToList();
        if (agents.Count == 0 || states.Count < 2)
        {
            return null;
        }

        List<(string Name, Func<SolutionState, double> Share)> holders =
        [
            .. agents.Select(a => (IonWords.Of(a), (Func<SolutionState, double>)(s => Held(s, metal, a)))),
            ("no chelate", s => Loose(s, metal)),
            ("fallen out", s => Fallen(s, metal)),
        ];
        var curves = holders.Select((h, i) => new Curve(h.Name, Inks[i], [.. states.Select(s => new Dot(s.Ph, 100 * h.Share(s.State)))]))
            .ToList();
        var word = IonWords.Of(metal);
        return new Picture(
            $"{key}-held-{string.Concat(metal.Where(char.IsAsciiLetterOrDigit)).ToLowerInvariant()}", $"Who holds the {word}: {name}",
            $"Share of all {word} that each agent holds, that nothing holds and that has fallen out, if the pH were set to each value at "
                + "20 °C."
                + (ph is { } now ? $" It is at pH {Cells.Ph(now)}." : ""),
            new Axis("pH", LowestPh, HighestPh), new Axis("% of the metal", 0, 100),
            new Table(
                [new("pH", true), .. holders.Select(h => new Column($"{h.Name} %", true))],
                [
                    .. states.Select(s =>
                        (IReadOnlyList<string>)[Cells.Ph(s.Ph), .. holders.Select(h => Say.Number(Math.Round(100 * h.Share(s.State), 3)))]),
                ]))
        {
            Curves = curves,
            Marks = ph is { } at and >= LowestPh and <= HighestPh ? [new Mark(at, true, $"pH {Cells.Ph(at)}")] : [],
        };
    }

    /// <summary>Share of all the metal that an agent holds in solution, 0 to 1.</summary>
    public static double Held(SolutionState state, string metal, string agent) =>
        Dissolved(state, metal) * state.Chelates.Where(c => c.Metal == metal && c.Agent == agent).Sum(c => c.OfMetal);

    private static double Loose(SolutionState state, string metal) =>
        state.Metals.FirstOrDefault(m => m.Metal == metal) is { } found && Total(state, metal) > 0
            ? Math.Clamp(found.Unchelated.MolesPerLitre / Total(state, metal), 0, 1)
            : 0;

    private static double Fallen(SolutionState state, string metal) => Math.Clamp(1 - Dissolved(state, metal), 0, 1);

    private static double Dissolved(SolutionState state, string metal) =>
        state.Metals.FirstOrDefault(m => m.Metal == metal) is { } found && Total(state, metal) > 0
            ? Math.Clamp(found.Dissolved.MolesPerLitre / Total(state, metal), 0, 1)
            : 0;

    private static double Total(SolutionState state, string metal) => state.Mix.Totals[metal] * state.KilogramsWaterPerLitre;
}
