using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Splitting;

/// <summary>How many main parts, and whether the traces have a stock of their own.</summary>
internal readonly record struct SplitShape(int Mains, bool TraceApart)
{
    public int Total => Mains + (TraceApart ? 1 : 0);
}

/// <summary>One run of the search, from the fewest parts up, and the reasons around what it finds.</summary>
internal sealed class SplitRun
{
    private readonly PartFactory _factory;
    private readonly SplitRequest _request;
    private readonly PartJudge _judge;
    private readonly SplitSearch _search;
    private readonly int _all;
    private readonly int _trace;

    /// <summary>
    /// Parts that go through a whole check before the search gives up: each takes some tens of milliseconds, and what no bottle mends
    /// shows in the first of them (common practice, no source).
    /// </summary>
    private const int MostChecked = 60;

    /// <summary>Parts of a refusal that are listed.</summary>
    private const int MostWrong = 6;

    /// <summary>Clear parts that a check calls wrong, in the order they were met.</summary>
    private readonly List<RejectedPart> _wrong = [];

    public SplitRun(PartFactory factory, SplitRequest request)
    {
        _factory = factory;
        _request = request;
        _judge = new PartJudge(factory);
        _search = new SplitSearch(_judge, factory);
        _all = (1 << factory.Units.Count) - 1;
        var trace = factory.Units.ToList().FindIndex(u => u.Kind == UnitKind.Trace);

        // The traces stand last: where they stand first they are all there is.
        _trace = trace <= 0 ? 0 : 1 << trace;
    }

    public SplitProposal Run(SplitProposal proposal)
    {
        var wanted = Splitter.Upwards(_request);
        foreach (var dilutions in new[] { wanted }.Concat(Splitter.Downwards(_request).Select(d => (IReadOnlyList<double>)[d])))
        {
            for (var total = 1; total <= Splitter.MostParts; total++)
            {
                if (Shapes(total)
                    .Select(s => (Shape: s, Found: Strongest(s, dilutions)))
                    .Where(f => f.Found is not null)
                    .ToList() is { Count: > 0 } found)
                {
                    // With equally many bottles a trace stock of its own is the one that can be weighed and renewed apart.
                    var (shape, grouping) = found.OrderByDescending(f => f.Found!.Dilution)
                        .ThenByDescending(f => f.Shape.TraceApart)
                        .First();
                    return Complete(proposal, shape, grouping!, dilutions);
                }
            }
        }

        var weakest = Splitter.Downwards(_request).Concat(wanted).Min();
        var alone = Alone(weakest).ToList();
        List<RejectedPart> forbid = alone.Count > 0 ? alone
            : _wrong.Count > 0 ? [.. _wrong.DistinctBy(w => string.Join('+', w.Together), StringComparer.Ordinal).Take(MostWrong)]
            : [.. new[] { Explain(new PartContent(_all), weakest) }.OfType<RejectedPart>()];
        return proposal with { Fewer = forbid, LookedAtDilution = weakest, Computed = _judge.Computed };
    }

    private SplitProposal Complete(SplitProposal proposal, SplitShape shape, Grouping grouping, IReadOnlyList<double> dilutions)
    {
        var plan = Plan(shape, grouping, withRoom: true);
        var rejected = new List<RejectedPart>();
        if (_request.ListRejected)
        {
            rejected.AddRange(_judge.Unfit(dilutions[0]).Select(c => Explain(c, dilutions[0])).OfType<RejectedPart>());
        }

        return proposal with
        {
            Plan = plan,
            Alternatives = [.. Alternatives(shape, grouping, dilutions)],
            Fewer = _request.Parts is null ? [.. Fewer(grouping, dilutions[0])] : [],
            FewerGroupings = _request.Parts is null && shape.Mains > 1 ? Stirling(_factory.Units.Count, shape.Mains - 1) : 0,
            Elsewhere = [.. Elsewhere(grouping)],
            Rejected = rejected,
            Computed = _judge.Computed,
        };
    }

    private IEnumerable<SplitShape> Shapes(int total)
    {
        if (_request.Parts is { } asked && total != asked)
        {
            yield break;
        }

        if (total <= _factory.Units.Count)
        {
            yield return new SplitShape(total, false);
        }

        if (_trace != 0 && total >= 2 && total <= _factory.Units.Count)
        {
            yield return new SplitShape(total - 1, true);
        }
    }

