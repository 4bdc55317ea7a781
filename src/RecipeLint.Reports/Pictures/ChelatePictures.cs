using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Pictures;

/// <summary>Who holds each metal over pH: its chelates, no chelate, or the bottom of the vessel.</summary>
public static class ChelatePictures
{
    /// <summary>An agent that never holds this share of a metal is not drawn.</summary>
    private const double NotableShare = 0.01;

    /// <summary>A share is not told apart from what it may be where both ends are this near to it.</summary>
    private const double NotableDoubt = 0.0005;

    private static readonly Ink[] Inks = [Ink.First, Ink.Second, Ink.Third, Ink.Fourth, Ink.Fifth, Ink.Sixth];

    /// <summary>One picture for each metal that some agent holds; none without chelating agents.</summary>
    /// <param name="ph">Of the solution as it is; null where it is not known.</param>
    /// <param name="key">Unique on the page.</param>
    public static IReadOnlyList<Picture> Of(SolutionMix mix, double? ph, string name, string key) =>
        MetalHold.Of(mix) is { } hold
            ? [.. hold.Metals.Select(m => Of(hold, m, ph, name, key)).OfType<Picture>()]
            : [];

    private static Picture? Of(MetalHold hold, string metal, double? ph, string name, string key)
    {
        var agents = hold.AgentsOf(metal, NotableShare).Take(Inks.Length - 2).ToList();
        if (agents.Count == 0)
        {
            return null;
        }

        List<string> holders = [.. agents, MetalHold.NoAgent, MetalHold.FallenOut];
        var names = holders.ConvertAll(h => agents.Contains(h) ? IonWords.Of(h) : h);
        var shares = holders.ConvertAll(h => Enumerable.Range(0, hold.States.Count).Select(i => hold.Share(i, metal, h)).ToList());
        var word = IonWords.Of(metal);
        return new Picture(
            $"{key}-held-{string.Concat(metal.Where(char.IsAsciiLetterOrDigit)).ToLowerInvariant()}", $"Who holds the {word}: {name}",
            $"Share of all {word} that each agent holds, that nothing holds and that has fallen out, if the pH were set to each value at "
                + "20 °C. The band around a curve says how far it may be off for what is not known of the constants (about 95 %)."
                + (ph is { } now ? $" It is at pH {Cells.Ph(now)}." : ""),
            new Axis("pH", MetalHold.LowestPh, MetalHold.HighestPh), new Axis("% of the metal", 0, 100),
            new Table(
                [new("pH", true), .. names.Select(n => new Column($"{n} %", true))],
                [.. hold.Ph.Select((at, i) => (IReadOnlyList<string>)[Cells.Ph(at), .. shares.Select(s => Cell(s[i]))])]))
        {
            Curves = [.. names.Select((n, h) => new Curve(n, Inks[h], [.. shares[h].Select((s, i) => new Dot(hold.Ph[i], 100 * s.Share))])
            {
                Band = [.. shares[h].Select((s, i) => new Reach(hold.Ph[i], 100 * s.Low, 100 * s.High))],
            })],
            Marks = ph is { } seen and >= MetalHold.LowestPh and <= MetalHold.HighestPh
                ? [new Mark(seen, true, $"pH {Cells.Ph(seen)}")]
                : [],
        };
    }

    private static string Cell(HeldShare share)
    {
        var said = Percent(share.Share);
        return share.Share - share.Low < NotableDoubt && share.High - share.Share < NotableDoubt
            ? said
            : $"{said} ({Percent(share.Low)} to {Percent(share.High)})";
    }

    private static string Percent(double share) => Say.Number(Math.Round(100 * share, 3));
}
