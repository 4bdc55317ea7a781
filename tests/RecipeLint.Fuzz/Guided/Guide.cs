using System.Globalization;

namespace RecipeLint.Fuzz.Guided;

/// <summary>
/// Makes the inputs of a campaign out of those that met something new. Given one seed and one instrumented build, number n is the same input
/// each time, as long as the program runs on one thread.
/// </summary>
/// <param name="blind">Fresh inputs only, with edges counted all the same: what guidance is measured against.</param>
internal sealed class Guide(IEdges edges, bool blind)
{
    /// <summary>One input of so many is fresh.</summary>
    private const int Fresh = 5;
    private readonly SeenEdges _seen = new();
    private readonly DrawCorpus _corpus = new();
    private DrawCorpus.Entry? _parent;
    private DrawnRandom _draws = new([], new Random(0));

    public int EdgesSeen => _seen.Count;

    public int Kept => _corpus.Count;

    /// <summary>The draws of the last input that was made.</summary>
    public string Drawn => DrawCorpus.Line(_draws.Drawn);

    public Execution Make(FuzzTarget target, Random random)
    {
        _parent = blind || random.Next(Fresh) == 0 ? null : _corpus.Take(random);
        return Made(target, _parent is null ? [] : _corpus.Changed(random, _parent), random);
    }

    /// <summary>An input that was kept earlier.</summary>
    public Execution Again(FuzzTarget target, string line)
    {
        _parent = null;
        return Made(target, DrawCorpus.Read(line), new Random(0));
    }

    /// <summary>Once the input ran: keeps its draws where they met something new.</summary>
    public void Learn()
    {
        if (_seen.Add(edges.Counts) is > 0 and var found)
        {
            _corpus.Keep(_draws.Drawn, found, _parent);
        }
    }

    public IEnumerable<string> Lines() => _corpus.Lines();

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{EdgesSeen} edges | {Kept} kept");

    private Execution Made(FuzzTarget target, IReadOnlyList<int> draws, Random fresh)
    {
        _draws = new DrawnRandom(draws, fresh);
        var execution = target.Make(_draws);
        edges.Clear();
        return execution;
    }
}
