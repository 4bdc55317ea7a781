using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Slips;

/// <summary>
/// Every single slip that a stock can suffer: a line left out, doubled, halved or ten times off, another hydrate, strength or bag, two
/// weights exchanged, tap water instead of pure, filled over or short, the pH not set. That these are the usual ones is common practice, no
/// source.
/// </summary>
internal sealed class SlipList
{
    /// <summary>How far a volume is overshot or missed: a mark overlooked (common practice, no source).</summary>
    private static readonly double[] VolumeFactors = [1.1, 1.25, 0.9];

    /// <summary>A slipped decimal point is overlooked only in small weights, g.</summary>
    private const double SmallWeightGrams = 10;

    /// <summary>Bags that every shop has, and that get mixed up.</summary>
    private static readonly string[] CommonBags =
        ["calcium-nitrate-4h2o", "potassium-nitrate", "potassium-sulfate", "monopotassium-phosphate", "magnesium-sulfate-7h2o"];

    /// <summary>mol/L of all ions from which a water is none that stands for pure water (common practice, no source).</summary>
    private const double MineralMolesPerLitre = 0.002;

    /// <summary>A wrong bag is looked for from this weight on, g.</summary>
    private const double BagGrams = 1;

    /// <summary>
    /// Lines of a stock that slips are looked for in, counted from the first: the pairs of lines grow with their square, and a stock that a
    /// person mixes has fewer (common practice, no source).
    /// </summary>
    private const int MostLines = 30;

    private readonly Workspace _workspace;
    private readonly StockFacts _stock;
    private readonly List<Slip> _slips = [];

    private SlipList(Workspace workspace, StockFacts stock)
    {
        _workspace = workspace;
        _stock = stock;
    }

    /// <summary>All slips of a stock, in the order of its steps and of <see cref="SlipKind"/>; deterministic.</summary>
    public static IReadOnlyList<Slip> Of(Workspace workspace, StockFacts stock)
    {
        var list = new SlipList(workspace, stock);
        foreach (var step in stock.Stock.Steps.Where(s => !IsLine(s)).Concat(stock.Stock.Steps.Where(IsLine).Take(MostLines)))
        {
            list.OfStep(step);
        }

        list.Exchanges();
        list.Volumes();
        list.Water();
        return [.. list._slips.OrderBy(s => s.Kind)];
    }

    /// <summary>What is not looked at in a stock of very many lines; nothing where everything is.</summary>
    public static IReadOnlyList<string> LeftOut(StockFacts stock) => stock.Stock.Steps.Count(IsLine) is > MostLines and var lines
        ? [FormattableString.Invariant($"This stock has {lines} lines to weigh; slips are looked for in the first {MostLines} of them.")]
        : [];

    private static bool IsLine(Step step) => step is AddStep or AliquotStep;

    private void OfStep(Step step)
    {
        switch (step)
        {
            case AddStep { Substance: { } substance, Amount: not null } add when _stock.Additions.FirstOrDefault(a => a.Id == add.Id
                && !a.ThroughAliquot) is { } addition:
                Amounts(add, substance, addition);
                Hydrates(add, substance, addition);
                Strengths(add, substance, addition);
                Bags(add, substance, addition);
                break;
            case AliquotStep aliquot:
                Add(
                    $"{KindWord(SlipKind.LeftOut)}/{aliquot.Id}",
                    SlipKind.LeftOut,
                    $"no {aliquot.Id} (the measured part of another stock left out)",
                    Without(aliquot));
                if (aliquot.Amount is { } amount)
                {
                    Add(
                        $"{KindWord(SlipKind.Twice)}/{aliquot.Id}",
                        SlipKind.Twice,
                        $"twice the {aliquot.Id}",
                        With(aliquot, aliquot with { Amount = amount with { Value = amount.Value.Times(2) } }));
                }

                break;
            case AdjustStep adjust:
                Add($"ph-not-set/{adjust.Id}", SlipKind.PhNotSet, "the pH not set", Without(adjust));
                break;
            default:
                break;
        }
    }

    private void Amounts(AddStep add, Substance substance, AdditionFacts addition)
    {
        var name = substance.Name;
        Add($"{KindWord(SlipKind.LeftOut)}/{add.Id}", SlipKind.LeftOut, $"no {name} ({Amount(addition)} left out)", Without(add));
        Scaled(SlipKind.Twice, "twice", 2);
        Scaled(SlipKind.Half, "half", 0.5);
        if (addition.Mass.Grams <= SmallWeightGrams)
        {
            Scaled(SlipKind.TenTimes, "ten times", 10);
            Scaled(SlipKind.Tenth, "a tenth of", 0.1);
        }

        void Scaled(SlipKind kind, string words, double factor) => Add(
            $"{KindWord(kind)}/{add.Id}",
            kind,
            $"{words} the {name} ({Amount(addition, factor)} instead of {Amount(addition)})",
            With(add, add with { Amount = add.Amount! with { Value = add.Amount!.Value.Times(factor) } }));
    }

