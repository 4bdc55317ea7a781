using System.Text.RegularExpressions;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Plant;

namespace RecipeLint.Reports.Show;

/// <summary>What the plants get. Every figure is one of the facts; what is wrong with them is for the rules to say.</summary>
public static partial class RecipeSheet
{
    /// <summary>mol/L; less than this is what rounding leaves of nothing.</summary>
    private const double LeastIon = 1e-12;

    private static readonly string[] NitrogenForms = [NutrientKeys.Nitrate, NutrientKeys.Ammonium, NutrientKeys.Urea, NutrientKeys.Organic];

    /// <param name="facts">Of the run, for stocks that stocks are made of.</param>
    /// <param name="mixings">So many times each of its stocks is mixed in thought; 0 for not at all.</param>
    public static Sheet Of(Facts facts, RecipeFacts recipe, int mixings = 0)
    {
        var uncertainty = ElementUncertainty.Of(recipe, facts.FindStock);
        return new Sheet("recipe", recipe.Recipe.Name, recipe.Recipe.File,
        [
            .. new[]
            {
                new SheetSection("about", "About", About(recipe)),
                Elements(recipe, uncertainty),
                Nitrogen(recipe),
                Solution(recipe),
                Held(recipe),
                Ions(recipe),
                Ratios(recipe),
                Sources(recipe),
                Doubt(uncertainty),
                new SheetSection("mixings", "Its stocks, mixed many times", mixings == 0 ? [] : TrialWords.Of(
                [
                    .. recipe.Doses.Select(d => d.Stock).OfType<StockFacts>().DistinctBy(s => s.Stock.File)
                        .Select(s => (ShopTrials.Of(facts, s, mixings), s)),
                ])),
                CostSections.Of(recipe),
                HouseRuleSection.Of(facts, recipe.Recipe.File, HouseRuleScope.Recipe),
                new SheetSection("assumed", "Assumed", Assumed(recipe, uncertainty)),
            }.Where(s => !s.IsEmpty),
        ]);
    }

    private static List<string> About(RecipeFacts recipe)
    {
        var says = new List<string>
        {
            $"{Say.Litres(recipe.FinalVolume.Litres)} of solution: {Say.Litres(recipe.WaterVolume.Litres)} of "
                + $"'{recipe.Water?.Name ?? "distilled"}' and {Say.List(recipe.Doses.Select(Dose).DefaultIfEmpty("nothing else"))}.",
            recipe.Recipe.IsForLeaves
                ? "Sprayed onto leaves: the limits of roots do not hold, and only what burns leaves or people is judged."
                : "Held against the profile "
                + $"'{recipe.Profile.Name}'{(recipe.Profile.Stage == "any" ? "" : $", stage '{recipe.Profile.Stage}'")}.",
        };
        if (recipe.Adjustment is { } adjustment)
        {
            says.Add(adjustment is { Reagent: { } reagent, Amount: { } amount }
                ? $"Set to pH {Say.Number(adjustment.TargetPh ?? double.NaN)} with {Say.Grams(amount.Grams)} of {reagent.Name}"
                    + $"{(adjustment.PhBefore is { } before ? $", from pH {Cells.Ph(before)}" : "")}."
                : $"The pH is to be set, but how much that takes is not known: {adjustment.Reason}");
        }

        if (!recipe.IsComplete)
        {
            says.Add("Something in the files could not be read: figures are computed without it. 'recipelint check' says what.");
        }

        return says;
    }

    private static string Dose(DoseFacts dose) => dose switch
    {
        { Direct: { } direct } => $"{Say.Grams(direct.Mass.Grams)} of {direct.Substance.Name}",
        { Stock: { } stock } => $"{Say.Litres(dose.Volume.Litres)} of '{stock.Stock.Name}'",
        _ => $"{Say.Litres(dose.Volume.Litres)} of '{dose.Id}', which could not be read",
    };

