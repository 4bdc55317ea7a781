using System.Text;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>
/// Makes a file of answers to questions. Every answer is read as the file will be; what cannot be read is asked again. Enter leaves a value
/// out, the end of the input ends the asking.
/// </summary>
internal sealed class InitForms(TextReader answers, TextWriter screen)
{
    private const int MostTries = 20;

    private static readonly string[] _ions =
        ["Ca", "Mg", "Na", "K", "NH4", "HCO3", "SO4", "Cl", "NO3", "P", "Fe", "Mn", "Zn", "Cu", "B", "Si"];

    private static readonly string[] _elements = ["N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "Cu", "B", "Mo"];

    private static readonly Due _range = Due.Analyte with { Examples = ["120..180 mg/L", "40 mg/L"] };

    private static readonly Due _capacity = Due.Hardness with { Bases = ["CaCO3", "HCO3", "CaO", "Ca"] };

    private static readonly Due _phRange = Due.Ph with { AllowTolerance = false };

    private static readonly Due _ecRange = Due.Conductivity with { AllowTolerance = false };

    private readonly List<DraftMember> _members = [new DraftMember("format", new JsonDraft.Literal("1"))];
    private bool _ended;

    /// <summary>A product that only its label describes.</summary>
    /// <exception cref="UsageException">Too little was said.</exception>
    public (string Path, string Text) Product()
    {
        var name = Needed("What does the bag or bottle say it is?");
        var id = Slugged(name);
        var product = new List<DraftMember> { new("id", JsonDraft.Of(id)), new("name", JsonDraft.Of(name)) };
        var isLiquid = Choice("Solid or liquid? Enter for solid.", "solid", "liquid") == "liquid";
        if (isLiquid)
        {
            product.Add(new DraftMember("form", JsonDraft.Of("liquid")));
            Add(product, "density", "Its density?", Due.Density);
        }

        var label = Label(isLiquid);
        product.Add(new DraftMember("label", new JsonDraft.Object(label)));
        AddText(product, "certificate", "Where do the figures come from (label, certificate, data sheet)?");
        if (Text("Hazard statements on the label, such as H302, H318? Apart by commas.") is { } codes)
        {
            var list = codes.Split([',', ' ', ';'], StringSplitOptions.RemoveEmptyEntries).Select(c => JsonDraft.Of(c.ToUpperInvariant()));
            product.Add(new DraftMember("hazards", new JsonDraft.List([.. list])));
        }

        _members.Add(new DraftMember("substances", new JsonDraft.List([new JsonDraft.Object(product)])));
        return File(id + ".substances.json");
    }

    /// <summary>An analysis of source water.</summary>
    /// <exception cref="UsageException">Too little was said.</exception>
    public (string Path, string Text) Water()
    {
        var name = Needed("What is the water called?");
        _members.Add(new DraftMember("name", JsonDraft.Of(name)));
        AddText(_members, "date", "When was the sample taken?");
        AddText(_members, "source", "Which laboratory or report?");
        Add(_members, "EC", "Conductivity at 25 °C?", _ecRange);
        Add(_members, "pH", "pH?", _phRange);
        Add(_members, "alkalinity", "Alkalinity, with what it counts as?", _capacity);
        Add(_members, "hardness", "Hardness, with what it counts as?", _capacity);
        var ions = new List<DraftMember>();
        foreach (var ion in _ions)
        {
            Add(ions, ion, ion + "?", Due.Analyte with { Bases = ["CaCO3", "N", "S", "P"] });
        }

        if (ions.Count > 0)
        {
            _members.Add(new DraftMember("ions", new JsonDraft.Object(ions)));
        }

        return _members.Exists(m => m.Name is "EC" or "alkalinity" or "hardness" or "ions")
            ? File(Slugged(name) + ".water.json")
            : throw new UsageException("no value of the water was said; nothing was written.");
    }

    /// <summary>What a crop of the shop wants, over a built-in profile.</summary>
    /// <exception cref="UsageException">Too little was said.</exception>
    public (string Path, string Text) Profile(IReadOnlyCollection<string> builtIn)
    {
        var name = Slugged(Needed("What do recipes write as their crop?"));
        if (builtIn.Contains(name))
        {
            throw new UsageException($"'{name}' is a built-in profile; give yours another name.");
        }

        _members.Add(new DraftMember("name", JsonDraft.Of(name)));
        var basis = Choice($"Which built-in profile is it like ({string.Join(", ", builtIn)})? Enter for generic.", [.. builtIn]);
        if (basis is not null)
        {
            _members.Add(new DraftMember("extends", JsonDraft.Of(basis)));
        }

        AddText(_members, "source", "Where do the figures come from?");
        Add(_members, "EC", "Conductivity of the final solution, from..to?", _ecRange);
        Add(_members, "pH", "pH of the final solution, from..to?", _phRange);
        var elements = new List<DraftMember>();
        foreach (var element in _elements)
        {
            if (Quantity($"Usual range of {element}?", _range) is { } range)
            {
                elements.Add(new DraftMember(element, JsonDraft.Of(("range", JsonDraft.Of(range)))));
            }
        }

        if (elements.Count > 0)
        {
            _members.Add(new DraftMember("elements", new JsonDraft.Object(elements)));
        }

        return File(name + ".profile.json");
    }

    private List<DraftMember> Label(bool isLiquid)
    {
        var basis = Choice("Does the label count oxides (P2O5, K2O) or elements (P, K)? oxide or element", "oxide", "element")
            ?? throw new UsageException("whether the label counts oxides or elements decides every figure; look at it and try again.");
        var label = new List<DraftMember> { new("basis", JsonDraft.Of(basis)) };
        if (isLiquid && Choice("Per cent by weight (w/w) or grams in 100 mL (w/v)? Enter for w/w.", "w/w", "w/v") is { } percent)
        {
            label.Add(new DraftMember("percent", JsonDraft.Of(percent)));
        }

        var nitrogen = new List<DraftMember>();
        foreach (var form in (string[])["nitrate", "ammonium", "urea"])
        {
            Add(nitrogen, form, $"Nitrogen as {form}?", Due.LabelContent);
        }

        if (nitrogen.Count > 0)
        {
            label.Add(new DraftMember("nitrogen", new JsonDraft.Object(nitrogen)));
        }
        else
        {
            Add(label, "N", "Nitrogen in all?", Due.LabelContent);
        }

        string[] bulk = basis == "oxide" ? ["P2O5", "K2O", "CaO", "MgO", "SO3"] : ["P", "K", "Ca", "Mg", "S"];
        string[] metals = ["Fe", "Mn", "Zn", "Cu"];
        foreach (var key in (string[])[.. bulk, .. metals, "B", "Mo"])
        {
            Add(label, key, key + "?", Due.LabelContent);
        }

        if (label.Exists(m => metals.Contains(m.Name)))
        {
            AddText(label, "chelatedWith", "Which agent are the metals chelated with, such as EDTA? Enter for none.");
        }

        return label.Count > 1 ? label : throw new UsageException("no content was said; nothing was written.");
    }

    private (string Path, string Text) File(string name) =>
        (name, Encoding.UTF8.GetString(JsonPatcher.Create(new JsonEdit.NewFile(Place.Whole(name), new JsonDraft.Object(_members))).Bytes!));

    private static string Slugged(string name) => Slug.Of(name) is { Length: > 0 and <= 80 } slug
        ? slug
        : throw new UsageException($"'{name}' cannot be a file name; use letters and digits.");

    private void Add(List<DraftMember> members, string key, string question, Due due)
    {
        if (Quantity(question, due) is { } value)
        {
            members.Add(new DraftMember(key, JsonDraft.Of(value)));
        }
    }

    private void AddText(List<DraftMember> members, string key, string question)
    {
        if (Text(question) is { } value)
        {
            members.Add(new DraftMember(key, JsonDraft.Of(value)));
        }
    }

    private string Needed(string question) =>
        Text(question) ?? throw new UsageException("no name was given; nothing was written.");

    /// <summary>A quantity as it will stand in the file; null for Enter.</summary>
    private string? Quantity(string question, Due due)
    {
        for (var tries = 0; tries < MostTries && Text($"{question} ({string.Join(", ", due.Examples)})") is { } answer; tries++)
        {
            if (QuantityReader.TryRead(answer, due, out _, out var fault))
            {
                return answer;
            }

            Say(fault.Message);
        }

        return null;
    }

    /// <summary>One of a few words; null for Enter.</summary>
    private string? Choice(string question, params string[] words)
    {
        for (var tries = 0; tries < MostTries && Text(question) is { } answer; tries++)
        {
            if (words.FirstOrDefault(w => w.Equals(answer, StringComparison.OrdinalIgnoreCase)) is { } word)
            {
                return word;
            }

            Say($"'{answer}' is none of {string.Join(", ", words)}.");
        }

        return null;
    }

    private void Say(string text) => screen.WriteLine(Printable.Show(text));

    private string? Text(string question)
    {
        if (_ended)
        {
            return null;
        }

        Say(question);
        screen.Write("> ");
        screen.Flush();
        var line = answers.ReadLine();
        _ended = line is null;
        return line?.Trim() is { Length: > 0 } text ? text : null;
    }
}
