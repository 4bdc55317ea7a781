using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A scale, measure, vessel or site the shop's settings do not list.</summary>
public sealed class UnknownEquipment() : ProblemRule(
    "unknown-equipment",
    "Without it the judgements on weighing and storing rest on defaults. Correct the name, or describe it in the settings.",
    ProblemKind.UnknownEquipment);
