using System.CommandLine;
using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Slips;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Readings;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Reports.Diagnosis;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Says why a bottle looks as it does, from what was seen and from the chemistry of its recipe.</summary>
internal static class DiagnoseCommand
{
    public static Command Build(Surroundings world)
    {
        var file =
            new Argument<string>("file") { Description = "The stock file of the bottle, or the recipe file for tank, lines and drippers." };
        var seen = new Option<string[]>("--seen")
        {
            Description = "What you see, smell and tried, in your own words: \"white needles, no fizz with vinegar\".",
            HelpName = "words",
        };
        var after = new Option<string?>("--after")
        {
            Description = "When it showed: \"2 weeks\", \"next morning\", \"after a cold night\".",
            HelpName = "time",
        };
        var at = new Option<string?>("--at")
        {
            Description = "How cold or warm the bottle or the tank stood; left out, the coldest a bottle is kept at.",
            HelpName = "temperature",
        };
        var measured = new Option<string[]>("--measured")
        {
            Description = "What was measured: \"pH 6.9\", \"EC 1.8 mS/cm at 1:100\", \"1 L weighs 1.12 kg\"; several times for several.",
            HelpName = "reading",
        };
        var ask = new Option<bool>("--ask") { Description = "Ask questions even where no terminal is; answers come from standard input." };
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command(
            "diagnose",
            "Say why a bottle, a tank or a dripper clouded: likely causes, the test that settles it, what can be saved, what to change.")
        {
            file, seen, after, at, measured, ask, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var words = string.Join(". ", parsed.GetValue(seen) ?? []).Trim();
            var time = parsed.GetValue(after);
            string[] readings = [.. parsed.GetValue(measured) ?? [], .. ToldReadings.Of(words)];
            var guided = parsed.GetValue(ask) || (words.Length == 0 && readings.Length == 0 && world.InIsTerminal);
            if (!guided && words.Length == 0 && time is null && readings.Length == 0)
            {
                throw new UsageException("say what you see with '--seen \"white needles\"', what you measured with '--measured \"pH "
                    + "6.9\"', or '--ask' to be asked.");
            }

            var seenAt = parsed.GetValue(at) is { } text ? ReadTemperature(text) : (Temperature?)null;
            var (bottle, recipe, _) =
                StockInput.OpenEither(world, "diagnose", parsed.GetValue(file)!, parsed.GetValue(config), parsed.GetValue(noConfig));
            if (recipe is not null)
            {
                return Tank(world, recipe, new BottleWishes(words, time, readings, parsed.GetValue(ask), parsed.GetValue(at), seenAt));
            }

            return Bottle(world, bottle!, new BottleWishes(words, time, readings, guided, parsed.GetValue(at), seenAt));
        });
        return command;
    }

    /// <summary>What was told and asked of a bottle, or of a tank.</summary>
    private sealed record BottleWishes(string Words, string? Time, string[] Readings, bool Guided, string? At, Temperature? SeenAt);

    private static int Bottle(Surroundings world, StockInput bottle, BottleWishes wishes)
    {
        var (workspace, stock) = bottle;
        var observation = Told(wishes);
        var readings = Read(wishes.Readings, stock);
        var hazards = BottleHazards.Of(stock, observation);
        var search = readings.Count > 0 && MayCompare(hazards, UnknownContents.Of(stock))
            ? SlipSearch.Of(workspace, stock, readings) : null;
        var burns = false;
        if (search is not null)
        {
            observation = LooksAsItShould(observation, search.IsAsItShouldBe);
            burns = search.Measured.Any(m => CorrosiveReading.Of(m.Measurement, m.Expected is null || m.Fits) is not null);
            if (!IsOfDanger(hazards))
            {
                world.Out.Write(SlipReport.Write(stock, search));
                if (!wishes.Guided && IsMute(observation))
                {
                    return burns ? ExitCodes.Findings : ExitCodes.Clean;
                }

                world.Out.WriteLine();
            }
        }

        if (wishes.Guided)
        {
            using var answers = new StreamReader(world.StandardInput());
            observation = new GuidedQuestions(answers, world.Out).Ask(stock, observation, wishes.SeenAt);
        }

        var diagnosis = Diagnoser.Of(stock, observation, wishes.SeenAt);
        world.Out.Write(DiagnosisReport.Write(diagnosis, wishes.At));
        Late(world, readings.Count, search is null || !IsOfDanger(hazards) ? null : SlipReport.Write(stock, search), search is null);
        return burns || diagnosis.Unknown is { IsAll: true } ? ExitCodes.Findings : Answer(diagnosis.Hazards);
    }

    /// <summary>False where somebody could be hurt by what stands there, or nobody can name any of it.</summary>
    private static bool MayCompare(HazardReport hazards, UnknownContents? unknown) =>
        BottleHazards.Stops(hazards) is null && unknown is not { IsAll: true };

    /// <summary>What is there, or what was told of it, can hurt somebody: that is said before any reading.</summary>
    private static bool IsOfDanger(HazardReport hazards) => hazards.Hazards.Any(h => h.Grade >= HazardGrade.Suspected);

    /// <summary>What readings say, after the danger; or that nothing was made of them.</summary>
    private static void Late(Surroundings world, int readings, string? compared, bool left)
    {
        if (readings > 0 && (compared ?? (left ? SlipReport.NotCompared : null)) is { } text)
        {
            world.Out.WriteLine();
            world.Out.Write(text);
        }
    }

    private static Observation Told(BottleWishes wishes) =>
        (wishes.Time is null ? Observation.Nothing : TimeWords.Read(wishes.Time)).With(ObservationReader.Read(wishes.Words));

    /// <summary>"Looks fine" is no sign of a sound bottle or tank of which a reading is off.</summary>
    private static Observation LooksAsItShould(Observation told, bool readingsFit) =>
        readingsFit ? told : told with { Signs = [.. told.Signs.Where(s => s.Sign.Id != "normal")] };

    private static bool IsMute(Observation told) => told is { IsVague: true, PutIn: [], Plants: [], Unknown: [] };

    /// <summary>As with every command that advises: 1 where somebody could be hurt.</summary>
    private static int Answer(HazardReport hazards) =>
        IsOfDanger(hazards) ? ExitCodes.Findings : ExitCodes.Clean;

    private static int Tank(Surroundings world, RecipeFacts recipe, BottleWishes wishes)
    {
        var nothingSeen = wishes.Words.Length == 0 && wishes.Time is null;
        if (wishes.Guided || (nothingSeen && wishes.Readings.Length == 0))
        {
            throw new UsageException("of a tank say what you see with '--seen \"white crust on the drippers\"', when with '--after', how "
                + "warm it stood with '--at' and what you measured with '--measured \"pH 6.9\"'; '--ask' is for a bottle.");
        }

        var readings = wishes.Readings.Select(r => TankReadings.Of(recipe, ReadOfTank(r, recipe))).ToList();
        var observation = Told(wishes);
        var burns = readings.Any(r => CorrosiveReading.Of(r.Measurement, r.Fits) is not null);
        var hazards = BottleHazards.Of(recipe, observation);
        var (compares, danger) = (readings.Count > 0 && BottleHazards.Stops(hazards) is null, IsOfDanger(hazards));
        if (compares)
        {
            observation = LooksAsItShould(observation, readings.TrueForAll(r => r.Fits));
            if (!danger)
            {
                world.Out.Write(TankReadingReport.Write(recipe, readings));
                if (IsMute(observation))
                {
                    return burns ? ExitCodes.Findings : ExitCodes.Clean;
                }

                world.Out.WriteLine();
            }
        }

        var diagnosis = TankDiagnoser.Of(recipe, observation, wishes.SeenAt);
        world.Out.Write(TankReport.Write(diagnosis));
        Late(world, readings.Count, compares && danger ? TankReadingReport.Write(recipe, readings) : null, !compares);
        return burns || diagnosis.Hazards.MayHold.Any(h => h.Is(HazardRole.Hypochlorite)) ? ExitCodes.Findings : Answer(diagnosis.Hazards);
    }

    private static Measurement ReadOfTank(string text, RecipeFacts recipe)
    {
        var (measurement, error) = Measurement.Read(text, recipe.FinalVolume);
        return measurement is null ? throw new UsageException(error!)
            : measurement.Reading is { Kind: ReadingKind.Ph or ReadingKind.Conductivity, Dilution: 1 } ? measurement
            : throw new UsageException(
                $"'{text}': of a tank its own pH and EC are compared, undiluted, like \"pH 6.2\" or \"EC 1.8 mS/cm\".");
    }

    private static List<Measurement> Read(string[] texts, StockFacts stock)
    {
        var list = new List<Measurement>();
        foreach (var text in texts)
        {
            var (measurement, error) = Measurement.Read(text, stock.Volume);
            list.Add(measurement ?? throw new UsageException(error!));
        }

        return list;
    }

    private static Temperature ReadTemperature(string text)
    {
        var low = SharedOptions.OneTemperature(text);

        // Frost is a likely cause and must not be refused: the chemistry is then that of 0 °C.
        return low.Celsius is >= -40 and <= SolutionInput.HighestCelsius
            ? low
            : throw new UsageException($"'{text}' is no temperature a bottle is kept at; -40 to 45 °C are understood.");
    }
}
