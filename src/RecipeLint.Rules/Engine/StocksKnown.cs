using RecipeLint.Analysis;
using RecipeLint.Recipes.Json;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// The stocks of one part of a run with the rules that are known to have nothing to say of each, and those that turn out to while they are
/// judged.
/// </summary>
internal sealed class StocksKnown
{
    private readonly SilentRules? _memory;
    private readonly (StockBasis? Basis, ulong[]? Known, ulong[] Learned)[] _stocks = [];

    public StocksKnown(Facts facts, EngineOptions options)
    {
        _memory = options.Silent;
        if (_memory is null)
        {
            return;
        }

        var digests = new Dictionary<SourceFile, byte[]>(ReferenceEqualityComparer.Instance);
        _stocks = new (StockBasis?, ulong[]?, ulong[])[facts.Stocks.Count];
        for (var i = 0; i < _stocks.Length; i++)
        {
            var basis = StockBasis.Of(facts.Workspace, facts.Stocks[i].Stock.File, digests);
            var known = basis is { } whole ? _memory.Of(whole) : null;
            _stocks[i] = (basis, known, known is null && basis is not null ? new ulong[(options.Rules.Count + 63) / 64] : []);
        }
    }

    /// <param name="stock">Its number among the facts.</param>
    /// <param name="rule">Its number among the rules of the run.</param>
    public bool IsSilent(int stock, int rule) =>
        _memory is not null && _stocks[stock].Known is { } known && (known[rule / 64] & (1UL << (rule % 64))) != 0;

    /// <summary>The rule has looked at the stock alone and has nothing to say of it.</summary>
    public void Learn(int stock, int rule)
    {
        if (_memory is not null && _stocks[stock].Learned is { Length: > 0 } learned)
        {
            learned[rule / 64] |= 1UL << (rule % 64);
        }
    }

    /// <summary>Keeps what was learned for other parts.</summary>
    public void Keep()
    {
        foreach (var (basis, _, learned) in _stocks)
        {
            if (learned.Length > 0)
            {
                _memory!.Keep(basis!.Value, learned);
            }
        }
    }
}
