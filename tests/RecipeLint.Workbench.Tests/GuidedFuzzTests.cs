using RecipeLint.Fuzz;
using RecipeLint.Fuzz.Guided;

namespace RecipeLint.Workbench.Tests;

/// <summary>The harness keeps what meets something new, gets further by it, and does the same again for the same seed.</summary>
public sealed class GuidedFuzzTests
{
    private const int Depth = 6;

    [Fact]
    public void WhatIsMetStepByStepIsReachedWithGuidanceAndNotWithout()
    {
        Assert.Equal(1, Run(seed: 1, blind: false, most: 200_000, out var guided));
        Assert.Equal(0, Run(seed: 1, blind: true, most: 20_000, out var blind));
        Assert.Contains("FAULT lock --replay-drawn 11.22.33.44.55.66", guided, StringComparison.Ordinal);
        Assert.DoesNotContain("FAULT", blind, StringComparison.Ordinal);
    }

    [Fact]
    public void OneSeedIsOneCampaign()
    {
        Run(seed: 7, blind: false, most: 3_000, out var once);
        Run(seed: 7, blind: false, most: 3_000, out var again);
        Run(seed: 8, blind: false, most: 3_000, out var other);
        Assert.Equal(Without(once), Without(again));
        Assert.NotEqual(Without(once), Without(other));
    }

    [Fact]
    public void KeptInputsAreRunFirst()
    {
        var edges = new FewEdges();
        var guide = new Guide(edges, blind: false);
        using var log = new StringWriter();
        Assert.Equal(1, new Campaign(Lock(edges), 1, TimeSpan.FromHours(1), log, guide).Run(() => false, ["11.22.33.44.55.66", "11.22"]));
        Assert.Equal("11.22.33.44.55.66", guide.Lines().First().TrimStart());
    }

    [Fact]
    public void DrawsGiveTheSameInputAgain()
    {
        foreach (var target in Targets.All.Where(t => t.Name is not ("forms" or "accept" or "baseline" or "learn" or "writing")))
        {
            var first = new DrawnRandom([], new Random(42));
            var shown = target.Make(first).Shown();
            var again = new DrawnRandom(DrawCorpus.Read(DrawCorpus.Line(first.Drawn)), new Random(43));
            Assert.Equal(shown, target.Make(again).Shown());
        }
    }

    [Fact]
    public void OnlyANewEdgeOrAnotherOrderOfPassesIsNew()
    {
        var seen = new SeenEdges();
        var counts = new byte[1 << 16];
        (counts[3], counts[60_000]) = (1, 200);
        Assert.Equal((2, 2), (seen.Add(counts), seen.Count));
        Assert.Equal((0, 2), (seen.Add(counts), seen.Count));
        counts[3] = 5;
        Assert.Equal((1, 2), (seen.Add(counts), seen.Count));
        counts[3] = 7;
        Assert.Equal((0, 2), (seen.Add(counts), seen.Count));
    }

    /// <summary>Until it is open, or so many inputs were run.</summary>
    private static int Run(int seed, bool blind, int most, out string said)
    {
        var edges = new FewEdges();
        using var log = new StringWriter();
        var faults = new Campaign(Lock(edges), seed, TimeSpan.FromHours(1), log, new Guide(edges, blind)).Run(() => most-- > 0 && edges.Deepest < Depth);
        said = log.ToString();
        return faults;
    }

    /// <summary>Without the time that the slowest took.</summary>
    private static string Without(string said) => System.Text.RegularExpressions.Regex.Replace(said, @"\d+ ms \(number \d+\)", "");

    /// <summary>Six numbers of a hundred in a row, each of them an edge; by chance that is one in a million million.</summary>
    private static FuzzTarget Lock(FewEdges edges) => new("lock", random =>
    {
        var drawn = Enumerable.Range(0, Depth).Select(_ => random.Next(100)).ToList();
        return new Execution(() => string.Join(' ', drawn), () =>
        {
            var right = 0;
            while (right < Depth && drawn[right] == 11 * (right + 1))
            {
                edges.Pass(++right);
            }

            if (right == Depth)
            {
                throw new BrokenPromiseException("open");
            }
        });
    });

    private sealed class FewEdges : IEdges
    {
        private readonly byte[] _counts = new byte[16];

        public ReadOnlySpan<byte> Counts => _counts;

        public int Deepest { get; private set; }

        public void Clear() => Array.Clear(_counts);

        public void Pass(int edge)
        {
            _counts[edge]++;
            Deepest = Math.Max(Deepest, edge);
        }
    }
}
