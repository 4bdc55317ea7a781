using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A scale, measure, vessel or site the shop's settings do not list.</summary>
public sealed class UnknownEquipment() : ProblemRule("unknown-equipment", ProblemKind.UnknownEquipment);
