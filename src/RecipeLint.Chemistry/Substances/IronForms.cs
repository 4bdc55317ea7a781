using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// Iron as a label splits it, each as mass fraction of the product as bought. For EDDHA only the ortho-ortho share holds
/// its iron above about pH 7.5.
/// </summary>
/// <param name="Total">All iron.</param>
/// <param name="Chelated">The part bound by a chelating agent; null when the label does not say.</param>
/// <param name="OrthoOrtho">The part bound in the ortho-ortho isomer; null when the label does not say.</param>
/// <param name="Agent">The chelating agent as named on the label ("EDTA"); null when the label does not say.</param>
public sealed record IronForms(MassFraction Total, MassFraction? Chelated, MassFraction? OrthoOrtho, string? Agent);
