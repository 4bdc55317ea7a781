using System.Runtime.CompilerServices;
using System.Text;

namespace RecipeLint.Reports;

/// <summary>How a SARIF log is written.</summary>
/// <param name="IncludeSuppressed">
/// With suppressed findings, as results with an external suppression and its reason. Off by default: code scanning shows them as open
/// alerts.
/// </param>
public sealed record SarifOptions(bool IncludeSuppressed = false);

/// <summary>
/// The report for machines: OASIS SARIF 2.1.0 with Errata 01. Only this door leads to the SARIF library, so that a run without SARIF never
/// loads it.
/// </summary>
public static class SarifReport
{
    /// <summary>Most results a log holds; code scanning keeps no more. The worst stay.</summary>
    public const int MaxResults = 5000;

    /// <summary>UTF-8 without a byte order mark, lines ended by LF; the stream stays open.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(Stream stream, Report report, SarifOptions options)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), 16 * 1024, leaveOpen: true);
        Write(writer, report, options);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(TextWriter writer, Report report, SarifOptions options)
    {
        using var safe = new JsonSafeWriter(writer);
        SarifLogWriter.Write(safe, report, options);
        safe.Write('\n');
        safe.Flush();
    }

    /// <summary>Writes the log that a whole run would have written, from the logs of its shards.</summary>
    /// <returns>The gravest level of all results, null without any, and whether a rule failed in some shard.</returns>
    /// <exception cref="InvalidDataException">A text is no log of ours, or the logs are not of one version.</exception>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static (Rules.Engine.Level? Worst, bool Faults) Merge(TextWriter writer, IReadOnlyList<(string Name, string Text)> logs)
    {
        var (log, worst, faults) = SarifLogMerger.Merge(logs);
        using var safe = new JsonSafeWriter(writer);
        SarifLogWriter.Write(safe, log);
        safe.Write('\n');
        safe.Flush();
        return (worst, faults);
    }
}
