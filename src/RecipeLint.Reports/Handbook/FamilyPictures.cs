using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports.Pictures;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.People;
using RecipeLint.Rules.Preservation;

namespace RecipeLint.Reports.Handbook;

/// <summary>The picture of each lesson, computed from the files of the lesson; every point is an answer of the engine.</summary>
internal static class FamilyPictures
{
    private const string Key = "lesson";

    private static readonly string[] _besideMetals = ["C", "N", "S", "Cl"];

    private const double LowestPh = 2, HighestPh = 8, PhStep = 0.25;

    public static IReadOnlyList<Picture> Of(string family, Facts facts)
    {
        var stock = facts.Stocks.Count > 0 ? facts.Stocks[0] : null;
        return family switch
        {
            "documents" => One(Names(facts)),
            "plant" => One(facts.Recipes.Count == 0
                ? null
                : RecipePictures.Elements(facts.Recipes[0], ElementUncertainty.Of(facts.Recipes[0], facts.FindStock))),
            _ when stock is null => [],
            "precipitation" => One(StockPictures.Saturation(stock, Key)),
            "chelation" => [.. ChelatePictures.Of(
                stock.Chemistry.Mix, stock.Chemistry.Mixing.TellsPh ? stock.Chemistry.Mixing.Ph : null, stock.Stock.Name, Key).Take(1)],
            "preservation" => One(WholeAcid(stock)),
            "weighing" => One(Weights(stock)),
            "procedure" => One(StockPictures.MixingSolids(stock, Key)),
            "people" => One(Shares(stock)),
            _ => [],
        };
    }

    private static IReadOnlyList<Picture> One(Picture? picture) => picture is null ? [] : [picture];

    /// <summary>What the same weight brings for each substance that a name fits; null where every name fits one.</summary>
    public static Picture? Names(Facts facts)
    {
        foreach (var (stock, step) in facts.Workspace.Stocks.SelectMany(s => s.Steps.OfType<AddStep>().Select(a => (s, a))))
        {
            if (step is { Substance: null, Amount.Value: Portion.ByMass weighed } && stock.Makes is { } makes
                && facts.Workspace.Catalogue.Find(step.What.Value) is SubstanceLookup.Ambiguous several)
            {
                return Names(several.Candidates, weighed.Mass, makes.Value, step.What.Value);
            }
        }

        return null;
    }

    private static Picture Names(IReadOnlyList<Substance> candidates, Mass weighed, Volume makes, string name)
    {
        // Of several that differ alike the metal speaks: people count magnesium, not the sulfur beside it.
        var element = candidates.SelectMany(c => c.Content.Elements).Distinct().Where(e => e != new Element("H") && e != new Element("O"))
            .OrderBy(e => _besideMetals.Contains(e.Symbol))
            .ThenByDescending(e => candidates.Max(c => c.Content[e]) - candidates.Min(c => c.Content[e]))
            .First();
        var rows = candidates.Select(c => (c.Name, Grams: (weighed * new MassFraction(c.Content[element])) / makes)).ToList();
        var (least, most) = Scales.FromZero(rows.Select(r => r.Grams.GramsPerLitre));
        return new Picture(
            $"{Key}-names", $"What {Say.Grams(weighed.Grams)} of '{name}' can be",
            $"{element.Symbol} in g/L for each substance that the name fits, from {Say.Number(rows.Min(r => r.Grams.GramsPerLitre))} to "
                + $"{Say.Number(rows.Max(r => r.Grams.GramsPerLitre))}.",
            new Axis($"{element.Symbol}, g/L", least, most), new Axis("", -0.5, rows.Count - 0.5, Labels: [.. rows.Select(r => r.Name)]),
            new Table(
                [new("substance"), new($"{element.Symbol}, g/L", true)],
                [.. rows.Select(r => (IReadOnlyList<string>)[r.Name, Say.Number(r.Grams.GramsPerLitre)])]))
        {
            Boxes = [.. rows.Select((r, i) => new Box(0, r.Grams.GramsPerLitre, i - 0.36, i + 0.36, Ink.First))],
        };
    }

