using System.CommandLine;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.OneLine;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Reports.Dissolve;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Prints what a mix in one line comes to: pH, what falls out, what is near, what stays dissolved.</summary>
internal static class DissolveCommand
{
    public static Command Build(Surroundings world)
    {
        var mix = new Argument<string[]>("mix")
        {
            Description = "What is dissolved, such as \"2 g/L K2SO4 + 1.5 g/L MgSO4.7H2O\" or \"KNO3 100 g in 2 L\".",
            Arity = ArgumentArity.OneOrMore,
        };
        var at = new Option<string>("--at")
        {
            Description = "Temperature, 0 to 45 °C.",
            DefaultValueFactory = _ => "20 °C",
            HelpName = "temperature",
        };
        var ph = new Option<string?>("--ph")
        {
            Description =
                "Set this pH with an acid or alkali that is not named, before anything falls out; left out, the pH follows from the mix.",
            HelpName = "pH",
        };
        var hold = new Option<string?>("--hold-ph")
        {
            Description = "Hold this pH while things fall out, as a dosing pump does, and say what that takes.",
            HelpName = "pH",
        };
        var open = new Option<bool>("--open") { Description = "Let it come to rest with the carbon dioxide of the air." };
        var full = new Option<bool>("--full") { Description = "List every dissolved species too." };
        var command = new Command("dissolve", "Print what a mix comes to: pH, what falls out, what is near it, what stays dissolved.")
        {
            mix,
            at,
            ph,
            hold,
            open,
            full,
        };
        command.SetAction(parsed => Run(world, new Wishes(
            InOneLine(parsed.GetValue(mix)!),
            parsed.GetValue(at)!,
            parsed.GetValue(ph),
            parsed.GetValue(hold),
            parsed.GetValue(open),
            parsed.GetValue(full))));
        return command;
    }

    /// <summary>Without quotes a shell hands over the words one by one; several in quotes are several things.</summary>
    private static string InOneLine(string[] words) =>
        string.Join(words.Any(w => w.Contains(' ', StringComparison.Ordinal)) ? ", " : " ", words);

    private sealed record Wishes(string Mix, string At, string? Ph, string? HoldPh, bool Open, bool Full);

    private static int Run(Surroundings world, Wishes wishes)
    {
        var (line, fault) = OneLineMix.Read(wishes.Mix, SubstanceCatalogue.BuiltIn);
        if (line is null)
        {
            throw new UsageException(fault!);
        }

        var temperature = ReadTemperature(wishes.At);
        var held = wishes.HoldPh;
        if (held is not null && wishes.Ph is not null)
        {
            throw new UsageException("A pH is either set before anything falls out ('--ph') or held ('--hold-ph'), not both.");
        }

        var setPh = (held ?? wishes.Ph) is { } text ? ReadPh(text) : (double?)null;
        var (beaker, error) = Beaker.Of(line);
        if (beaker is null)
        {
            throw new UsageException(error!);
        }

        if (DissolveReport.Refused(beaker) is { } refused)
        {
            world.Out.Write(refused);
            return ExitCodes.Findings;
        }

        var state = beaker.State(temperature, setPh, wishes.Open, held is not null);
        if (state.Failure is { } failure)
        {
            throw new UsageException(failure);
        }

        world.Out.Write(DissolveReport.Write(beaker, state, setPh, wishes.Full, held is not null));
        return ExitCodes.Clean;
    }

    private static Temperature ReadTemperature(string text)
    {
        var low = SharedOptions.OneTemperature(text);
        return low.Celsius is >= SolutionInput.LowestCelsius and <= SolutionInput.HighestCelsius
            ? low
            : throw new UsageException($"'{text}' is outside the range of the model, 0 to 45 °C.");
    }

    private static double ReadPh(string text)
    {
        if (!QuantityReader.TryRead(text, Due.Ph, out var quantity, out var fault))
        {
            throw new UsageException($"The pH '{text}' cannot be used. {fault.Message}");
        }

        var (low, high) = quantity.Numbers;
        if (low != high || quantity.Tolerance is not null)
        {
            throw new UsageException($"'{text}' is not one value; '--ph' takes one pH.");
        }

        return low is >= 0 and <= 14 ? low : throw new UsageException($"pH '{text}' is outside 0 to 14.");
    }
}
