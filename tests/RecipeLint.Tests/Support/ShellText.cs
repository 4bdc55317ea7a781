using System.Diagnostics;
using System.Text;

namespace RecipeLint.Tests.Support;

/// <summary>Reads scripts as far as quotes and brackets go, by the rules that the manuals of the shells give for them.</summary>
internal static class ShellText
{
    /// <summary>
    /// The script without what stands in quotes and behind a number sign. In zsh a backslash means nothing in single quotes and takes the next
    /// character outside; in fish it takes a quote or itself inside too; in PowerShell a quote is doubled.
    /// </summary>
    public static string WithoutQuotes(string script, string shell)
    {
        var bare = new StringBuilder();
        for (var i = 0; i < script.Length; i++)
        {
            if (script[i] == '\\' && shell != "powershell")
            {
                i++;
            }
            else if (script[i] == '#' && (i == 0 || script[i - 1] is '\n' or ' '))
            {
                i = script.IndexOf('\n', i);
            }
            else if (script[i] is '\'' or '"' && End(script, i, shell) is var end and > 0)
            {
                i = end;
            }
            else
            {
                bare.Append(script[i]);
            }
        }

        return bare.ToString();
    }

    /// <summary>What stands in single quotes, where '\'' goes on with a quote in it.</summary>
    public static IEnumerable<string> Quoted(string script)
    {
        for (var at = script.IndexOf('\''); at >= 0; at = script.IndexOf('\'', at + 1))
        {
            var text = new StringBuilder();
            int end;
            while ((end = script.IndexOf('\'', at + 1)) > 0 && string.CompareOrdinal(script, end, @"'\''", 0, 4) == 0)
            {
                text.Append(script, at + 1, end - at - 1).Append('_');
                at = end + 3;
            }

            text.Append(script, at + 1, end - at - 1);
            at = end;
            yield return text.ToString();
        }
    }

    /// <summary>Brackets that are not closed, or closed without being open.</summary>
    /// <param name="hasCases">True where a pattern of 'case' ends in a bracket of its own.</param>
    public static string Unbalanced(string bare, bool hasCases)
    {
        var open = new Stack<char>();
        foreach (var line in bare.Split('\n'))
        {
            var label = hasCases && line.TrimEnd().EndsWith(')') && !line.Contains('(', StringComparison.Ordinal) && line.Trim() is not ")";
            foreach (var c in label ? line.TrimEnd()[..^1] : line)
            {
                if (c is '(' or '[' or '{')
                {
                    open.Push(c);
                }
                else if (c is ')' or ']' or '}' && (!open.TryPop(out var opened) || opened != (c == ')' ? '(' : c == ']' ? '[' : '{')))
                {
                    return $"'{c}' in: {line}";
                }
            }
        }

        return string.Concat(open);
    }

    /// <summary>The shell's own reader, without running anything; nothing happens where the shell is not installed.</summary>
    public static void AskTheShell(string shell, string script)
    {
        using var scratch = new Scratch();
        var path = scratch.Write(shell == "powershell" ? "script.ps1" : "script", script);
        var (program, arguments) = shell switch
        {
            "zsh" => ("zsh", (string[])["-n", path]),
            "fish" => ("fish", ["--no-execute", path]),
            _ => ("pwsh", ["-NoProfile", "-Command", $"$e = $null; [void][System.Management.Automation.Language.Parser]::ParseFile('{path}', [ref]$null, [ref]$e); exit $e.Count"]),
        };
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!;
            var said = process.StandardError.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, said);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Console.Error.WriteLine($"SKIPPED: no {program} on this machine; its script was read by the test alone.");
        }
    }

    private static int End(string script, int at, string shell)
    {
        for (var i = at + 1; i < script.Length; i++)
        {
            if (script[i] == '\\' && ((shell == "fish") || (shell == "zsh" && script[at] == '"')))
            {
                i++;
            }
            else if (script[i] == script[at])
            {
                return i;
            }
        }

        return -1;
    }
}
