using RecipeLint.Shell;

namespace RecipeLint;

/// <summary>
/// The command line with the world of this process, which may have lost its folder, its standard output or its standard error.
/// </summary>
internal static class WholeProcess
{
    public static int Run(string[] arguments)
    {
        var code = ExitCodes.Usage;
        try
        {
            var world = Surroundings.OfThisProcess();
            code = CommandLine.Run(arguments, world);
            world.Out.Flush();
            return code;
        }
        catch (UsageException exception)
        {
            Complain(exception.Message);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // Of what went wrong before there is a line already.
            if (code is ExitCodes.Clean or ExitCodes.Findings)
            {
                Complain(StandardStreams.LostOutput);
            }
        }

        return ExitCodes.Usage;
    }

    private static void Complain(string what)
    {
        try
        {
            using var error = StandardStreams.Error();
            error.Write(System.Text.Encoding.UTF8.GetBytes($"recipelint: {what}\n"));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // Nobody is left to be told; the exit code is.
        }
    }
}
