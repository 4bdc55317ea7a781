using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Pictures;

/// <summary>Pictures of what the plants get.</summary>
public static class RecipePictures
{
    /// <summary>An ion with less of the charge than this is counted among the others.</summary>
    private const double NotableShare = 0.02;

    public static IReadOnlyList<Picture> Of(Facts facts, RecipeFacts recipe)
    {
        var uncertainty = ElementUncertainty.Of(recipe, facts.FindStock);
        var chemistry = recipe.Chemistry;
        return
        [
            .. new[] { Elements(recipe, uncertainty), Doubt(uncertainty), Ions(recipe), TankPh(recipe), TankEc(recipe) }.OfType<Picture>(),
            .. ChelatePictures.Of(
                chemistry.AdjustedMix ?? chemistry.Mix, chemistry.Final.TellsPh ? chemistry.Final.Ph : null, recipe.Recipe.Name, "recipe"),
        ];
    }

    /// <summary>Each element with its uncertainty against the usual range; null without elements.</summary>
    public static Picture? Elements(RecipeFacts recipe, UncertaintyFacts uncertainty)
    {
        var shown = recipe.Elements.Values
            .Where(e => e.Concentration.MilligramsPerLitre > 0 && e.Key != NutrientKeys.Organic)
            .OrderByDescending(e => e.Concentration)
            .ToList();
        if (shown.Count == 0)
        {
            return null;
        }

        var rows = shown.Select(
            (e, i) => (Row: i, e.Key, Milligrams: e.Concentration.MilligramsPerLitre, Range: recipe.Profile.Find(e.Key))).ToList();
        var ends = rows.Select(r => r.Milligrams)
            .Concat(rows.SelectMany(r => new[] { r.Range?.SufficientLow, r.Range?.SufficientHigh }).OfType<double>());
        var (least, most) = Scales.Log(ends);
        var outside = rows.Where(r => r.Range is not null && RangeBar.Words(r.Milligrams, r.Range) != "inside").Select(r => r.Key).ToList();
        return new Picture(
            "recipe-elements", "Elements against the profile",
            $"Each element in mg/L with its uncertainty, and the usual range of the profile '{recipe.Profile.Name}' as a band. "
                + (outside.Count == 0 ? "All are inside their range." : $"Outside their range: {Say.List(outside)}."),
            new Axis("mg/L", least, most, IsLog: true),
            new Axis("", -0.5, rows.Count - 0.5, Labels: [.. rows.Select(r => r.Key)]),
            new Table(
                [new("element"), new("mg/L", true), new("± mg/L", true), new("usual mg/L", true), new("stands")],
                [
                    .. rows.Select(r => (IReadOnlyList<string>)
                    [
                        r.Key, Say.Number(r.Milligrams),
                        Cells.Number(uncertainty.Elements.GetValueOrDefault(r.Key)?.Expanded.MilligramsPerLitre),
                        Cells.Range(r.Range?.SufficientLow, r.Range?.SufficientHigh),
                        r.Range is null ? "no range" : RangeBar.Words(r.Milligrams, r.Range),
                    ]),
                ]))
        {
            Boxes =
            [
                .. rows.Where(r => r.Range?.SufficientHigh is not null).Select(r => new Box(
                    Math.Max(r.Range!.SufficientLow ?? least, least), r.Range.SufficientHigh!.Value, r.Row - 0.36, r.Row + 0.36,
                    Ink.Usual)),
            ],
            Curves =
            [
                new Curve(
                    "", Ink.First,
                    [.. rows.Select(r => new Dot(
                        r.Milligrams, r.Row, uncertainty.Elements.GetValueOrDefault(r.Key)?.Expanded.MilligramsPerLitre ?? 0))],
                    IsJoined: false),
            ],
        };
    }

