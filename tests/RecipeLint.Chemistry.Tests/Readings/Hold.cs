using System.Globalization;
using System.Text;

namespace RecipeLint.Chemistry.Tests.Readings;

/// <summary>
/// Whole surfaces written out: a file beside this one holds what a caller gets for every entry of a table or every row of a list. With
/// RECIPELINT_UPDATE=1 the files are written anew; read them before keeping them.
/// </summary>
internal static class Hold
{
    /// <summary>
    /// Rounding differs from one processor and mathematical library to the next, and with it the last digits of what is iterated and the steps that
    /// it takes: such figures are held on one kind of machine.
    /// </summary>
    public static bool IteratedIsHeldHere => OperatingSystem.IsLinux()
        && System.Runtime.InteropServices.RuntimeInformation.ProcessArchitecture == System.Runtime.InteropServices.Architecture.X64;

    /// <summary>Seven digits, which hold everywhere.</summary>
    public static string Number(double? value) => value is { } v ? v.ToString("G7", CultureInfo.InvariantCulture) : "none";

    public static void As(string file, StringBuilder text) =>
        Repository.Golden($"tests/RecipeLint.Chemistry.Tests/Readings/{file}", text.ToString());

    /// <summary>The rows of a list beside the readings, without headings and empty lines.</summary>
    public static IEnumerable<string> List(string file) =>
        File.ReadLines(Path.Combine(Repository.Root, "tests", "RecipeLint.Chemistry.Tests", "Readings", file))
            .Where(l => l.Length > 0 && !l.StartsWith("# ", StringComparison.Ordinal));

    /// <summary>"name value, name value", without what is nothing.</summary>
    public static string Line(params (string Name, object? Value)[] members)
    {
        var told = members.Select(m => (m.Name, Value: m.Value switch
        {
            null or false or "" => null,
            true => "yes",
            double number => Number(number),
            var other => Convert.ToString(other, CultureInfo.InvariantCulture),
        })).Where(m => !string.IsNullOrEmpty(m.Value));
        return string.Join("; ", told.Select(m => $"{m.Name} {m.Value}"));
    }
}
