using System.Diagnostics.CodeAnalysis;

namespace RecipeLint.Rules.Engine;

/// <summary>Two findings of one rule at one place with the same words. The words are read only where all else is alike.</summary>
internal sealed class SaidAlike : IEqualityComparer<Finding>
{
    private SaidAlike()
    {
    }

    public static SaidAlike Instance { get; } = new();

    public bool Equals(Finding? x, Finding? y) => x is null || y is null
        ? x is null && y is null
        : x.Rule.Id == y.Rule.Id && x.Place.File == y.Place.File && x.IdPath == y.IdPath && x.Message == y.Message;

    public int GetHashCode([DisallowNull] Finding finding) => HashCode.Combine(finding.Rule.Id, finding.Place.File, finding.IdPath);
}