    private static SheetSection Elements(RecipeFacts recipe, UncertaintyFacts uncertainty)
    {
        var shown = recipe.Elements.Values.Where(e => !NitrogenForms.Contains(e.Key)).OrderByDescending(e => e.Concentration).ToList();
        var table = new Table(
            [
                new("element"), new("mg/L", true), new("± mg/L", true), new("mmol/L", true), new("usual mg/L", true),
                new("against the range", IsPicture: true), new("stands"),
            ],
            [
                .. shown.Select(e =>
                {
                    var value = e.Concentration.MilligramsPerLitre;
                    var range = recipe.Profile.Find(e.Key);
                    return (IReadOnlyList<string>)
                    [
                        e.Key,
                        Say.Number(value),
                        Cells.Number(uncertainty.Elements.GetValueOrDefault(e.Key)?.Expanded.MilligramsPerLitre),
                        Say.Number(e.Molar.MillimolesPerLitre),
                        Cells.Range(range?.SufficientLow, range?.SufficientHigh),
                        RangeBar.Of(value, range?.SufficientLow, range?.SufficientHigh),
                        range is null ? "no range" : RangeBar.Words(value, range),
                    ];
                }),
            ]);
        var missing = recipe.Profile.Elements
            .Where(r => r.SufficientLow > 0 && !r.Key.Contains('-', StringComparison.Ordinal) && !recipe.Elements.ContainsKey(r.Key))
            .Select(r => r.Key)
            .ToList();
        return new SheetSection(
            "elements", "Elements", [], table,
            [
                "± is the expanded uncertainty (k = 2, about 95 %) with the shop's scales and measures.",
                .. missing.Count == 0
                    ? Array.Empty<string>()
                    : [$"The profile also names {Say.List(missing)}, of which nothing is put in."],
            ]);
    }

    private static SheetSection Nitrogen(RecipeFacts recipe)
    {
        var all = recipe.MilligramsPerLitre(NutrientKeys.Nitrogen);
        var rows = NitrogenForms.Where(f => recipe.MilligramsPerLitre(f) > 0).Select(f => (IReadOnlyList<string>)
        [
            f,
            Say.Number(recipe.MilligramsPerLitre(f)),
            f == NutrientKeys.Organic || !(all > 0) ? "" : Say.Number(100 * recipe.MilligramsPerLitre(f) / all),
        ]).ToList();
        return new SheetSection(
            "nitrogen", "Nitrogen by form", [], new Table([new("form"), new("mg/L", true), new("% of N", true)], rows),
            rows.Exists(r => r[0] == NutrientKeys.Organic)
                ? ["organic-N sits in chelating agents and the like, feeds hardly any plant and is not counted in N."]
                : []);
    }

    private static SheetSection Solution(RecipeFacts recipe)
    {
        var final = recipe.Chemistry.Final;
        if (!final.IsSolved)
        {
            return new SheetSection("solution", "Solution", [$"pH and EC are not known: {final.Failure}"]);
        }

        var profile = recipe.Profile;
        var rows = new List<IReadOnlyList<string>>
        {
            new[]
            {
                "EC at 25 °C, mS/cm", Cells.Number(final.Conductivity.At25?.MillisiemensPerCentimetre),
                Cells.Range(profile.Ec?.Low, profile.Ec?.High), Stands(final.Conductivity.At25?.MillisiemensPerCentimetre, profile.Ec),
                final.Conductivity.NotGivenBecause ?? "",
            },
            new[]
            {
                "pH", Cells.Ph(final), Cells.Range(profile.Ph?.Low, profile.Ph?.High),
                profile.Ph is { } usual && final.PhIsKnown ? RangeBar.PhWords(final.Ph, usual.Low, usual.High) : "",
                recipe.Chemistry.TankAdjusted is null ? "at rest with the air" : "adjusted, at rest with the air",
            },
            new[] { "alkalinity left, meq/L", Cells.Alkalinity(final.CarbonateAlkalinity.MilliequivalentsPerLitre), "", "", "" },
            new[] { "osmotic potential, MPa", Cells.Number(final.OsmoticPotentialMPa), "", "", "" },
        };
        if (recipe.Chemistry.Tank is { IsSolved: true } tank)
        {
            rows.Insert(2, ["pH as poured together", Cells.Ph(tank.Ph), "", "", "closed to the air"]);
        }

        return new SheetSection(
            "solution", "Solution", [],
            new Table(
                [new("what"), new("value", true), new("usual", true), new("stands"), new("remark")],
                [.. rows.Where(r => r[1].Length > 0 || r[4].Length > 0)]),
            [.. final.Validity.Reasons]);
    }

