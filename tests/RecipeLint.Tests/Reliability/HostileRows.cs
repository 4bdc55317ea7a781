using System.Text;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Tests.Reliability;

/// <summary>One hostile shop and how it is asked.</summary>
internal sealed record HostileRow(string Threat, string Name, IFileTree Files, string[] Arguments);

/// <summary>Every hostile input of the table, over files in memory.</summary>
internal static class HostileRows
{
    private const string Steps = """ "steps": [{"pour": "500 mL", "of": "distilled"}, {"add": "potassium-nitrate", "amount": "50 g"}, {"topUp": "1 L", "of": "distilled"}]""";

    public static IReadOnlyList<HostileRow> All { get; } = [.. Nesting(), .. Numbers(), .. Encodings(), .. Names(), .. Paths(), .. Sizes(), .. Words()];

    private static IEnumerable<HostileRow> Nesting()
    {
        yield return Stock("nesting", "100,000 lists", new string('[', 100_000));
        yield return Stock("nesting", "50,000 objects", Repeat("{\"a\":", 50_000));
        yield return Stock("nesting", "65 levels in a note", $$"""{"format": 1, "makes": "1 L", {{Steps}}, "note": {{Repeat("[", 65)}}{{Repeat("]", 65)}}}""");
        yield return Stock("nesting", "64 levels of steps", $$"""{"format": 1, "makes": "1 L", "steps": {{Repeat("[", 62)}}{{Repeat("]", 62)}}}""");
        yield return Shop("nesting", "a settings file 60 levels deep", ("recipelint.json", Repeat("{\"rules\":", 60) + "1" + Repeat("}", 60)), ("a.stock.json", Good()));
    }

    private static IEnumerable<HostileRow> Numbers()
    {
        foreach (var number in (string[])["1e400", "-1e400", "1e-400", "-0", "NaN", "Infinity", "0x10", "01", "1.", ".5", "+1", new string('9', 400), "9223372036854775808"])
        {
            yield return Stock("numbers", "format " + Short(number), $$"""{"format": {{number}}, "makes": "1 L", {{Steps}}}""");
        }

        foreach (var amount in (string[])["1e308 g", "1e400 g", "-1 g", "-0 g", "0 g", "1e-320 g", "1e-400 g", "NaN g", "∞ g", "Infinity g", "1e15 kg", "٣ g", "1,5 g", "1 g ± 1e308 g", "1e9..1e-9 g", "1e30 mmol"])
        {
            yield return Stock("numbers", "amount " + amount, Good().Replace("50 g", amount, StringComparison.Ordinal));
        }

        foreach (var volume in (string[])["1e-300 L", "1e300 L", "0 L", "-1 L", "1e-9 mL"])
        {
            yield return Stock("numbers", "makes " + volume, Good().Replace("\"1 L\"", $"\"{volume}\"", StringComparison.Ordinal));
        }

        foreach (var dose in (string[])["1:0", "0:1", "1:1e308", "1e308 mL/L", "-1:100"])
        {
            yield return Shop(
                "numbers",
                "dose " + dose,
                ("a.stock.json", Good()),
                ("r.recipe.json", $$"""{"format": 1, "final": "10 L", "doses": [{"stock": "a.stock.json", "dose": "{{dose}}"}]}"""));
        }
    }