    private void Hydrates(AddStep add, Substance substance, AdditionFacts addition)
    {
        if (substance.HydrateFamily is not { } family)
        {
            return;
        }

        foreach (var other in _workspace.Catalogue.Substances
            .Where(s => s.HydrateFamily == family && s.Id != substance.Id && s.Form == PhysicalForm.Solid)
            .OrderBy(s => s.Id, StringComparer.Ordinal))
        {
            Add(
                $"other-hydrate/{add.Id}/{other.Id}",
                SlipKind.OtherHydrate,
                $"{other.Name} instead of {substance.Name} ({Amount(addition)})",
                With(add, Replaced(add, other, addition)));
        }
    }

    /// <summary>The same acid or lye of another strength, the same volume or weight.</summary>
    private void Strengths(AddStep add, Substance substance, AdditionFacts addition)
    {
        if (substance.Form != PhysicalForm.Liquid || substance.Strength.Value >= 1 || substance.Dissolves.Count == 0)
        {
            return;
        }

        var parts = substance.Dissolves.Select(d => d.Component).Order(StringComparer.Ordinal).ToList();
        foreach (var other in _workspace.Catalogue.Substances
            .Where(s => s.Form == PhysicalForm.Liquid && s.Kind == substance.Kind && s.Id != substance.Id && s.Strength.Value < 1
                && s.Dissolves.Select(d => d.Component).Order(StringComparer.Ordinal).SequenceEqual(parts))
            .OrderBy(s => s.Strength.Value)
            .ThenBy(s => s.Id, StringComparer.Ordinal))
        {
            Add(
                $"other-strength/{add.Id}/{other.Id}",
                SlipKind.OtherStrength,
                $"{other.Name} instead of {substance.Name} ({Amount(addition)})",
                With(add, Replaced(add, other, addition)));
        }
    }

    /// <summary>A bag or bottle that looks or is called like the right one, and the bags that every shop has.</summary>
    private void Bags(AddStep add, Substance substance, AdditionFacts addition)
    {
        var bags = ShelfNeighbours.Of(substance.Id)
            .Select(_workspace.Catalogue.ById)
            .OfType<Substance>()
            .Where(s => s.Form == substance.Form);
        if (substance.Kind == SubstanceKind.Salt && substance.Form == PhysicalForm.Solid && addition.Mass.Grams >= BagGrams)
        {
            bags = bags.Concat(_stock.Additions.Where(a => !a.ThroughAliquot
                && a.Substance.Kind == SubstanceKind.Salt
                && a.Substance.Form == PhysicalForm.Solid)
                    .Select(a => a.Substance))
                .Concat(CommonBags.Select(_workspace.Catalogue.ById).OfType<Substance>());
        }

        foreach (var other in bags
            .Where(s => s.Id != substance.Id && (s.HydrateFamily is null || s.HydrateFamily != substance.HydrateFamily))
            .DistinctBy(s => s.Id)
            .OrderBy(s => s.Id, StringComparer.Ordinal))
        {
            Add(
                $"other-substance/{add.Id}/{other.Id}",
                SlipKind.OtherSubstance,
                $"{other.Name} instead of {substance.Name} ({Amount(addition)})",
                With(add, Replaced(add, other, addition)));
        }
    }

    /// <summary>The weights of two solids exchanged.</summary>
    private void Exchanges()
    {
        var solids = _stock.Stock.Steps.OfType<AddStep>()
            .Take(MostLines)
            .Where(s => s.Substance?.Form == PhysicalForm.Solid && s.Amount is not null)
            .Select(s => (Step: s, Addition: _stock.Additions.FirstOrDefault(a => a.Id == s.Id && !a.ThroughAliquot)))
            .Where(s => s.Addition is not null)
            .ToList();
        for (var i = 0; i < solids.Count; i++)
        {
            for (var j = i + 1; j < solids.Count; j++)
            {
                var (a, b) = (solids[i], solids[j]);
                if (a.Step.Substance!.Id == b.Step.Substance!.Id || a.Addition!.Mass == b.Addition!.Mass)
                {
                    continue;
                }

                Add(
                    $"exchanged/{a.Step.Id}/{b.Step.Id}",
                    SlipKind.Exchanged,
                    $"the weights of {a.Step.Substance.Name} and {b.Step.Substance.Name} exchanged ({Amount(a.Addition)} and "
                        + $"{Amount(b.Addition)})",
                    With(With(_stock.Stock, a.Step, Weighed(a.Step, b.Addition.Mass)), b.Step, Weighed(b.Step, a.Addition.Mass)));
            }
        }
    }