    /// <summary>
    /// What it takes to hold the pH the recipe sets, else the middle of what the crop likes, and what that does.
    /// </summary>
    private static SheetSection Held(RecipeFacts recipe)
    {
        var wanted = recipe.Adjustment?.TargetPh ?? (recipe.Profile.Ph is { } usual ? (usual.Low + usual.High) / 2 : null);
        if (wanted is not { } ph || HeldTank.Of(recipe.Chemistry.Mix, ph) is not { } held)
        {
            return new SheetSection("held", "Held at its pH", []);
        }

        static string Reagent(double dosed) => dosed < 0 ? "alkali" : "acid";
        var rows = new List<IReadOnlyList<string>>
        {
            new[]
            {
                $"strong {Reagent(held.DosedInAll)} in all, mmol/L", Say.Number(Math.Abs(Rounded(held.DosedInAll))),
                $"as it is poured together {Say.Number(Math.Abs(Rounded(held.DosedAtOnce)))} mmol/L of {Reagent(held.DosedAtOnce)}",
            },
            new[] { "alkalinity left, meq/L", Cells.Alkalinity(held.State.CarbonateAlkalinity.MilliequivalentsPerLitre), "" },
        };
        if (held.DriftsTo is { } drifted)
        {
            rows.Add(["pH it drifts to", Cells.Ph(drifted), "set once as it is poured together and left alone in the air"]);
        }

        if (held.AmmoniaShare is { } ammonia)
        {
            rows.Add(["ammonium that stands as ammonia, %", Say.Number(100 * ammonia), "ammonia harms roots and leaves with the air"]);
        }

        return new SheetSection(
            "held", $"Held at pH {Say.Number(ph)}", [],
            new Table([new("what"), new("value", true), new("remark")], rows),
            "At 20 °C, at rest with the air, before anything is dosed; what the acid or alkali brings besides is not counted.");
    }

    private static string Stands(double? value, (double Low, double High)? range) =>
        value is { } known && range is { } usual ? RangeBar.Words(known, usual.Low, usual.High) : "";

    private static SheetSection Ions(RecipeFacts recipe)
    {
        var ions = recipe.Ions.Where(i => i.Charge != 0 && i.Concentration.MolesPerLitre > LeastIon)
            .OrderByDescending(i => Math.Sign(i.Charge))
            .ThenByDescending(i => Math.Abs(i.ChargeConcentration.EquivalentsPerLitre))
            .ToList();
        var table = new Table(
            [new("ion"), new("mmol/L", true), new("cations meq/L", true), new("anions meq/L", true)],
            [
                .. ions.Select(i => (IReadOnlyList<string>)
                [
                    Ion(i.Name),
                    Say.Number(i.Concentration.MillimolesPerLitre),
                    i.Charge > 0 ? Say.Number(i.ChargeConcentration.MilliequivalentsPerLitre) : "",
                    i.Charge < 0 ? Say.Number(-i.ChargeConcentration.MilliequivalentsPerLitre) : "",
                ]),
                [
                    "together", "", Say.Number(recipe.Charge.Cations.MilliequivalentsPerLitre),
                    Say.Number(Math.Abs(recipe.Charge.Anions.MilliequivalentsPerLitre)),
                ],
            ]);
        return new SheetSection(
            "ions", "Ions", [], table,
            $"The difference of {Say.Number(recipe.Charge.Unassigned.MilliequivalentsPerLitre)} meq/L is carried by hydrogen and "
                + "hydroxide ions "
                + "and by what an analysis or a label leaves open "
                + $"({Say.Number(Rounded(recipe.Charge.Unexplained.MilliequivalentsPerLitre))} meq/L of it).");
    }

    /// <summary>What rounding leaves of nothing is nothing.</summary>
    private static double Rounded(double milliequivalents) => Math.Round(milliequivalents, 6);