    private static IEnumerable<HostileRow> Encodings()
    {
        var good = Encoding.UTF8.GetBytes(Good());
        yield return Bytes("encodings", "byte order mark", [0xEF, 0xBB, 0xBF, .. good]);
        yield return Bytes("encodings", "two byte order marks", [0xEF, 0xBB, 0xBF, 0xEF, 0xBB, 0xBF, .. good]);
        yield return Bytes("encodings", "UTF-16, little end first", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Good())]);
        yield return Bytes("encodings", "UTF-16, big end first", [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(Good())]);
        yield return Bytes("encodings", "UTF-32", Encoding.UTF32.GetBytes(Good()));
        yield return Bytes("encodings", "Latin-1", Encoding.Latin1.GetBytes(Good().Replace("potassium", "café", StringComparison.Ordinal)));
        yield return Bytes("encodings", "overlong zero", [.. good[..^1], 0xC0, 0x80, (byte)'}']);
        yield return Bytes("encodings", "surrogate as three bytes", Encoding.Latin1.GetBytes("{\"format\": 1, \"name\": \"\u00ed\u00a0\u0080\"}"));
        yield return Bytes("encodings", "cut within a character", [.. Encoding.UTF8.GetBytes("{\"name\": \""), 0xE2, 0x82]);
        yield return Bytes("encodings", "NUL bytes", new byte[1000]);
        yield return Stock("surrogates", "half a pair in a value", Named("\\ud800"));
        yield return Stock("surrogates", "half a pair in a key", """{"format": 1, "\udc00": 1}""");
        yield return Stock("surrogates", "a pair the wrong way round", Named("\\udc00\\ud800"));
        yield return Stock("duplicate members", "twice the same", Good().Replace("\"format\": 1", "\"format\": 1, \"makes\": \"2 L\"", StringComparison.Ordinal));
        yield return Stock("duplicate members", "once escaped", Good().Replace("\"format\": 1", "\"format\": 1, \"\\u006dakes\": \"2 L\"", StringComparison.Ordinal));
        yield return Stock("duplicate members", "1,000 times", "{" + Repeat("\"makes\": \"1 L\", ", 1000) + "\"format\": 1}");
        yield return Shop("duplicate members", "in the settings", ("recipelint.json", """{"rules": {}, "rules": {"element-low": "off"}}"""), ("a.stock.json", Good()));
    }

    private static IEnumerable<HostileRow> Names()
    {
        (string What, string Text)[] evil =
        [
            ("clears the screen", "\u001b[2Jx"), ("sets the title", "\u001b]0;x\u0007"), ("C1 control", "\u009b31m"), ("right to left", "a\u202egnp"), ("isolate", "\u2066x\u2069"), ("no width", "a\u200bb"), ("line separator", "a\u2028b"),
            ("workflow command", "x\n::error::y"), ("stops workflow commands", "\n::stop-commands::z"), ("azure command", "x\n##vso[task.setvariable variable=a]b"), ("markup", "<script>alert(1)</script>"), ("attribute", "\" onload=\"x"),
            ("Markdown link", "[x](javascript:alert(1))"), ("Markdown table", "a|b`c@d"), ("CDATA", "]]><!-- &amp; -->"), ("formula", "=1+1"), ("formula at", "@SUM(1)"), ("shell", "$(touch x); `id`"), ("format", "{0} %s %n"), ("link", "\u001b]8;;http://x.invalid\u001b\\x"),
        ];
        foreach (var (what, text) in evil)
        {
            yield return Stock("control and markup in values", what, Named(Json(text)));
            yield return Stock("control and markup in values", what + ", as substance", Good().Replace("potassium-nitrate", Json(text), StringComparison.Ordinal));
            yield return Shop("control and markup in file names", what, (text.Replace('/', '-') + ".stock.json", "{"));
            yield return Sarif("control and markup in SARIF", what, (text.Replace('/', '-') + ".stock.json", Named(Json(text))));
            var both = Tree([(text.Replace('/', '-') + ".stock.json", Named(Json(text)).Replace("potassium-nitrate", Json(text), StringComparison.Ordinal))]);
            foreach (var format in (string[])["markdown", "github", "junit", "csv"])
            {
                yield return new HostileRow("control and markup in " + format, what, both, ["check", ".", "--format", format]);
            }

            yield return new HostileRow(
                "control and markup in html", what, Tree([("old/a.stock.json", Good()), ("new/a.stock.json", Named(Json(text)).Replace("50 g", Json(text), StringComparison.Ordinal))]), ["compare", "old", "new", "--format", "html"]);
        }
    }

    private static IEnumerable<HostileRow> Paths()
    {
        foreach (var path in (string[])["../../etc/passwd", "/etc/passwd", "C:/windows/win.ini", "\\\\\\\\host\\\\share\\\\a.stock.json", "//host/share/a.stock.json", "file:///etc/passwd", "http://x.invalid/a.stock.json", "a.stock.json/../../b.stock.json", "\\u0000.stock.json", "", ".", "..", "~/a.stock.json", "$HOME/a.stock.json"])
        {
            yield return Shop(
                "path traversal",
                "stock " + (path.Length == 0 ? "(empty)" : path.Replace("\\u0000", "NUL", StringComparison.Ordinal)),
                ("r.recipe.json", $$"""{"format": 1, "final": "10 L", "doses": [{"stock": "{{path}}", "dose": "1:100"}]}"""));
        }

        yield return Shop("path traversal", "substances out of the shop", ("shop/recipelint.json", """{"substances": ["../../**/*.json", "/etc/*"]}"""), ("shop/a.stock.json", Good()));
        yield return Shop("remote schema", "$schema on the network", ("a.stock.json", Good().Replace("{\"format\"", "{\"$schema\": \"http://x.invalid/s.json\", \"format\"", StringComparison.Ordinal)));
        var loop = new MemoryFileTree("/shop").AddLink("a.stock.json", "b.stock.json").AddLink("b.stock.json", "a.stock.json");
        yield return new HostileRow("links", "two links in a circle", loop, ["check", "a.stock.json"]);
        yield return new HostileRow("links", "a link to nothing", new MemoryFileTree("/shop").AddLink("a.stock.json", "none"), ["check", "a.stock.json"]);
        yield return new HostileRow("links", "a link out of the repository", new MemoryFileTree("/shop").Add("/shop/.git/HEAD", "").Add("/etc/x.stock.json", Good()).AddLink("a.stock.json", "/etc/x.stock.json"), ["check", "a.stock.json"]);
        yield return new HostileRow("response files", "an argument with @", new MemoryFileTree("/shop").Add("args", "--version"), ["check", "@args"]);
        yield return new HostileRow("unreadable files", "no permission", new LockedTree(new MemoryFileTree("/shop").Add("a.stock.json", Good())), ["check", "a.stock.json"]);
        yield return new HostileRow("unreadable files", "no permission, in a folder", new LockedTree(new MemoryFileTree("/shop").Add("a.stock.json", Good())), ["check", "."]);
        yield return Shop("circles", "two stocks of each other", ("a.stock.json", Aliquot("b.stock.json")), ("b.stock.json", Aliquot("a.stock.json")));
        yield return Shop("circles", "a stock of itself", ("a.stock.json", Aliquot("a.stock.json")));
    }

    private static IEnumerable<HostileRow> Sizes()
    {
        yield return Stock("sizes", "empty", "");
        yield return Stock("sizes", "one byte", "{");
        yield return Stock("sizes", "white space only", new string(' ', 100_000));
        yield return Bytes("sizes", "past the limit", new byte[2_000_000]);
        yield return Stock("sizes", "a name of 100 kB", Named(new string('x', 100_000)));
        yield return Stock("sizes", "an amount of 100 kB", Good().Replace("50 g", new string('5', 100_000) + " g", StringComparison.Ordinal));
        yield return Stock("sizes", "a substance of 100 kB", Good().Replace("potassium-nitrate", new string('p', 100_000), StringComparison.Ordinal));
        yield return Stock("sizes", "a key of 100 kB", $$"""{"format": 1, "{{new string('k', 100_000)}}": 1}""");
    }

    private static IEnumerable<HostileRow> Words()
    {
        var shop = new MemoryFileTree("/shop").Add("a.stock.json", Good());
        yield return new HostileRow("evil expressions", "a pattern of stars", shop, ["check", new string('*', 60) + "a" + new string('*', 60) + "b"]);
        yield return Shop("evil expressions", "a pattern of stars in settings", ("recipelint.json", $$"""{"substances": ["{{Repeat("**/*", 25)}}x"]}"""), ("a.stock.json", Good()));
        yield return new HostileRow("evil expressions", "a formula of brackets", shop, ["dissolve", "1 g/L " + new string('(', 150)]);
        yield return new HostileRow("evil expressions", "a formula of 10,000 characters", shop, ["dissolve", "1 g/L " + Repeat("Na", 5000)]);
        yield return new HostileRow("evil expressions", "100 kB of signs", shop, ["diagnose", "a.stock.json", "--seen", Repeat("no white not needles ", 5000)]);
        yield return new HostileRow("evil expressions", "control characters in arguments", shop, ["check", "\u001b[2J\n::error::x"]);
        yield return new HostileRow("evil expressions", "control characters in an option", shop, ["check", "a.stock.json", "--\u001b[2J\n::error::x"]);
        yield return new HostileRow("evil expressions", "an argument with NUL", shop, ["check", "a\0b.stock.json"]);
    }

    private static HostileRow Stock(string threat, string name, string text) => Shop(threat, name, ("a.stock.json", text));

    private static HostileRow Bytes(string threat, string name, byte[] bytes) => new(threat, name, new MemoryFileTree("/shop").Add("a.stock.json", bytes), ["check", "."]);

    private static HostileRow Shop(string threat, string name, params (string Path, string Text)[] files) => new(threat, name, Tree(files), ["check", "."]);

    private static HostileRow Sarif(string threat, string name, params (string Path, string Text)[] files) => new(threat, name, Tree(files), ["check", ".", "--format", "sarif"]);

    private static MemoryFileTree Tree((string Path, string Text)[] files)
    {
        var tree = new MemoryFileTree("/shop");
        foreach (var (path, text) in files)
        {
            tree.Add(path, text);
        }

        return tree;
    }

    private static string Good() => $$"""{"format": 1, "makes": "1 L", {{Steps}}}""";

    private static string Named(string json) => $$"""{"format": 1, "name": "{{json}}", "makes": "1 L", {{Steps}}}""";

    private static string Aliquot(string file) => $$"""{"format": 1, "makes": "1 L", "steps": [{"add": "{{file}}", "amount": "10 mL"}, {"topUp": "1 L", "of": "distilled"}]}""";

    private static string Json(string text) => System.Text.Json.JsonEncodedText.Encode(text).ToString();

    private static string Repeat(string text, int count) => string.Concat(Enumerable.Repeat(text, count));

    private static string Short(string text) => text.Length > 30 ? $"of {text.Length} digits" : text;

    /// <summary>Files that may be listed and not read.</summary>
    private sealed class LockedTree(IFileTree under) : IFileTree
    {
        public string CurrentFolder => under.CurrentFolder;

        public string FullPath(string path) => under.FullPath(path);

        public EntryKind Kind(string path) => under.Kind(path);

        public string ResolveLinks(string path) => under.ResolveLinks(path);

        public IReadOnlyList<string> Names(string folder) => under.Names(folder);

        public FileBytes Read(string path, int sizeLimit) => new(null, null, "permission is denied");
    }
}
