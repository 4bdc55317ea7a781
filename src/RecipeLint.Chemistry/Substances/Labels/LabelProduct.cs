using System.Globalization;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// Makes a substance of a guaranteed analysis: element contents as declared, and the ions it sets free, with the charge closed by an
/// assumption that the substance states (<see cref="Substance.Assumption"/>).
/// </summary>
/// <remarks>
/// The contents hold only what the label declares; an assumed counter-ion appears in <see cref="Substance.Dissolves"/> alone.
/// Unbound iron counts as Fe+2, iron bound by EDTA, DTPA, HEDTA, EDDHA or citrate as Fe+3; every chelated share as one mole of agent per
/// mole of metal. All chelated iron of an EDDHA product enters as the EDDHA complex; the ortho-ortho share stands in
/// <see cref="Substance.Iron"/>.
/// </remarks>
public static class LabelProduct
{
    /// <summary>What the declared contents may weigh at most, grams per gram: all of it, and what the rounding of labels adds.</summary>
    internal const double MostPerGram = 1.005;

    /// <summary>Never throws; what is wrong with the label is in the result.</summary>
    public static LabelResult Build(LabelDeclaration label)
    {
        var problems = new List<LabelProblem>();
        if (label.Density?.Value is not { GramsPerMillilitre: > 0 }
            && label.Entries.Any(e => label.CountedIn(e) == LabelPercent.WeightPerVolume))
        {
            problems.Add(new(
                LabelProblemKind.MissingDensity,
                "Grams in a volume (% w/v, g/L) need the density of the product, such as \"density\": \"1.2 g/mL\" beside the label"));
            return new LabelResult(null, problems);
        }

        var contents = new LabelContents(label, problems);
        if (contents.IsEmpty)
        {
            problems.Add(new(LabelProblemKind.Empty, "The label declares nothing that can be used"));
            return new LabelResult(null, problems);
        }

        var ions = new LabelIons(contents, label, problems);
        var mass = ions.LeastMassPerGram() + ions.LeastMassToClose();
        var assumptions = ions.Assumptions.Concat(LabelClosure.Close(ions, contents, label, problems)).ToArray();
        if (mass > MostPerGram)
        {
            var percent = (mass * 100).ToString("0.#", CultureInfo.InvariantCulture);
            problems.Add(new(
                LabelProblemKind.Over100AsSalts, $"As salts the declared contents weigh at least {percent} g in 100 g of product"));
        }

        var substance = new Substance
        {
            Id = label.Id,
            Name = label.Name,
            Kind = label.Kind,
            Form = label.Form,
            Density = label.Density,
            Content = Content(contents, ions),
            Dissolves = ions.Yields(),
            Iron = Iron(contents, label),
            GuessedCharge = ions.GuessedCharge,
            IsUreaTaken = ions.IsUreaTaken,
            Assumption = assumptions.Length == 0 ? null : string.Join(" ", assumptions),
        };
        return new LabelResult(substance, problems);
    }

    private static ElementContent Content(LabelContents contents, LabelIons ions) => new(
        contents.Elements.Select(e => KeyValuePair.Create(e, contents.Total(e))),
        [
            KeyValuePair.Create(NitrogenForm.Nitrate, ions.Nitrate * AtomicWeights.Of(Element.N)),
            KeyValuePair.Create(NitrogenForm.Ammonium, ions.Ammonium * AtomicWeights.Of(Element.N)),
            KeyValuePair.Create(NitrogenForm.Urea, ions.Urea * AtomicWeights.Of(Element.N)),
            KeyValuePair.Create(NitrogenForm.Organic, contents[Element.N, LabelShare.Organic]),
        ]);

    private static IronForms? Iron(LabelContents contents, LabelDeclaration label)
    {
        MassFraction? Share(LabelShare share) => contents.Has(Element.Fe, share) ? new MassFraction(contents[Element.Fe, share]) : null;
        return Share(LabelShare.Chelated) is null && Share(LabelShare.OrthoOrtho) is null
            ? null
            : new IronForms(
                new MassFraction(contents.Total(Element.Fe)), Share(LabelShare.Chelated), Share(LabelShare.OrthoOrtho), label.Agent);
    }
}
