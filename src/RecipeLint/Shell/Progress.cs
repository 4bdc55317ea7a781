using System.Diagnostics;
using System.Globalization;
using RecipeLint.Reports;

namespace RecipeLint.Shell;

/// <summary>
/// How far a long run has come, on one line of the terminal that is wiped at the end. Says nothing elsewhere, and nothing of a short run.
/// </summary>
/// <param name="terminal">Standard error; null where it is no terminal.</param>
internal sealed class Progress(TextWriter? terminal)
{
    private static readonly TimeSpan _first = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan _pause = TimeSpan.FromMilliseconds(200);

    /// <summary>More of a name would wrap the line, which then could not be wiped.</summary>
    private const int LongestName = 36;

    private readonly Lock _gate = new();
    private readonly Stopwatch _watch = new();
    private TimeSpan _next = _first;
    private int _all;
    private int _done;
    private bool _shown;

    public void Begin(int all)
    {
        _all = all;
        _watch.Start();
    }

    /// <param name="last">The file that was judged last, as it is written in reports.</param>
    public void Add(int files, string last)
    {
        lock (_gate)
        {
            _done += files;
            if (terminal is null || _watch.Elapsed < _next)
            {
                return;
            }

            var rate = _done / Math.Max(0.001, _watch.Elapsed.TotalSeconds);
            var shown = Printable.Show(last);
            shown = shown.Length > LongestName ? "..." + shown[^LongestName..] : shown;
            terminal.Write(
                string.Create(CultureInfo.InvariantCulture, $"\r\u001b[K{_done} of {_all} files, {rate:0} a second, {shown}"));
            _next = _watch.Elapsed + _pause;
            _shown = true;
        }
    }

    public void End()
    {
        if (_shown)
        {
            terminal!.Write("\r\u001b[K");
        }
    }
}