    private int MaskOf(SplitShape shape) => shape.TraceApart ? _all & ~_trace : _all;

    /// <summary>
    /// Of the groupings that are fit at the first dose and keep best there, the roomiest at the strongest of the doses that one of them
    /// reaches.
    /// </summary>
    private Grouping? Strongest(SplitShape shape, IReadOnlyList<double> dilutions)
    {
        if (shape.TraceApart && TraceDilution() is null)
        {
            return null;
        }

        var fit = _search.Fit(MaskOf(shape), shape.Mains, dilutions[0]);
        return Strongest(fit, dilutions) ?? Strongest(_search.FitDivided(MaskOf(shape), shape.Mains, dilutions[0]), dilutions);
    }

    /// <summary>The same of some groupings; of those with a part that a check calls wrong none.</summary>
    private Grouping? Strongest(List<Grouping> groupings, IReadOnlyList<double> dilutions)
    {
        while (groupings.Count > 0)
        {
            var fit = _search.BestKept(groupings);
            foreach (var dilution in dilutions.Skip(1))
            {
                var stronger = fit.Select(g => g with { Dilution = dilution })
                    .Where(g => g.Parts.All(p => _judge.Judge(p, dilution).IsFit))
                    .ToList();
                if (stronger.Count == 0)
                {
                    break;
                }

                fit = stronger;
            }

            if (_search.Roomiest(fit) is not { } best)
            {
                return null;
            }

            var wrong = best.Parts.Where(p => IsWrong(p, best.Dilution)).ToList();
            if (wrong.Count == 0)
            {
                return best;
            }

            groupings = [.. groupings.Where(g => !g.Parts.Any(wrong.Contains))];
        }

        return null;
    }

    /// <summary>True for a part that a check calls wrong; past so many that were asked, for every one.</summary>
    private bool IsWrong(PartContent part, double dilution)
    {
        if (_judge.Checked >= MostChecked)
        {
            return true;
        }

        var before = _judge.Checked;
        if (_judge.Wrong(part, dilution, _request.Today) is not { } wrong)
        {
            return false;
        }

        if (_judge.Checked > before)
        {
            _wrong.Add(Rejected(part, dilution, [wrong]));
        }

        return true;
    }

    private double? TraceDilution() =>
        Splitter.ForTraces.Cast<double?>().FirstOrDefault(d =>
            _judge.Judge(new PartContent(_trace), d!.Value).IsFit && !IsWrong(new PartContent(_trace), d.Value));

    private IEnumerable<SplitPlan> Alternatives(SplitShape shape, Grouping grouping, IReadOnlyList<double> dilutions)
    {
        if (_request.Parts is not null)
        {
            yield break;
        }

        // The same bottles, stronger, with one salt divided.
        if (grouping.Parts.All(p => p.Divided < 0) && dilutions.FirstOrDefault(d => d > grouping.Dilution) is > 0 and var next
            && _search.Roomiest(_search.BestKept(_search.FitDivided(MaskOf(shape), shape.Mains, next))) is { } divided)
        {
            yield return Plan(shape, divided, withRoom: false);
        }

        foreach (var more in Shapes(shape.Total + 1))
        {
            if (Strongest(more, dilutions) is { } other && ((more.TraceApart && !shape.TraceApart) || other.Dilution > grouping.Dilution))
            {
                yield return Plan(more, other, withRoom: false);
            }
        }
    }

    private SplitPlan Plan(SplitShape shape, Grouping grouping, bool withRoom)
    {
        var parts = grouping.Parts.Select((p, i) => Part(p, grouping.Dilution, NameOf(i), $"part-{(char)('a' + i)}", withRoom)).ToList();
        if (shape.TraceApart)
        {
            parts.Add(Part(new PartContent(_trace), TraceDilution()!.Value, "Trace", "trace", withRoom));
        }

        return new SplitPlan(parts);
    }

