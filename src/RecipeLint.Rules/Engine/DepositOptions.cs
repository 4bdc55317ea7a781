using System.Globalization;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Rules.Engine;

/// <summary>From where on deposits count: the options of the rules, for the one judgement that all readers share.</summary>
public static class DepositOptions
{
    internal const string Visible = "visible", NearLimit = "nearLimit", MetalShare = "metalShare";

    /// <summary>The limits of every rule on deposits, as a shop has set them.</summary>
    public static DepositLimits Of(ShopSettings shop)
    {
        if (shop.Rules.Count == 0)
        {
            return DepositLimits.Default;
        }

        var tuning = RuleTuning.Read(shop);
        return DepositOwner.Listed.Aggregate(DepositLimits.Default, (limits, owner) => limits.With(owner.Name, Of(owner.Name, tuning)));
    }

    /// <summary>The limits of the rule on tanks, as a shop has set them.</summary>
    public static OwnerLimits OfTank(ShopSettings shop) => Of(RuleNames.TankPrecipitate, RuleTuning.Read(shop));

    /// <summary>The limits of one rule, with the options that hold for the file it looks at.</summary>
    internal static OwnerLimits Of(RuleContext context) => context.DepositLimits ??=
        From(name => context.Descriptor.Options.Any(o => o.Name == name) ? context.Number(name) : null);

    private static OwnerLimits Of(string rule, RuleTuning tuning)
    {
        var options = tuning.OptionsOf(RuleBook.Find(rule)!);
        return From(name => options.TryGetValue(name, out var text)
            ? double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture)
            : null);
    }

    private static OwnerLimits From(Func<string, double?> option)
    {
        var usual = new OwnerLimits();
        return new OwnerLimits(
            option(Visible) ?? usual.Visible, option(NearLimit) ?? usual.NearLimit, option(MetalShare) / 100 ?? usual.MetalShare);
    }
}