    /// <summary>How well each element is known and what most of that comes from; null where nothing is known of it.</summary>
    public static Picture? Doubt(UncertaintyFacts uncertainty)
    {
        var rows = uncertainty.Elements.Values.Where(e => e.Shares.Count > 0).OrderByDescending(e => e.RelativeStandard).ToList();
        if (rows.Count == 0)
        {
            return null;
        }

        var (least, most) = Scales.FromZero(rows.Select(r => 100 * r.RelativeExpanded));
        return new Picture(
            "recipe-doubt", "What the uncertainty comes from",
            "The expanded uncertainty (k = 2, about 95 %) of each element; the framed part is the share of its largest source, which the "
                + "table names. "
                + $"Most often that is {rows.GroupBy(r => r.Shares[0].Source.Name).OrderByDescending(g => g.Count()).First().Key}.",
            new Axis("± % of the element", least, most), new Axis("", -0.5, rows.Count - 0.5, Labels: [.. rows.Select(r => r.Key)]),
            new Table(
                [
                    new("element"), new("± %", true), new("largest source"), new("its share %", true), new("next source"),
                    new("its share %", true),
                ],
                [
                    .. rows.Select(r => (IReadOnlyList<string>)
                    [
                        r.Key, Say.Number(100 * r.RelativeExpanded), r.Shares[0].Source.Name, Say.Number(100 * r.Shares[0].Fraction),
                        r.Shares.Count > 1 ? r.Shares[1].Source.Name : "", r.Shares.Count > 1 ? Say.Number(100 * r.Shares[1].Fraction) : "",
                    ]),
                ]))
        {
            Boxes =
            [
                .. rows.SelectMany((r, i) => new[]
                {
                    new Box(0, 100 * r.RelativeExpanded, i - 0.36, i + 0.36, Ink.Usual),
                    new Box(0, 100 * r.RelativeExpanded * r.Shares[0].Fraction, i - 0.36, i + 0.36, Ink.First),
                }),
            ],
        };
    }

    /// <summary>Cations and anions laid end to end; null without ions.</summary>
    public static Picture? Ions(RecipeFacts recipe)
    {
        var charge = recipe.Charge;
        var (cations, anions) = (charge.Cations.MilliequivalentsPerLitre, Math.Abs(charge.Anions.MilliequivalentsPerLitre));
        if (!(cations > 0) && !(anions > 0))
        {
            return null;
        }

        var (least, most) = Scales.FromZero([cations, anions]);
        var rows = recipe.Ions.Where(i => i.Charge != 0 && i.Concentration.MolesPerLitre > 0)
            .OrderBy(i => -Math.Sign(i.Charge))
            .ThenByDescending(i => Math.Abs(i.ChargeConcentration.EquivalentsPerLitre))
            .ToList();
        return new Picture(
            "recipe-ions", "Ions in charge",
            $"Cations {Say.Number(cations)} meq/L and anions {Say.Number(anions)} meq/L laid end to end, the largest first; what is "
                + "missing on one side is carried by "
                + "hydrogen and hydroxide ions or left open by a label or an analysis.",
            new Axis("meq/L", least, most), new Axis("", -0.5, 1.5, Labels: ["cations", "anions"]),
            new Table(
                [new("ion"), new("side"), new("meq/L", true)],
                [
                    .. rows.Select(i => (IReadOnlyList<string>)
                        [
                            RecipeSheet.Ion(i.Name), i.Charge > 0 ? "cations" : "anions",
                            Say.Number(Math.Abs(i.ChargeConcentration.MilliequivalentsPerLitre)),
                        ]),
                    ["together", "cations", Say.Number(cations)],
                    ["together", "anions", Say.Number(anions)],
                ]))
        {
            Boxes = [.. Laid(rows.Where(i => i.Charge > 0), 0, cations), .. Laid(rows.Where(i => i.Charge < 0), 1, anions)],
        };
    }

    private static IEnumerable<Box> Laid(IEnumerable<IonFact> ions, int row, double all)
    {
        double at = 0;
        var index = 0;
        foreach (var ion in ions)
        {
            var width = Math.Abs(ion.ChargeConcentration.MilliequivalentsPerLitre);
            var name = RecipeSheet.Ion(ion.Name).Split(',')[0];
            yield return new Box(
                at, at + width, row - 0.36, row + 0.36, index % 2 == 0 ? Ink.Usual : Ink.Grid, width > 4 * NotableShare * all ? name : "");
            at += width;
            index++;
        }
    }