    /// <summary>How much of the preservative is whole acid over pH; null where none is computed.</summary>
    public static Picture? WholeAcid(StockFacts stock)
    {
        if (PreservativeJudgement.Of(stock, PreservationNeeds.Of(stock.Settings)).Acids is not [var acid, ..])
        {
            return null;
        }

        var dots = new List<Dot>();
        for (var ph = LowestPh; ph <= HighestPh; ph += PhStep)
        {
            dots.Add(new Dot(ph, acid.WholeAt(ph)));
        }

        var (least, most) = Scales.FromZero(dots.Select(d => d.Y).Append(acid.LeastMilligramsPerLitre));
        return new Picture(
            $"{Key}-acid", $"Whole {acid.Name} over pH: {stock.Stock.Name}",
            $"Of {Say.Number(acid.TotalMilligramsPerLitre)} mg/L {acid.Name} half is whole at pH {Cells.Ph(acid.ApparentPk)}; this bottle "
                + $"needs {Say.Number(acid.LeastMilligramsPerLitre)} mg/L whole and has {Say.Number(acid.WholeMilligramsPerLitre)} mg/L.",
            new Axis("pH", LowestPh, HighestPh), new Axis($"whole {acid.Name}, mg/L", least, most),
            new Table(
                [new("pH", true), new("whole, mg/L", true)],
                [.. dots.Select(d => (IReadOnlyList<string>)[Cells.Ph(d.X), Say.Number(d.Y)])]))
        {
            Curves = [new Curve(acid.Name, Ink.First, dots)],
            Marks =
            [
                new Mark(acid.LeastMilligramsPerLitre, false, "needed"),
                .. new[] { stock.Chemistry.Mixing }.Where(s => s.IsSolved).Select(s => new Mark(s.Ph, true, $"pH {Cells.Ph(s.Ph)}")),
            ],
        };
    }

    /// <summary>The doubt of a weighing over the weight, with the weights of the file; null without a scale.</summary>
    public static Picture? Weights(StockFacts stock)
    {
        var weighed = stock.Additions.Where(a => a is { Scale: not null, ThroughAliquot: false }).OrderBy(a => a.Mass.Grams).ToList();
        if (weighed.Count == 0)
        {
            return null;
        }

        var scale = weighed[0].Scale!;
        var most = scale.Capacity?.Grams ?? (10_000 * scale.Readability.Grams);
        var curve = new List<Dot>();
        for (var grams = 2 * scale.Readability.Grams; grams < most; grams *= 1.5)
        {
            curve.Add(new Dot(grams, Percent(scale, grams)));
        }

        var own = weighed.Where(a => a.Scale == scale).Select(a => new Dot(a.Mass.Grams, Percent(scale, a.Mass.Grams))).ToList();
        var across = Scales.Log(curve.Concat(own).Select(d => d.X));
        var up = Scales.Log(curve.Concat(own).Select(d => d.Y));
        return new Picture(
            $"{Key}-weights", $"The doubt of a weighing on '{scale.Name}'",
            $"Per cent of the weight (k = 2, about 95 %), readability {Say.Grams(scale.Readability.Grams)}; the dots are the weights of "
                + $"{stock.Stock.Name}.",
            new Axis("weight, g", across.Least, across.Most, IsLog: true), new Axis("± % of the weight", up.Least, up.Most, IsLog: true),
            new Table(
                [new("weight", true), new("± %", true), new("of")],
                [
                    .. weighed.Where(a => a.Scale == scale).Select(a => (IReadOnlyList<string>)
                        [Say.Grams(a.Mass.Grams), Say.Number(Percent(scale, a.Mass.Grams)), a.Substance.Name]),
                    .. curve.Select(d => (IReadOnlyList<string>)[Say.Grams(d.X), Say.Number(d.Y), ""]),
                ]))
        {
            Curves = [new Curve("this scale", Ink.First, curve), new Curve("weights of the file", Ink.Second, own, IsJoined: false)],
            Marks = [new Mark(5, false, "5 %")],
        };
    }

    private static double Percent(Scale scale, double grams)
    {
        var mass = new Mass(grams);
        return 200 * (new Weighing(scale, mass).Standard / mass);
    }

    /// <summary>What counts for each statement as a part of its limit; null where nothing reaches one.</summary>
    public static Picture? Shares(StockFacts stock)
    {
        var found = MixtureStatements.Of(stock);
        if (found.Count == 0)
        {
            return null;
        }

        var (least, most) = Scales.FromZero(found.Select(s => s.Percent / s.Limit).Append(1));
        return new Picture(
            $"{Key}-shares", $"What {stock.Stock.Name} carries as a mixture",
            "The share by mass that counts, as a part of the limit from which the statement holds: "
                + $"{Say.List(found.Select(s => s.Code))}. By the {MixtureStatements.SourceOf(found)}.",
            new Axis("times the limit", least, most), new Axis("", -0.5, found.Count - 0.5, Labels: [.. found.Select(s => s.Code)]),
            new Table(
                [new("statement"), new("what it says"), new("counts, %", true), new("limit, %", true), new("from")],
                [
                    .. found.Select(s => (IReadOnlyList<string>)
                        [s.Code, s.Words, Say.Number(s.Percent), Say.Number(s.Limit), Say.List(s.From)]),
                ]))
        {
            Boxes = [.. found.Select((s, i) => new Box(0, s.Percent / s.Limit, i - 0.36, i + 0.36, Ink.First))],
            Marks = [new Mark(1, true, "limit")],
        };
    }
}
