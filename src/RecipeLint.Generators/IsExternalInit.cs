namespace System.Runtime.CompilerServices;

/// <summary>Lets records compile for the framework that compilers load.</summary>
internal static class IsExternalInit;
