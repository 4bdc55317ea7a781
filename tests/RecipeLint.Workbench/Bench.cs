namespace RecipeLint.Workbench;

/// <summary>What a contributor asks for instead of touching lists and generated files by hand.</summary>
public static class Bench
{
    private const string Usage =
        """
        usage: dotnet run --project tests/RecipeLint.Workbench -- COMMAND
          refresh                          write every generated file anew and give new rules their row in the ledger
          new-rule FAMILY NAME SCOPE       a folder for a rule on a stock, recipe or workspace, and its class
          new-substance FILE ID FORMULA    a row in Data/substances/FILE.json
          new-solid NAME FORMULA           a row in Data/thermo/solids.json
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
                case ["new-rule", var family, var name, "stock" or "recipe" or "workspace"]:
                    NewRule.Write(Repository.Find(), family, name, arguments[3], output);
                    return 0;
                case ["new-substance", var file, var id, var formula]:
                    NewRow.Substance(Repository.Find(), file, id, formula, output);
                    return 0;
                case ["new-solid", var solid, var formula]:
                    NewRow.Solid(Repository.Find(), solid, formula, output);
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
