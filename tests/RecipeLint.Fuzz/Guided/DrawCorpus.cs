using System.Globalization;

namespace RecipeLint.Fuzz.Guided;

/// <summary>
/// The draws of every input that met something new, and new draws made of them. Whose descendants are kept is taken again; who was taken
/// often without any is left alone.
/// </summary>
internal sealed class DrawCorpus
{
    /// <summary>Of so many drawn at random the one that promises most is taken.</summary>
    private const int Contest = 5;
    private const int LongestRun = 24;
    private readonly List<Entry> _entries = [];

    public int Count => _entries.Count;

    /// <summary>Keeps draws.</summary>
    /// <param name="found">How much they met that was new; who met more is taken more often.</param>
    /// <param name="parent">Whose descendant they are; null for fresh ones.</param>
    public void Keep(IReadOnlyList<int> draws, int found, Entry? parent)
    {
        _entries.Add(new Entry([.. draws]) { Finds = 1 + int.Log2(found) });
        if (parent is not null)
        {
            parent.Finds++;
        }
    }

    /// <summary>One to start from; null where there is none.</summary>
    public Entry? Take(Random random)
    {
        Entry? best = null;
        for (var left = _entries.Count == 0 ? 0 : Contest; left > 0; left--)
        {
            var one = _entries[random.Next(_entries.Count)];
            best = best is null || one.Promise > best.Promise ? one : best;
        }

        if (best is not null)
        {
            best.Taken++;
        }

        return best;
    }

    /// <summary>
    /// Other draws made of these: numbers changed, stretches left out, put in fresh, said twice or taken from another input, what follows
    /// made anew.
    /// </summary>
    public List<int> Changed(Random random, Entry entry)
    {
        var draws = entry.Draws.ToList();
        for (var left = 1 << random.Next(4); left > 0; left--)
        {
            var at = random.Next(draws.Count + 1);
            var run = Math.Min(random.Next(1, LongestRun), draws.Count - at);
            switch (random.Next(9))
            {
                case 0 or 1 or 2 when at < draws.Count:
                    draws[at] = Other(random, draws[at]);
                    break;
                case 3:
                    draws.RemoveRange(at, run);
                    break;
                case 4:
                    draws.InsertRange(at, Enumerable.Range(0, random.Next(1, LongestRun)).Select(_ => random.Next()).ToList());
                    break;
                case 5:
                    draws.InsertRange(at, draws.GetRange(at, run));
                    break;
                case 6:
                    var other = _entries[random.Next(_entries.Count)].Draws;
                    var from = random.Next(other.Length + 1);
                    draws.RemoveRange(at, draws.Count - at);
                    draws.AddRange(other[from..]);
                    break;
                case 7:
                    var piece = _entries[random.Next(_entries.Count)].Draws;
                    var start = random.Next(piece.Length + 1);
                    draws.InsertRange(at, piece[start..Math.Min(piece.Length, start + random.Next(1, LongestRun))]);
                    break;
                case 8 when random.Next(4) == 0:
                    draws.RemoveRange(at, draws.Count - at);
                    break;
            }
        }

        return draws.Count > DrawnRandom.MostKept ? draws[..DrawnRandom.MostKept] : draws;
    }

    public IEnumerable<string> Lines() => _entries.Select(e => Line(e.Draws));

    public static string Line(IEnumerable<int> draws) => string.Join('.', draws.Select(d => d.ToString(CultureInfo.InvariantCulture)));

    public static int[] Read(string line) =>
        line.Length == 0 ? [] : [.. line.Split('.').Select(d => int.Parse(d, NumberStyles.None, CultureInfo.InvariantCulture))];

    private static int Other(Random random, int value) => random.Next(5) switch
    {
        0 => 0,
        1 => value == int.MaxValue ? 0 : value + 1,
        2 => Math.Max(0, value - 1),
        3 => random.Next(64),
        _ => random.Next(),
    };

    internal sealed class Entry(int[] draws)
    {
        public int[] Draws { get; } = draws;

        public int Taken { get; set; }

        public int Finds { get; set; }

        public double Promise => (double)Finds / (Taken + 1);
    }
}
