using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reads one *.water.json.</summary>
internal sealed class WaterReader(FieldReader fields)
{
    private bool _complete = true;

    /// <summary>The water; null when the file is not an object at all.</summary>
    public WaterDocument? Read(JsonItem root)
    {
        if (root.Kind != JsonKind.Object)
        {
            return null;
        }

        NotUnderstoodReader.Report(root, fields);
        var readings = ReadIons(root["ions"]);
        var alkalinity = ReadCapacity(root["alkalinity"], Alkalinity);
        var hardness = ReadCapacity(root["hardness"], Hardness);
        var ec = ReadEc(root["EC"] ?? root["ec"]);
        // Where nothing can be read of what a water holds, it is no pure water.
        _complete &= readings.Count > 0 || alkalinity is not null || hardness is not null || ec is not null;
        var composition = WaterEstimate.Complete(readings, hardness, alkalinity, ec);
        return new WaterDocument
        {
            File = fields.File,
            Name = fields.Text(root["name"])?.Value ?? StockReader.NameOf(fields.File, Resolution.WaterEnding),
            Values = composition.Values,
            Ec = ec,
            Ph = ReadPh(root["pH"]),
            Alkalinity = alkalinity ?? composition.Alkalinity,
            Hardness = hardness ?? composition.Hardness,
            Estimates = composition.Estimates,
            Stated = _complete
                ? new WaterFigures([.. readings.Select(r => r.Stated)], PlaceOf(root["ions"]), alkalinity, hardness, ec)
                : null,
            IsComplete = _complete,
        };
    }

    private Place? PlaceOf(JsonItem? ions) => ions is null ? null : fields.At(ions).Key;

    private static readonly Due Alkalinity = Due.Hardness with
    {
        Bases = ["CaCO3", "HCO3"],
        Accepts = [Dimension.MassConcentration, Dimension.ChargeConcentration, Dimension.HardnessDegree, Dimension.AmountConcentration],
    };

    private static readonly Due Hardness = Due.Hardness with { Bases = ["CaCO3", "CaO", "Ca"] };

    /// <summary>True where this reader understands a key of a water file, or of its ions, with this value as it stands.</summary>
    internal static bool Reads(string key, string value)
    {
        var due = key switch
        {
            "EC" => Due.Conductivity,
            "pH" => Due.Ph,
            "alkalinity" => Alkalinity,
            "hardness" => Hardness,
            _ => Analytes.All.TryGetValue(key, out var analyte) ? DueOf(analyte) : null,
        };
        return key is "date" or "source" || (due is not null && QuantityReader.TryRead(value, due, out _, out _));
    }

    private static Due DueOf(Analyte analyte) => Due.Analyte with
    {
        Bases = [.. analyte.Bases.Select(b => b.Formula)],
        Accepts = analyte.Charge == 0 ? [Dimension.MassConcentration, Dimension.AmountConcentration] : Due.Analyte.Accepts,
    };

    /// <summary>Equivalents that one mole of the basis carries.</summary>
    private static double EquivalentsPerMole(string basis) => basis == "HCO3" ? 1 : 2;

    private List<WaterReading> ReadIons(JsonItem? ions)
    {
        var readings = new List<WaterReading>();
        if (ions is not { Kind: JsonKind.Object })
        {
            _complete &= ions is null;
            return readings;
        }

        foreach (var (name, item) in ions.Members.Select(m => (m.Name, m.Value)))
        {
            // Of a duplicate key the last stands, and the duplicate is reported.
            if (ions[name] != item || !Analytes.All.TryGetValue(name, out var analyte))
            {
                continue;
            }

            if (ReadIon(analyte, item) is not { } moles)
            {
                _complete = false;
            }
            else if (readings.FirstOrDefault(r => SaysTheSame(r.Analyte, analyte)) is { } twin)
            {
                ReportTwin(analyte, item, twin);
            }
            else
            {
                var value = new WaterValue(analyte.Component, new Located<string>(name, fields.At(item)), moles);
                readings.Add(new WaterReading(analyte, value));
            }
        }

        return readings;
    }

    private static bool SaysTheSame(Analyte one, Analyte other) => one.Component == other.Component && one.Component != Component.Carbonate;

    private void ReportTwin(Analyte analyte, JsonItem item, WaterReading twin)
    {
        _complete = false;
        fields.Report(new Problem(
            ProblemKind.DuplicateKey,
            fields.At(item).Key,
            $"'{analyte.Key}' and '{twin.Analyte.Key}' speak of the same ion, which would count twice. Keep one of them.")
        {
            Related = [new RelatedPlace(twin.Value.Key.Place, "also stated here")],
        });
    }

    private Interval<AmountConcentration>? ReadIon(Analyte analyte, JsonItem item)
    {
        if (ReportsDetectionLimit(item, DueOf(analyte)))
        {
            return null;
        }

        if (fields.Quantity(item, DueOf(analyte)) is not { } quantity || !IsPossible(quantity, item))
        {
            return null;
        }

        var basis = analyte.Bases.FirstOrDefault(b => b.Formula == quantity.Basis) ?? analyte.Bases[0];
        AmountConcentration Convert(double value) => quantity.Dimension switch
        {
            Dimension.MassConcentration => basis.Convert(new MassConcentration(value)),
            Dimension.AmountConcentration => new AmountConcentration(value) * basis.Count,
            _ => new AmountConcentration(value / Math.Abs(analyte.Charge)),
        };
        return new Interval<AmountConcentration>(Convert(quantity.Low), Convert(quantity.High));
    }

