using System.Globalization;
using System.Text.Json;
using Deque.AxeCore.Commons;
using PuppeteerSharp;

namespace RecipeLint.Tests.Browser;

/// <summary>The browser of the system, without a window; nothing is downloaded. Where there is none the tests say so and stop.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

    private IBrowser? _browser;

    public static string? Program { get; } = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => Names.Select(name => Path.Combine(folder, name)))
        .FirstOrDefault(File.Exists);

    public async Task InitializeAsync()
    {
        if (Program is not { } program)
        {
            await Console.Error.WriteLineAsync("SKIPPED: no Chromium on this machine; the tests that open pages in a browser did not run.");
            return;
        }

        _browser = await Puppeteer.LaunchAsync(new LaunchOptions
        {
            Headless = true,
            ExecutablePath = program,
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
                "--disable-sync", "--disable-default-apps",
            ],
        });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }
    }

    /// <summary>A page opened from the disk; null where there is no browser.</summary>
    public async Task<OpenPage?> Open(string path, int width, bool dark)
    {
        if (_browser is null)
        {
            return null;
        }

        var page = await _browser.NewPageAsync();
        var asked = new List<string>();
        page.Request += (_, e) => asked.Add(e.Request.Url);
        var open = new OpenPage(page, asked);
        await open.Show(width, dark);
        await page.GoToAsync(new Uri(path).AbsoluteUri);
        return open;
    }
}

/// <summary>A page in the browser.</summary>
/// <param name="Asked">Addresses it asked for, its own first.</param>
public sealed record OpenPage(IPage Page, IReadOnlyList<string> Asked) : IAsyncDisposable
{
    private bool _asksAxe;

    /// <summary>The same page in a window of this width (CSS pixels), by day or at night.</summary>
    public async Task Show(int width, bool dark)
    {
        await Page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 900 });
        await Page.EmulateMediaFeaturesAsync(
            [new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = dark ? "dark" : "light" }]);
    }

    /// <summary>What axe objects to, one line each; empty when it is content.</summary>
    public async Task<IReadOnlyList<string>> Violations()
    {
        if (!_asksAxe)
        {
            await Page.EvaluateExpressionAsync(new BundledAxeScriptProvider().GetScript());
            _asksAxe = true;
        }

        var found = await Page.EvaluateExpressionAsync<JsonElement>(
            "axe.run({ resultTypes: ['violations'] }).then(r => r.violations.flatMap(v => v.nodes.map(n => v.id + ': ' + n.html.slice(0, 160) + ' ' + n.failureSummary)))");
        return [.. found.EnumerateArray().Select(v => v.GetString()!)];
    }

    /// <summary>Elements that stick out to the right of the window and do not scroll in a frame of their own.</summary>
    public async Task<IReadOnlyList<string>> StickingOut()
    {
        var found = await Page.EvaluateExpressionAsync<JsonElement>(
            """
            [...document.querySelectorAll('body *')].filter(e => {
              for (let p = e.parentElement; p; p = p.parentElement) { if (getComputedStyle(p).overflowX === 'auto') { return false; } }
              const r = e.getBoundingClientRect();
              return r.width > 0 && r.right > document.documentElement.clientWidth + 1 && !e.closest('svg, .skip') && !e.matches('.skip');
            }).map(e => e.tagName + '.' + e.className + ' ' + Math.round(e.getBoundingClientRect().right) + ': ' + e.textContent.slice(0, 60))
            """);
        return [.. found.EnumerateArray().Select(v => v.GetString()!)];
    }

    public async Task<string> Text(string script) => (await Page.EvaluateExpressionAsync<JsonElement>(script)).ToString();

    public async Task<int> Number(string script) => int.Parse(await Text(script), CultureInfo.InvariantCulture);

    public async ValueTask DisposeAsync() => await Page.DisposeAsync();
}
