using System.Text.Json;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Mixing;

/// <summary>How a solid that formed on the way behaves once the solution could take it up again.</summary>
/// <param name="Solid">Name in the constant set.</param>
/// <param name="Slowly">True when it outlasts the mixing: it counts as permanent once formed.</param>
/// <param name="Because">Why.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="StartsAt">Saturation index from which it forms within the minutes of mixing; infinite when it takes longer.</param>
public sealed record Redissolving(string Solid, bool Slowly, string Because, string Source, double StartsAt)
{
    private static readonly Lazy<Table> Data = new(Read);

    /// <summary>Every solid with an entry, in the order of the data.</summary>
    public static IReadOnlyList<Redissolving> All => Data.Value.Rows;

    /// <summary>A soluble salt dissolves readily and crystallises without delay; a solid without an entry counts as slow.</summary>
    public static Redissolving Of(Solid solid)
    {
        if (Data.Value.BySolid.TryGetValue(solid.Name, out var known))
        {
            return known;
        }

        return solid.Role == SolidRole.SolubleSalt
            ? new Redissolving(solid.Name, false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", 0)
            : new Redissolving(solid.Name, true, "How fast it dissolves again is not known.", "no source", Data.Value.StartsAt);
    }

    private static Table Read()
    {
        using var stream = typeof(Redissolving).Assembly.GetManifestResourceStream("RecipeLint.Analysis.Mixing.redissolving.json")
            ?? throw new InvalidOperationException("The embedded redissolving.json is missing from the build.");
        using var document = JsonDocument.Parse(stream);
        var starts = document.RootElement.GetProperty("startsAt");
        var usual = starts.GetProperty("value").GetDouble();
        var exceptions = starts.GetProperty("exceptions");
        var rows = document.RootElement.GetProperty("solids").EnumerateArray().Select(row =>
        {
            var name = row.GetProperty("solid").GetString()!;
            return new Redissolving(
                name,
                row.GetProperty("redissolves").GetString() == "slowly",
                row.GetProperty("because").GetString()!,
                row.GetProperty("source").GetString()!,
                row.TryGetProperty("whileMixing", out var does) && !does.GetBoolean() ? double.PositiveInfinity
                    : exceptions.TryGetProperty(name, out var other) ? other.GetProperty("value").GetDouble() : usual);
        }).ToList();
        return new Table(usual, rows, rows.ToDictionary(r => r.Solid, StringComparer.Ordinal));
    }

    private sealed record Table(double StartsAt, IReadOnlyList<Redissolving> Rows, Dictionary<string, Redissolving> BySolid);
}
