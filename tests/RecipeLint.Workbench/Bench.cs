namespace RecipeLint.Workbench;

/// <summary>What a contributor asks for instead of touching lists and generated files by hand.</summary>
public static class Bench
{
    private const string Usage =
        """
        usage: dotnet run --project tests/RecipeLint.Workbench -- COMMAND
          refresh                                       write every generated file anew and add new rules to the ledger
        """;

    /// <summary>0 done, 1 not possible (one line says why), 2 wrong usage.</summary>
    public static int Run(IReadOnlyList<string> arguments, TextWriter output, TextWriter error)
    {
        try
        {
            switch (arguments)
            {
                case ["refresh"]:
                    Refresh.Write(Repository.Find(), output);
                    return 0;
                default:
                    error.WriteLine(Usage);
                    return 2;
            }
        }
        catch (BenchException e)
        {
            error.WriteLine(e.Message);
            return 1;
        }
    }
}

/// <summary>Something the contributor can put right; the message is the one line to show.</summary>
public sealed class BenchException(string message) : Exception(message);