    private void Volumes()
    {
        var makes = _stock.Stock.Makes!;
        var steps = _stock.Stock.Steps.Select(s => s is AddStep { Amount: { } amount } add
            && _stock.Additions.FirstOrDefault(a => a.Id == add.Id) is { } addition
            ? add with { Amount = amount with { Value = amount.Value.Fixed(addition) } }
            : s).ToList();
        foreach (var factor in VolumeFactors)
        {
            var to = makes.Value * factor;
            var changed = _stock.Stock with
            {
                Makes = makes with { Value = to },
                Steps = [.. steps.Select(s => s is TopUpStep { To: { } mark } top
                    ? top with { To = mark with { Value = mark.Value * factor } }
                    : s)],
            };
            var kind = factor > 1 ? SlipKind.VolumeOver : SlipKind.VolumeShort;
            Add(
                string.Create(CultureInfo.InvariantCulture, $"{KindWord(kind)}/{factor}"),
                kind,
                $"filled up to {Litres(to)} instead of {Litres(makes.Value)}",
                changed);
        }
    }

    private void Water()
    {
        var (tap, workspace) = TapWater.Of(_workspace);
        var waters = _stock.Stock.Steps.Where(s => s is PourStep or TopUpStep).ToList();
        if (_stock.Waters.Any(w => w.ComponentMoles.Values.Sum() / Math.Max(w.Volume.Litres, 1e-9) > MineralMolesPerLitre))
        {
            // Hard water is what the recipe wants: the slip is pure water.
            var pure = new WaterReference("distilled", null);
            Pour("distilled water instead of the water named", pure, _workspace);
            return;
        }

        Pour(
            tap.Assumed ? "tap water (medium hard, assumed) instead of pure water" : $"'{tap.Name}' instead of pure water",
            tap.Reference,
            workspace);

        void Pour(string text, WaterReference reference, Workspace inside)
        {
            var steps = waters.Count == 0
                ? [.. _stock.Stock.Steps, new TopUpStep("water", _stock.Stock.Place)
                {
                    To = _stock.Stock.Makes,
                    Of = new Located<WaterReference>(reference, _stock.Stock.Place),
                }]
                : _stock.Stock.Steps.Select(s => s switch
                {
                    PourStep pour => pour with { Of = new Located<WaterReference>(reference, pour.Place) },
                    TopUpStep top => (Step)(top with { Of = new Located<WaterReference>(reference, top.Place) }),
                    _ => s,
                }).ToList();
            if (Slip.Of("other-water", SlipKind.OtherWater, text, inside, _stock.Stock with { Steps = steps }) is { } slip)
            {
                _slips.Add(slip);
            }
        }
    }

    private void Add(string id, SlipKind kind, string text, StockDocument changed)
    {
        if (Slip.Of(id, kind, text, _workspace, changed) is { } slip)
        {
            _slips.Add(slip);
        }
    }

    private StockDocument Without(Step step) => _stock.Stock with { Steps = [.. _stock.Stock.Steps.Where(s => s != step)] };

    private StockDocument With(Step step, Step changed) => With(_stock.Stock, step, changed);

    private static StockDocument With(StockDocument stock, Step step, Step changed) =>
        stock with { Steps = [.. stock.Steps.Select(s => s.Id == step.Id ? changed : s)] };

    /// <summary>Another substance, poured to the same volume or weighed to the same weight; its assay is not known.</summary>
    private static AddStep Replaced(AddStep add, Substance other, AdditionFacts addition) => add with
    {
        Substance = other,
        Assay = null,
        Amount = add.Amount! with
        {
            Value = addition.Volume is { } volume && other.Form == PhysicalForm.Liquid
                ? new Portion.ByVolume(volume)
                : new Portion.ByMass(addition.Mass),
        },
    };

    private static AddStep Weighed(AddStep add, Mass mass) => add with { Amount = add.Amount! with { Value = new Portion.ByMass(mass) } };

    private static string Amount(AdditionFacts addition, double factor = 1) =>
        addition.Volume is { } volume ? Litres(volume * factor) : Grams(addition.Mass * factor);

    private static string Grams(Mass mass) => mass.Grams < 0.1
        ? string.Create(CultureInfo.InvariantCulture, $"{mass.Grams * 1000:0.###} mg")
        : string.Create(CultureInfo.InvariantCulture, $"{mass.Grams:0.###} g");

    private static string Litres(Volume volume) => volume.Litres < 1
        ? string.Create(CultureInfo.InvariantCulture, $"{volume.Millilitres:0.##} mL")
        : string.Create(CultureInfo.InvariantCulture, $"{volume.Litres:0.###} L");

    private static string KindWord(SlipKind kind) => kind switch
    {
        SlipKind.Twice => "twice",
        SlipKind.Half => "half",
        SlipKind.TenTimes => "ten-times",
        SlipKind.Tenth => "tenth",
        SlipKind.VolumeOver => "volume-over",
        SlipKind.VolumeShort => "volume-short",
        _ => "left-out",
    };
}
