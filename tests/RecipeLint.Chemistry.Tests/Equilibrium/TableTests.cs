using RecipeLint.Chemistry.Tests.Equilibrium.Generation;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

public sealed class TableTests
{
    [Fact]
    public void ConstantTableIsFresh() => Repository.Golden(TableWriter.Path, TableWriter.Write(ThermoData.Load()));

    [Fact]
    public void CalibrationIsFresh() => Repository.Golden(Calibration.Path, Calibration.Write(ThermoData.Load()));

    [Fact]
    public void ComponentRowsAreFresh() => Repository.Golden(RowWriter.ComponentPath, RowWriter.Components(ThermoData.Load()));

    [Fact]
    public void SolidRowsAreFresh() => Repository.Golden(RowWriter.SolidPath, RowWriter.Solids(ThermoData.Load()));
}
