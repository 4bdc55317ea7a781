using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>Holds findings against the shop's suppressions and remembers what became of each.</summary>
internal sealed class SuppressionDesk
{
    private readonly Dictionary<Suppression, (SuppressionOutcome Outcome, Finding Finding)> _uses = [];
    private readonly DateOnly? _today;

    internal SuppressionDesk(DateOnly? today) => _today = today;

    /// <summary>The suppression that keeps a finding out of the report; null when it stays in.</summary>
    internal Suppression? FindFor(Finding finding, ShopSettings settings)
    {
        foreach (var suppression in settings.Suppressions)
        {
            if (!Fits(suppression, finding))
            {
                continue;
            }

            var outcome = Outcome(suppression, finding);
            Remember(suppression, outcome, finding);
            if (outcome == SuppressionOutcome.Held)
            {
                return suppression;
            }
        }

        return null;
    }

    /// <summary>The label beside a finding that comes back although it was once accepted; null when it never was.</summary>
    internal static RelatedPlace? Reminder(Finding finding, ShopSettings settings)
    {
        var suppression = settings.Suppressions.FirstOrDefault(s => Fits(s, finding));
        if (suppression is null
            || finding.Measured is not { } measured
            || suppression.Accepted is not { } accepted
            || !measured.IsWorseThan(accepted))
        {
            return null;
        }

        var unit = measured.Unit.Length == 0 ? "" : " " + measured.Unit;
        return new RelatedPlace(
            suppression.Place, FormattableString.Invariant($"accepted here up to {accepted}{unit}, now {measured.Value:G6}{unit}"));
    }

    /// <summary>What became of the suppressions that this run can speak about.</summary>
    internal IReadOnlyList<SuppressionUse> Uses(IEnumerable<Suppression> inReach) => [.. inReach.Select(Use)];

    private static bool Means(Suppression suppression, RuleDescriptor rule) =>
        RuleBook.Find(suppression.Rule) is { } known
            ? known.Id == rule.Id
            : rule.Family == HouseRules.Family && (IsCalled(rule.Id, suppression.Rule) || IsCalled(rule.Name, suppression.Rule));

    private static bool IsCalled(string name, string text) => name.Equals(text, StringComparison.OrdinalIgnoreCase);

    private static bool Fits(Suppression suppression, Finding finding) =>
        Means(suppression, finding.Rule)
        && suppression.File == finding.Place.File
        && (suppression.IdPath is not { Length: > 0 } path
            || finding.IdPath == path
            || finding.IdPath.StartsWith(path + "/", StringComparison.Ordinal));

    private SuppressionUse Use(Suppression suppression)
    {
        if (_uses.TryGetValue(suppression, out var use))
        {
            return new SuppressionUse(suppression, use.Outcome, use.Finding);
        }

        return new SuppressionUse(
            suppression, IsExpired(suppression) ? SuppressionOutcome.Expired : SuppressionOutcome.MatchedNothing, null);
    }

    private bool IsExpired(Suppression suppression) => _today is { } today && suppression.Expires is { } last && today > last;

    private SuppressionOutcome Outcome(Suppression suppression, Finding finding)
    {
        if (IsExpired(suppression))
        {
            return SuppressionOutcome.Expired;
        }

        if (suppression.Accepted is not { } accepted)
        {
            return SuppressionOutcome.Held;
        }

        if (finding.Measured is not { } measured)
        {
            return SuppressionOutcome.NoNumber;
        }

        return measured.IsWorseThan(accepted) ? SuppressionOutcome.GotWorse : SuppressionOutcome.Held;
    }

    /// <summary>Of several findings the one that comes back counts more than the one that is held.</summary>
    private void Remember(Suppression suppression, SuppressionOutcome outcome, Finding finding)
    {
        if (!_uses.TryGetValue(suppression, out var known) || known.Outcome == SuppressionOutcome.Held)
        {
            _uses[suppression] = (outcome, finding);
        }
    }
}