    /// <summary>"&lt; 0.02 mg/L" is what a laboratory prints; as a range it says the same and computes.</summary>
    private bool ReportsDetectionLimit(JsonItem item, Due due)
    {
        if (item.Kind != JsonKind.Text || !item.Text.TrimStart().StartsWith('<'))
        {
            return false;
        }

        var repaired = $"0..{item.Text.TrimStart().TrimStart('<').TrimStart()}";
        var reads = QuantityReader.TryRead(repaired, due, out _, out _);
        fields.Report(
            ProblemKind.WrongShape,
            item,
            $"'{Wording.Shorten(item.Text)}' is a limit, not a value. Write what it can be as a range"
                + (reads ? $": '{Wording.Shorten(repaired)}'." : ", such as '0..0.1 mg/L'."),
            reads ? [repaired] : []);
        return true;
    }

    private Located<Interval<ChargeConcentration>>? ReadCapacity(JsonItem? item, Due due)
    {
        if (item is null)
        {
            return null;
        }

        if (fields.Quantity(item, due) is not { } quantity
            || !IsPossible(quantity, item)
            || CapacityFactor(quantity, item, due) is not { } factor)
        {
            _complete = false;
            return null;
        }

        return new Located<Interval<ChargeConcentration>>(
            new Interval<ChargeConcentration>(new(quantity.Low * factor), new(quantity.High * factor)),
            fields.At(item));
    }

    /// <summary>Equivalents per litre in one base unit of the quantity; null after reporting a value that names no basis.</summary>
    private double? CapacityFactor(Quantity quantity, JsonItem item, Due due)
    {
        switch (quantity.Dimension)
        {
            case Dimension.MassConcentration when quantity.Basis is { } basis:
                return EquivalentsPerMole(basis) / new ChemicalBasis(basis, 1).MolarMass.GramsPerMole;
            case Dimension.MassConcentration:
                ReportNoBasis(item, due);
                return null;
            case Dimension.AmountConcentration when quantity.Basis is { } basis:
                return EquivalentsPerMole(basis);
            case Dimension.AmountConcentration when due == Hardness:
                // Total hardness in mmol/L counts calcium and magnesium ions, two charges each.
                return 2;
            case Dimension.AmountConcentration:
                fields.Report(new Problem(
                    ProblemKind.AmbiguousUnit,
                    fields.At(item),
                    $"'{Wording.Shorten(item.Text)}' can count acid taken up (then it is the same number in meq/L) or CaCO3 (then it is "
                        + "twice that), "
                    + "a factor of 2. Write meq/L, or name the basis.")
                {
                    Values = [new NamedValue("factor", 2, "")],
                });
                return null;
            default:
                return 1;
        }
    }

    private void ReportNoBasis(JsonItem item, Due due)
    {
        var masses = due.Bases.Select(b => new ChemicalBasis(b, 1).MolarMass.GramsPerMole / EquivalentsPerMole(b)).ToArray();
        var factor = masses.Max() / masses.Min();
        var readings = due.Bases.Select(b => $"{item.Text} as {b}").ToArray();
        fields.Report(new Problem(
            ProblemKind.AmbiguousUnit,
            fields.At(item),
            $"'{Wording.Shorten(item.Text)}' does not say what it counts as; the readings differ by a factor of up to "
            + $"{Plausibility.Text(Math.Round(factor, 3))}. Write "
                + $"{Wording.Join([.. readings.Select(r => $"'{Wording.Shorten(r)}'")], "or")}.")
        {
            Suggestions = readings,
            Values = [new NamedValue("factor", factor, "")],
        });
    }

    private Located<Interval<Conductivity>>? ReadEc(JsonItem? item)
    {
        if (fields.Quantity(item, Due.Conductivity with { AllowTolerance = false }) is not { } ec || !IsPossible(ec, item!))
        {
            return null;
        }

        return new Located<Interval<Conductivity>>(ec.Conductivities, fields.At(item!));
    }

    private Located<Interval<double>>? ReadPh(JsonItem? item)
    {
        if (fields.Quantity(item, Due.Ph with { AllowTolerance = false }) is not { } ph)
        {
            return null;
        }

        var low = Plausibility.Ph(new Located<double>(ph.Low, fields.At(item!)), item, fields);
        return low is null || (ph.High != ph.Low && Plausibility.Ph(new Located<double>(ph.High, fields.At(item!)), item, fields) is null)
            ? null
            : new Located<Interval<double>>(ph.Numbers, fields.At(item!));
    }

    private bool IsPossible(Quantity quantity, JsonItem item)
    {
        if (quantity.Low >= 0)
        {
            return true;
        }

        fields.Implausible(item, $"'{Wording.Shorten(item.Text)}' is less than nothing.", new NamedValue("value", quantity.Low, ""));
        return false;
    }
}

/// <summary>One analyte with its key's meaning and its value.</summary>
internal sealed record WaterReading(Analyte Analyte, WaterValue Value)
{
    /// <summary>Charge at both ends of the range, never negative, eq/L.</summary>
    public Interval<double> Equivalents =>
        new(
            Value.Concentration.Low.MolesPerLitre * Math.Abs(Analyte.Charge),
            Value.Concentration.High.MolesPerLitre * Math.Abs(Analyte.Charge));

    /// <summary>The same without what a file may write.</summary>
    public StatedIon Stated =>
        new(Analyte.Key, Analyte.Component, Analyte.Charge, new(new(Equivalents.Low), new(Equivalents.High)));
}