    /// <summary>An ion with its charge as the trade writes it, and its word where it has one: "Ca2+, calcium".</summary>
    internal static string Ion(string name)
    {
        var plain = name.StartsWith("inert:", StringComparison.Ordinal) ? name["inert:".Length..] : name;
        var written = Charge().Replace(plain, m => ChargeOf(m, plain));
        return IonWords.Of(plain) is { Length: > 0 } word && word != plain ? $"{written}, {word}" : written;
    }

    /// <summary>"2+" behind an element, " 2-" behind a count: SO4 2- is no SO42-.</summary>
    private static string ChargeOf(Match charge, string name)
    {
        var (sign, count) = (charge.Groups[1].Value, charge.Groups[2].Value);
        return count == "1" ? sign : (char.IsAsciiDigit(name[charge.Index - 1]) ? " " : "") + count + sign;
    }

    [GeneratedRegex(@"(?<=\w)([+-])([1-9])(?=$|·)")]
    private static partial Regex Charge();

    private static SheetSection Ratios(RecipeFacts recipe) => new(
        "ratios", "Ratios", [],
        new Table(
            [new("ratio"), new("by"), new("value", true), new("usual", true), new("stands")],
            [
                .. recipe.Profile.Ratios
                    .Select(r => (Range: r, Value: ElementRatio.Of(recipe, r)))
                    .Where(r => r.Value is not null)
                    .Select(r => (IReadOnlyList<string>)
                    [
                        $"{r.Range.Numerator} : {r.Range.Denominator}", r.Range.Basis, Say.Number(r.Value!.Value),
                        Cells.Range(r.Range.Low, r.Range.High),
                        RangeBar.Words(r.Value.Value, r.Range.Low, r.Range.High),
                    ]),
            ]));

    /// <summary>Who brings what: a column for each stock, the water and the reagent.</summary>
    private static SheetSection Sources(RecipeFacts recipe)
    {
        var sources = recipe.Doses.Select(d => d.Id)
            .Concat(recipe.Elements.Values.SelectMany(e => e.Contributions.Select(c => c.Source)))
            .Distinct(StringComparer.Ordinal)
            .ToList();
        var rows = recipe.Elements.Values.Where(e => !NitrogenForms.Contains(e.Key)).OrderByDescending(e => e.Concentration).Select(e =>
            (IReadOnlyList<string>)
            [
                e.Key,
                .. sources.Select(s =>
                {
                    var milligrams = e.Contributions.Where(c => c.Source == s).Sum(c => c.Concentration.MilligramsPerLitre);
                    return milligrams > 0 ? Say.Number(milligrams) : "";
                }),
            ]);
        return new SheetSection(
            "sources", "Who brings what, mg/L", [], new Table(
                [new("element"), .. sources.Select(s => new Column(Called(recipe, s), true))], [.. rows]));
    }

    /// <summary>What is added as it is goes by its name, which wraps where an id does not; a stock by its id.</summary>
    private static string Called(RecipeFacts recipe, string source) =>
        recipe.Doses.FirstOrDefault(d => d.Id == source)?.Direct is { } direct
            && recipe.Doses.Count(d => d.Direct?.Substance == direct.Substance) == 1
            ? direct.Substance.Name
            : source;

    private static SheetSection Doubt(UncertaintyFacts uncertainty) => new(
        "doubt", "What each element is known to", [],
        new Table(
            [new("element"), new("± %", true), new("most of it from"), new("share %", true)],
            [
                .. uncertainty.Elements.Values.OrderByDescending(e => e.RelativeStandard).Select(e => (IReadOnlyList<string>)
                [
                    e.Key, Say.Number(100 * e.RelativeExpanded), e.Shares.Count > 0 ? e.Shares[0].Source.Name : "",
                    e.Shares.Count > 0 ? Say.Number(100 * e.Shares[0].Fraction) : "",
                ]),
            ]));

    private static IReadOnlyList<string> Assumed(RecipeFacts recipe, UncertaintyFacts uncertainty) =>
        [.. recipe.Assumptions.Concat(uncertainty.Assumptions).Select(a => a.Text).Distinct(StringComparer.Ordinal)];
}
