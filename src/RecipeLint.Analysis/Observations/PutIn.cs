using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Observations;

/// <summary>Something that somebody says went into a bottle or a tank beside its recipe.</summary>
/// <param name="Written">The words, in lower case.</param>
/// <param name="Substance">What of the catalogue stands for it when the hazard gate is asked; null where nobody can say what it is.</param>
/// <param name="IsAsked">True where somebody only asks whether to, or is about to: the gate answers as if it were in.</param>
/// <param name="HoldsMore">True for a cleaner of the household, of which the substance is only a part.</param>
public sealed record PutIn(string Written, Substance? Substance, bool HoldsMore = false, bool IsAsked = false);
