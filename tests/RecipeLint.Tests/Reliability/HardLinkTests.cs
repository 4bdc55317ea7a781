using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>A new file comes to its place in one step: whole, and never over another.</summary>
public sealed class HardLinkTests
{
    [Fact]
    public void ASecondNameHoldsTheWholeFileAndTakesNoOther()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var scratch = new Scratch();
        var (file, other) = (scratch.Write("a", "whole"), scratch.Write("b", "another run's"));
        var name = Path.Combine(scratch.Path, "né w");

        Assert.True(HardLink.TryMake(file, name));
        File.Delete(file);
        Assert.Equal("whole", File.ReadAllText(name));
        Assert.False(HardLink.TryMake(name, other));
        Assert.Equal("another run's", File.ReadAllText(other));
        Assert.False(HardLink.TryMake(file, Path.Combine(scratch.Path, "c")));
    }
}