    /// <summary>The pH of the tank as one dose after the other goes in; null where it cannot be computed.</summary>
    public static Picture? TankPh(RecipeFacts recipe)
    {
        var steps = TankFilling.Of(recipe);
        var doubt = TankWindow.SlackOf(ReadingKind.Ph, 0);
        var dots = steps.Where(s => s.State.TellsPh).Select(s => new Dot(s.Index, s.State.Ph, DoubtUp: doubt)).ToList();
        if (dots.Count < 2 || !recipe.Chemistry.Tank.TellsPh)
        {
            return null;
        }

        var (least, most) = Scales.Around(dots.SelectMany(d => new[] { d.Y - d.DoubtUp, d.Y + d.DoubtUp }));
        return new Picture(
            "recipe-tank-ph", "pH of the tank while dosing",
            $"The pH after the water and after each dose, closed to the air, at 20 °C: from {Cells.Ph(dots[0].Y)} to "
                + $"{Cells.Ph(dots[^1].Y)}. The bars, ± {Say.Number(doubt)}, say how far a sound tank may be from it.",
            Across(steps), new Axis("pH", least, most), Filling(steps))
        { Curves = [new Curve("pH", Ink.First, dots)] };
    }

    /// <summary>The EC of the tank as one dose after the other goes in; null where it cannot be computed.</summary>
    public static Picture? TankEc(RecipeFacts recipe)
    {
        var steps = TankFilling.Of(recipe);
        var dots = steps.Where(s => s.State.Conductivity.At25 is not null)
            .Select(s => (s.Index, Ec: s.State.Conductivity.At25!.Value.MillisiemensPerCentimetre))
            .Select(s => new Dot(s.Index, s.Ec, DoubtUp: TankWindow.SlackOf(ReadingKind.Conductivity, s.Ec)))
            .ToList();
        if (dots.Count < 2)
        {
            return null;
        }

        var (least, most) = Scales.FromZero(dots.Select(d => d.Y + d.DoubtUp));
        return new Picture(
            "recipe-tank-ec", "EC of the tank while dosing",
            $"The EC at 25 °C after the water and after each dose: from {Say.Number(dots[0].Y)} to {Say.Number(dots[^1].Y)} mS/cm. "
                + $"The bars, ± {Say.Percent(TankWindow.SlackOf(ReadingKind.Conductivity, 1))}, say how far a sound tank may be from it.",
            Across(steps), new Axis("EC, mS/cm", least, most), Filling(steps))
        { Curves = [new Curve("EC", Ink.Second, dots)] };
    }

    private static Axis Across(IReadOnlyList<TankStep> steps) =>
        new("after", -0.5, steps.Count - 0.5, Labels: [.. steps.Select(s => s.Short)]);

    private static Table Filling(IReadOnlyList<TankStep> steps) => new(
        [new("after"), new("L in the tank", true), new("pH", true), new("EC mS/cm", true), new("falls out")],
        [
            .. steps.Select(s => (IReadOnlyList<string>)
            [
                s.Name, Say.Number(s.Volume.Litres), s.State.IsSolved ? Cells.Ph(s.State.Ph) : "",
                Cells.Number(s.State.Conductivity.At25?.MillisiemensPerCentimetre),
                s.State.Failure ?? Say.List(s.State.Deposits
                    .Where(d => !d.IsTrace)
                    .Select(d => $"{Say.Grams(d.Mass.GramsPerLitre)}/L of {SolidWords.Called(d.Solid)}")),
            ]),
        ]);
}

/// <summary>The tank after the water, or after one more dose.</summary>
/// <param name="Index">From 0.</param>
/// <param name="Short">For an axis.</param>
public sealed record TankStep(int Index, string Name, string Short, Volume Volume, SolutionState State);

/// <summary>A tank that is filled in the order of the file: water first, then each dose.</summary>
public static class TankFilling
{
    public static IReadOnlyList<TankStep> Of(RecipeFacts recipe)
    {
        var steps = new List<TankStep>();
        var moles = recipe.Water?.ComponentMoles ?? ComponentMoles.Empty;
        var litres = recipe.WaterVolume.Litres;
        Add($"water '{recipe.Water?.Name ?? "distilled"}'", "water");
        foreach (var dose in recipe.Doses)
        {
            moles = ComponentMoles.Sum([moles, dose.ComponentMoles]);
            litres += dose.Volume.Litres;
            Add(dose.Stock?.Stock.Name ?? dose.Direct?.Substance.Name ?? dose.Id, dose.Id);
        }

        return steps;

        void Add(string name, string label)
        {
            var volume = new Volume(litres);
            var request = new StateRequest(StateMoment.Tank, new Temperature(SolutionMix.FilledAtCelsius), false, []);
            steps.Add(new TankStep(
                steps.Count, name, label.Length > 12 ? label[..11] + "…" : label, volume,
                StateSolver.Solve(SolutionMix.Of(moles, volume), request)));
        }
    }
}
