using System.Text.Json;

namespace RecipeLint.Workbench;

/// <summary>A new row at the end of a data file, with every field that is owed. What stands empty is asked for when the program is built or tested.</summary>
public static class NewRow
{
    private const string Data = "src/RecipeLint.Chemistry/Data/";

    /// <exception cref="BenchException">There is no such file, or the id is taken.</exception>
    public static void Substance(Repository repository, string file, string id, string formula, TextWriter output)
    {
        foreach (var path in Directory.GetFiles(repository.PathOf(Data + "substances"), "*.json"))
        {
            if (File.ReadAllText(path).Contains($"\"id\": {Quoted(id)}", StringComparison.Ordinal))
            {
                throw new BenchException($"The id '{id}' is taken in {Path.GetFileName(path)}.");
            }
        }

        Append(
            repository, $"{Data}substances/{file}.json",
            $$"""
                {
                  "id": {{Quoted(id)}},
                  "name": {{Quoted(id.Replace('-', ' '))}},
                  "kind": "salt",
                  "behavesAs": "",
                  "formula": {{Quoted(formula)}},
                  "cas": { "value": "", "src": "", "confidence": "memory" },
                  "dissolves": {},
                  "hazards": { "statements": [], "src": "", "confidence": "memory" }
                }
            """,
            output);
    }

    /// <exception cref="BenchException">The name is taken.</exception>
    public static void Solid(Repository repository, string name, string formula, TextWriter output)
    {
        const string File = Data + "thermo/solids.json";
        if (repository.Read(File).Contains($"\"name\": {Quoted(name)}", StringComparison.Ordinal))
        {
            throw new BenchException($"There is a solid '{name}' already.");
        }

        Append(
            repository, File,
            $$"""
                {"name": {{Quoted(name)}}, "formula": {{Quoted(formula)}}, "to": "", "logK": 0, "source": "", "status": "database", "role": "readily", "because": "", "called": "", "owner": "", "spread": 0, "startsInStorage": 0, "startsWhileMixing": 0.3, "startsWhileMixingSource": "", "redissolves": "", "redissolvesBecause": "", "redissolvesSource": "", "look": ""}
            """,
            output);
        output.WriteLine("After filling it run 'refresh' (a second time when it says so).");
    }

    private static void Append(Repository repository, string path, string row, TextWriter output)
    {
        var text = repository.Read(path);
        var end = text.LastIndexOf(']');
        if (end < 0)
        {
            throw new BenchException($"There is no data file {path}.");
        }

        var last = text[..end].TrimEnd();
        repository.Write(path, last + ",\n" + row + "\n  " + text[end..]);
        output.WriteLine($"written: one row at the end of {path}. Fill what stands empty; whatever is missing, the build or a test names.");
    }

    private static string Quoted(string text) => JsonSerializer.Serialize(text, JsonLayout.Plain);
}
