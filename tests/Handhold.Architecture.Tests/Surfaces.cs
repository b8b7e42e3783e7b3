using System.Collections;
using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace Handhold.Architecture.Tests;

/// <summary>What a public type may look like: nobody outside can change a result or forge one.</summary>
internal static class Surfaces
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
    private static readonly ImmutableArray<string> s_proofs = ["Tests", "Benchmarks", "Laws"];

    /// <summary>Everything about a type that would let somebody change what it says, in words.</summary>
    public static IEnumerable<string> WaysToChange(Type type)
    {
        foreach (FieldInfo field in type.GetFields(Declared).Where(f => !f.IsLiteral && !f.IsInitOnly && !type.IsEnum))
        {
            yield return $"{type.Name}.{field.Name} is a public field that can be written";
        }
        foreach (PropertyInfo property in type.GetProperties(Declared))
        {
            if (property.SetMethod is { IsPublic: true } set && !IsInit(set))
            {
                yield return $"{type.Name}.{property.Name} can be set";
            }
            if (IsMutableCollection(property.PropertyType))
            {
                yield return $"{type.Name}.{property.Name} hands out a collection that can be written";
            }
        }
        if (type is { IsValueType: true, IsEnum: false } && !type.IsDefined(typeof(IsReadOnlyAttribute)))
        {
            yield return $"{type.Name} is a struct that is not readonly";
        }
    }

    /// <summary>Everything about a class that would let somebody make or extend one outside the library, in words.</summary>
    public static IEnumerable<string> WaysToForge(Type type)
    {
        if (
            !type.IsClass
            || IsStatic(type)
            || IsRecord(type)
            || typeof(Delegate).IsAssignableFrom(type)
            || typeof(Attribute).IsAssignableFrom(type)
        )
        {
            yield break;
        }
        ConstructorInfo[] constructors = type.GetConstructors(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance);
        if (constructors.Any(c => c.IsPublic))
        {
            yield return $"{type.Name} has a public constructor";
        }
        if (
            !type.IsSealed
            && constructors.Any(c => c.IsFamily || c.IsFamilyOrAssembly || (c.IsPublic && !type.IsAbstract) || !type.IsAbstract)
        )
        {
            yield return $"{type.Name} is neither sealed nor closed to heirs from outside";
        }
    }

    /// <summary>Assemblies, the proofs of the house aside, that this one shows its internals to.</summary>
    public static IEnumerable<string> FriendsOf(Assembly assembly) =>
        assembly
            .GetCustomAttributes<InternalsVisibleToAttribute>()
            .Select(friend => friend.AssemblyName)
            .Where(name => !s_proofs.Any(end => name.EndsWith(end, StringComparison.Ordinal)));

    /// <summary>Assemblies of the house, the core aside, that this one uses.</summary>
    public static IEnumerable<string> NeighboursOf(Assembly assembly) =>
        assembly.GetReferencedAssemblies().Select(a => a.Name!).Where(n => n.StartsWith("Handhold.", StringComparison.Ordinal));

    /// <summary>Records, the options: sealed, so that <c>with</c> and equality mean what they say.</summary>
    public static bool IsRecord(Type type) => type.GetMethod("<Clone>$") is not null;

    private static bool IsStatic(Type type) => type is { IsAbstract: true, IsSealed: true };

    private static bool IsInit(MethodInfo set) => set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static bool IsMutableCollection(Type type) =>
        type.IsArray
        || (
            typeof(IEnumerable).IsAssignableFrom(type)
            && type.Namespace?.StartsWith("System.Collections", StringComparison.Ordinal) == true
            && type.Namespace != typeof(ImmutableArray).Namespace
            && type.Namespace != "System.Collections.Frozen"
            && !type.Name.StartsWith("IReadOnly", StringComparison.Ordinal)
            && !type.Name.StartsWith("IEnumer", StringComparison.Ordinal)
        );
}
