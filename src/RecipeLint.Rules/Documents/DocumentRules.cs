using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>The rules on what stands in the files, RL0001 to RL0099.</summary>
internal static class DocumentRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new MalformedFile(),
        new WrongEncoding(),
        new CommentInFile(),
        new DuplicateKey(),
        new UnknownKey(),
        new MissingKey(),
        new WrongShape(),
        new UnknownUnit(),
        new NumberWithoutUnit(),
        new AmbiguousNumber(),
        new AmbiguousUnit(),
        new WrongDimension(),
        new ImplausibleAmount(),
        new UnknownSubstance(),
        new AmbiguousSubstance(),
        new FormulaMassDisagrees(),
        new ImpossibleAnalysis(),
        new UndeclaredAssay(),
        new ImplausibleAssay(),
        new DuplicateSubstance(),
        new MissingReference(),
        new ReferenceLeavesRepository(),
        new ReferenceLoop(),
        new UnusedStock(),
        new DoseContradictsDilution(),
        new UnknownEquipment(),
        new UnknownProfile(),
        new UnbalancedWater(),
        new UnknownRule(),
        new UnusableOption(),
        new SuppressionUnused(),
        new SuppressionExpired(),
    ];
}
