using System.CommandLine;
using System.Globalization;
using RecipeLint.Analysis.Trials;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Options that several commands have in common.</summary>
internal static class SharedOptions
{
    public static Option<string> Color()
    {
        var option = new Option<string>("--color")
        {
            Description = "Colour the text. 'auto' looks at the terminal, NO_COLOR and FORCE_COLOR.",
            DefaultValueFactory = _ => "auto",
            HelpName = "auto|always|never",
        };
        option.AcceptOnlyFromAmong("auto", "always", "never");
        return option;
    }

    /// <summary>The level from which on findings make the exit code 1.</summary>
    public static Option<string> FailOn()
    {
        var option = new Option<string>("--fail-on")
        {
            Description = "Lowest level that makes the exit code 1, itself included.",
            DefaultValueFactory = _ => "error",
            HelpName = "error|warning|note|never",
        };
        option.AcceptOnlyFromAmong("error", "warning", "note", "never");
        return option;
    }

    /// <summary>The level that '--fail-on' names; null for never.</summary>
    public static Level? Threshold(string failOn) => failOn switch
    {
        "error" => Level.Error,
        "warning" => Level.Warning,
        "note" => Level.Note,
        _ => null,
    };

    public static Option<string?> Config() => new("--config")
    {
        Description = "Use this settings file for every input instead of the nearest recipelint.json.",
        HelpName = "file",
    };

    /// <summary>Columns of a text; a terminal tells by itself.</summary>
    public static Option<int?> Width()
    {
        var option = new Option<int?>("--width")
        {
            Description = "Columns of the text, 40 to 1000. Left out: as wide as the terminal, 100 into a file or pipe.",
            HelpName = "columns",
        };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1
                && (!int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var columns)
                    || columns is < Surroundings.LeastWidth or > 1000))
            {
                result.AddError($"'{result.Tokens[0].Value}' is no width; '--width' takes 40 to 1000 columns.");
            }
        });
        return option;
    }

    /// <summary>How many times a stock is mixed in thought.</summary>
    public static Option<int?> Mixings()
    {
        var option = new Option<int?>("--mixings")
        {
            Description = "Mix a stock so many times in thought, each time as far off as the shop's equipment allows, and count the clear "
                + $"ones; 1 to {MixingTrials.Most}, seconds for {MixingTrials.Usual}.",
            HelpName = "number",
        };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1
                && (!int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                    || number is < 1 or > MixingTrials.Most))
            {
                result.AddError($"'{result.Tokens[0].Value}' cannot be used; '--mixings' takes 1 to {MixingTrials.Most}.");
            }
        });
        return option;
    }

    /// <summary>The day that dates in the settings are held against.</summary>
    public static Option<string?> AsOf() => new("--as-of")
    {
        Description = "Judge as if it were this day, year-month-day: last days of suppressions, calibrations.",
        HelpName = "date",
    };

    /// <exception cref="UsageException">No day.</exception>
    public static DateOnly Date(string option, string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? day
            : throw new UsageException($"'{option} {text}' is not a date; write year-month-day, such as 2027-03-01.");

    public static Option<bool> NoConfig() => new("--no-config") { Description = "Use built-in settings only." };

    /// <summary>The one temperature that '--at' takes, within whatever the command understands.</summary>
    /// <exception cref="UsageException">No temperature, or a range.</exception>
    public static Temperature OneTemperature(string text)
    {
        if (!QuantityReader.TryRead(text, Due.Temperatures, out var quantity, out var fault))
        {
            throw new UsageException($"The temperature '{text}' cannot be used. {fault.Message}");
        }

        var (low, high) = quantity.Temperatures;
        return low == high ? low : throw new UsageException($"'{text}' is a range; '--at' takes one temperature.");
    }
}
