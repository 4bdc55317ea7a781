using System.Collections.Concurrent;

namespace RecipeLint.Shell;

/// <summary>Tells which files below a folder were touched, those of one moment together.</summary>
internal sealed class FileWatch : IDisposable
{
    /// <summary>So long nothing more may happen before what happened is told: who saves several files at once gets one answer.</summary>
    private static readonly TimeSpan _quiet = TimeSpan.FromMilliseconds(30);

    /// <summary>So long at most; who writes without a pause gets an answer all the same.</summary>
    private static readonly TimeSpan _longest = TimeSpan.FromMilliseconds(500);

    private readonly FileSystemWatcher _watcher;
    private readonly BlockingCollection<string?> _touched = [];

    /// <exception cref="UsageException">The folder cannot be watched.</exception>
    public FileWatch(string folder)
    {
        try
        {
            _watcher = new FileSystemWatcher(folder) { IncludeSubdirectories = true, InternalBufferSize = 1 << 16 };
            _watcher.Changed += (_, e) => Touch(e.FullPath);
            _watcher.Created += (_, e) => Touch(e.FullPath);
            _watcher.Deleted += (_, e) => Touch(e.FullPath);
            _watcher.Renamed += (_, e) =>
            {
                Touch(e.OldFullPath);
                Touch(e.FullPath);
            };
            _watcher.Error += (_, _) => _touched.Add(null);
            _watcher.EnableRaisingEvents = true;
        }
        catch (Exception e) when (e is IOException or ArgumentException)
        {
            throw new UsageException($"'{folder}' cannot be watched: {e.Message}");
        }
    }

    /// <summary>Waits until something is touched. Full paths with forward slashes; null when it is not known what.</summary>
    /// <exception cref="OperationCanceledException">Nobody waits any more.</exception>
    public IReadOnlyCollection<string>? Next(CancellationToken stop)
    {
        var found = new HashSet<string>(StringComparer.Ordinal);
        var unknown = !Add(_touched.Take(stop));
        using var longest = CancellationTokenSource.CreateLinkedTokenSource(stop);
        longest.CancelAfter(_longest);
        try
        {
            while (_touched.TryTake(out var more, (int)_quiet.TotalMilliseconds, longest.Token))
            {
                unknown |= !Add(more);
            }
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            // It goes on and on; what there is is told now.
        }

        return unknown ? null : found;

        bool Add(string? path)
        {
            if (path is not null)
            {
                found.Add(path);
            }

            return path is not null;
        }
    }

    public void Dispose()
    {
        _watcher.Dispose();
        _touched.Dispose();
    }

    private void Touch(string path)
    {
        var full = path.Replace('\\', '/');
        if (!full.Contains("/.git/", StringComparison.Ordinal) && !full.EndsWith("/.git", StringComparison.Ordinal))
        {
            _touched.Add(full);
        }
    }
}
