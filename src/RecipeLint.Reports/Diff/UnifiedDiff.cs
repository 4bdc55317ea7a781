using System.Globalization;
using System.Text;

namespace RecipeLint.Reports;

/// <summary>
/// The difference of two versions of a file in the unified format of POSIX diff, with the header lines that git reads: what comes out can
/// be handed to "git apply". Line ends are part of the lines and stay as they are.
/// </summary>
public static class UnifiedDiff
{
    private const int Context = 3;

    /// <summary>Past this many changed lines the search for the shortest difference costs more than it is worth.</summary>
    private const int MostChanges = 1000;

    /// <param name="path">Relative to the root of the repository, forward slashes.</param>
    /// <param name="before">The whole file, UTF-8.</param>
    /// <param name="after">The whole file, UTF-8.</param>
    /// <param name="isNew">True for a file that was not there.</param>
    public static void Write(TextWriter writer, string path, byte[] before, byte[] after, bool isNew = false)
    {
        var old = Lines(before);
        var now = Lines(after);
        var changes = Changes(old, now);
        if (changes.Count == 0)
        {
            return;
        }

        var from = isNew ? "new file mode 100644\n--- /dev/null" : $"--- {Name("a/" + path)}{Tab(path)}";
        writer.Write($"diff --git {Name("a/" + path)} {Name("b/" + path)}\n{from}\n+++ {Name("b/" + path)}{Tab(path)}\n");
        foreach (var hunk in Hunks(changes))
        {
            Write(writer, hunk, old, now);
        }
    }

    private static void Write(TextWriter writer, List<Change> hunk, List<string> old, List<string> now)
    {
        var start = Math.Max(0, hunk[0].OldStart - Context);
        var end = Math.Min(old.Count, hunk[^1].OldEnd + Context);
        var newStart = hunk[0].NewStart - (hunk[0].OldStart - start);
        var newEnd = hunk[^1].NewEnd + (end - hunk[^1].OldEnd);
        writer.Write($"@@ -{Range(start, end - start)} +{Range(newStart, newEnd - newStart)} @@\n");
        var at = start;
        foreach (var change in hunk)
        {
            Put(' ', old, at, change.OldStart);
            Put('-', old, change.OldStart, change.OldEnd);
            Put('+', now, change.NewStart, change.NewEnd);
            at = change.OldEnd;
        }

        Put(' ', old, at, end);

        void Put(char sign, List<string> lines, int from, int to)
        {
            for (var i = from; i < to; i++)
            {
                writer.Write(sign);
                writer.Write(lines[i]);
                if (!lines[i].EndsWith('\n'))
                {
                    writer.Write("\n\\ No newline at end of file\n");
                }
            }
        }
    }

    /// <summary>Lines with their ends; a lone carriage return ends none.</summary>
    private static List<string> Lines(byte[] bytes)
    {
        var text = Encoding.UTF8.GetString(bytes);
        var lines = new List<string>();
        var start = 0;
        while (start < text.Length)
        {
            var end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end + 1;
            lines.Add(text[start..end]);
            start = end;
        }

        return lines;
    }

    private static List<Change> Changes(List<string> old, List<string> now)
    {
        var same = 0;
        while (same < old.Count && same < now.Count && old[same] == now[same])
        {
            same++;
        }

        var tail = 0;
        while (tail < old.Count - same && tail < now.Count - same && old[^(tail + 1)] == now[^(tail + 1)])
        {
            tail++;
        }

        var left = old.GetRange(same, old.Count - same - tail);
        var right = now.GetRange(same, now.Count - same - tail);
        if (left.Count == 0 && right.Count == 0)
        {
            return [];
        }

        var inner = Shortest(left, right) ?? [new Change(0, left.Count, 0, right.Count)];
        return [.. inner.Select(c => new Change(c.OldStart + same, c.OldEnd + same, c.NewStart + same, c.NewEnd + same))];
    }

    /// <summary>
    /// The shortest edit script (E. W. Myers, Algorithmica 1 (1986) 251); null where it is longer than is worth looking for.
    /// </summary>
    private static List<Change>? Shortest(List<string> old, List<string> now)
    {
        var most = Math.Min(old.Count + now.Count, MostChanges);
        var reach = new int[(2 * most) + 3];
        var trace = new List<int[]>();
        for (var d = 0; d <= most; d++)
        {
            trace.Add([.. reach]);
            for (var k = -d; k <= d; k += 2)
            {
                var down = k == -d || (k != d && reach[most + k] < reach[most + k + 2]);
                var x = down ? reach[most + k + 2] : reach[most + k] + 1;
                var y = x - k;
                while (x < old.Count && y < now.Count && old[x] == now[y])
                {
                    x++;
                    y++;
                }

                reach[most + k + 1] = x;
                if (x >= old.Count && y >= now.Count)
                {
                    return Back(trace, most, old.Count, now.Count);
                }
            }
        }

        return null;
    }

    private static List<Change> Back(List<int[]> trace, int most, int x, int y)
    {
        var changes = new List<Change>();
        for (var d = trace.Count - 1; d > 0; d--)
        {
            var reach = trace[d];
            var k = x - y;
            var down = k == -d || (k != d && reach[most + k] < reach[most + k + 2]);
            var before = down ? k + 1 : k - 1;
            var startX = reach[most + before + 1];
            var startY = startX - before;
            changes.Add(down ? new Change(startX, startX, startY, startY + 1) : new Change(startX, startX + 1, startY, startY));
            (x, y) = (startX, startY);
        }

        changes.Reverse();
        var joined = new List<Change>();
        foreach (var change in changes)
        {
            if (joined.Count > 0 && joined[^1].OldEnd == change.OldStart && joined[^1].NewEnd == change.NewStart)
            {
                joined[^1] = new Change(joined[^1].OldStart, change.OldEnd, joined[^1].NewStart, change.NewEnd);
            }
            else
            {
                joined.Add(change);
            }
        }

        return joined;
    }

    private static IEnumerable<List<Change>> Hunks(List<Change> changes)
    {
        var hunk = new List<Change> { changes[0] };
        foreach (var change in changes.Skip(1))
        {
            if (change.OldStart - hunk[^1].OldEnd > 2 * Context)
            {
                yield return hunk;
                hunk = [];
            }

            hunk.Add(change);
        }

        yield return hunk;
    }

    private static string Range(int start, int count) => count == 1
        ? (start + 1).ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{(count == 0 ? start : start + 1)},{count}");

    /// <summary>A name with a blank in it ends with a tab, so that readers see where it ends.</summary>
    private static string Tab(string path) => path.Contains(' ', StringComparison.Ordinal) ? "\t" : "";

    /// <summary>Quoted the way git does where it holds control characters, quotes or backslashes.</summary>
    private static string Name(string path)
    {
        if (!path.Any(c => char.IsControl(c) || c is '"' or '\\'))
        {
            return path;
        }

        var quoted = new StringBuilder("\"");
        foreach (var b in Encoding.UTF8.GetBytes(path))
        {
            quoted.Append(b is (byte)'"' or (byte)'\\' ? "\\" + (char)b
                : b is < 0x20 or >= 0x7F ? "\\" + Convert.ToString(b, 8).PadLeft(3, '0')
                : ((char)b).ToString());
        }

        return quoted.Append('"').ToString();
    }

    private readonly record struct Change(int OldStart, int OldEnd, int NewStart, int NewEnd);
}
