namespace RecipeLint.House.Tests.Reading;

/// <summary>One use of a type of this house, or of a member of it.</summary>
/// <param name="Project">Project that uses.</param>
/// <param name="From">Namespace that uses.</param>
/// <param name="TypeProject">Project that declares the type.</param>
/// <param name="To">Namespace of the type.</param>
/// <param name="Type">Full name of the type, the outermost one of nested types.</param>
/// <param name="Member">The member that is used; empty where the type itself is named.</param>
/// <param name="Where">File and line of the use.</param>
internal sealed record Reference(string Project, string From, string TypeProject, string To, string Type, string Member, string Where);