    private SplitPart Part(PartContent content, double dilution, string name, string fileName, bool withRoom)
    {
        var stock = _factory.Stock(content, dilution, name, fileName);
        var part = new SplitPart(name, stock, _factory.IsTraceOnly(content))
        {
            Dilution = dilution,
            Shares = content.Divided < 0 ? [] : [(_factory.Units[content.Divided].Name, content.ShareOf(content.Divided))],
            TooLittle = _factory.TooLittleToWeigh(content, dilution),
        };
        return withRoom ? WithRoom(part) : part;
    }

    /// <summary>How far it is to the first solid, by the worse of the coldest and the warmest that the model reaches.</summary>
    private SplitPart WithRoom(SplitPart part)
    {
        var span = _factory.Storage;
        var (at, worst) = new[] { span.Low.Celsius, span.High.Celsius }
            .Select(c => new Temperature(Math.Clamp(c, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius)))
            .Select(t => (At: t, Highest: HighestConcentration.Of(
                part.Stock.Chemistry.Mix, t, Dose.OneIn(part.Dilution), _factory.Limits.Deposits)))
            .MinBy(h => h.Highest.Factor ?? 0);
        return worst.StoppedBy.Count == 0 ? part : part with { ClearUpTo = worst.Dilution, StoppedBy = worst.StoppedBy[0], StoppedAt = at };
    }

    /// <summary>Each two main parts of the plan in one, at the dose that was wanted.</summary>
    private IEnumerable<RejectedPart> Fewer(Grouping grouping, double dilution)
    {
        for (var first = 0; first < grouping.Parts.Count; first++)
        {
            for (var second = first + 1; second < grouping.Parts.Count; second++)
            {
                var (a, b) = (grouping.Parts[first], grouping.Parts[second]);
                var whole = a.Whole | b.Whole;
                var together = a.Divided >= 0 && b.Divided >= 0
                    ? new PartContent(whole | 1 << a.Divided)
                    : new PartContent(whole, Math.Max(a.Divided, b.Divided), Math.Max(a.Tenths, b.Tenths));
                if ((Explain(together, dilution) ?? Wrong(together, dilution)) is { } rejected)
                {
                    yield return rejected with { Parts = [NameOf(first), NameOf(second)] };
                }
            }
        }
    }

    /// <summary>Each unit moved into each other main part.</summary>
    private IEnumerable<RejectedPart> Elsewhere(Grouping grouping)
    {
        for (var unit = 0; unit < _factory.Units.Count; unit++)
        {
            for (var i = 0; i < grouping.Parts.Count; i++)
            {
                var part = grouping.Parts[i];
                if (part.ShareOf(unit) > 0)
                {
                    continue;
                }

                var moved = part with { Whole = part.Whole | 1 << unit };
                if (!_judge.Judge(moved, grouping.Dilution).IsFit && Explain(moved, grouping.Dilution) is { } rejected)
                {
                    yield return rejected with { Parts = [NameOf(i)], Newcomer = _factory.Units[unit].Name };
                }
            }
        }
    }

    private static string NameOf(int part) => $"Part {(char)('A' + part)}";

    /// <summary>What cannot even stand alone.</summary>
    private IEnumerable<RejectedPart> Alone(double dilution) =>
        Enumerable.Range(0, _factory.Units.Count).Select(u => Explain(new PartContent(1 << u), dilution)).OfType<RejectedPart>();

    private RejectedPart? Explain(PartContent content, double dilution)
    {
        var obstacles = ObstacleFinder.In(_factory.Stock(content, dilution), content, dilution, _factory);
        return obstacles.Count == 0 ? null : Rejected(content, dilution, obstacles);
    }

    /// <summary>What is clear and a check calls wrong all the same.</summary>
    private RejectedPart? Wrong(PartContent content, double dilution) =>
        _judge.Wrong(content, dilution, _request.Today) is { } wrong ? Rejected(content, dilution, [wrong]) : null;

    private RejectedPart Rejected(PartContent content, double dilution, IReadOnlyList<Obstacle> obstacles) =>
        new([.. _factory.In(content).Select(u => u.Unit.Name)], dilution, obstacles, _factory.Stock(content, dilution));

    /// <summary>Number of ways to divide n things into k groups (Stirling number of the second kind).</summary>
    private static int Stirling(int n, int k) => k == 0 ? n == 0 ? 1 : 0 : n < k ? 0 : (k * Stirling(n - 1, k)) + Stirling(n - 1, k - 1);
}
