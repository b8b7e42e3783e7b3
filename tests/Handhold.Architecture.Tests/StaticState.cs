using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace Handhold.Architecture.Tests;

/// <summary>Which static fields could change what a program computes.</summary>
internal static class StaticState
{
    private const BindingFlags Own =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    /// <summary>Static fields that can be written, or whose object can be; those that the compiler makes for lambdas aside.</summary>
    public static IEnumerable<string> Mutable(IEnumerable<Type> types) =>
        from type in types
        where !IsCompilers(type)
        from field in type.GetFields(Own)
        where field.IsStatic && !field.IsLiteral
        where !field.IsInitOnly || !IsImmutable(field.FieldType, [])
        select $"{type.FullName}.{field.Name}: {field.FieldType.Name}";

    private static bool IsImmutable(Type type, ImmutableHashSet<Type> above)
    {
        if (
            type.IsPrimitive
            || type.IsEnum
            || type == typeof(string)
            || type == typeof(Regex)
            || typeof(Delegate).IsAssignableFrom(type)
            || above.Contains(type)
        )
        {
            return true;
        }
        if (type.Namespace is "System.Collections.Frozen" or "System.Collections.Immutable" || IsPlainValue(type))
        {
            return type.GetGenericArguments().All(a => IsImmutable(a, above));
        }
        return (type.IsValueType || type.IsSealed)
            && type.Assembly != typeof(object).Assembly
            && FieldsOf(type).All(f => f.IsInitOnly && IsImmutable(f.FieldType, above.Add(type)));
    }

    /// <summary>Tuples, nullables, pairs, times, options: the framework's values, but for those that lead to an array.</summary>
    private static bool IsPlainValue(Type type) =>
        type.IsValueType
        && type.Namespace?.Split('.')[0] == "System"
        && type.Name is not ("Memory`1" or "ReadOnlyMemory`1" or "ArraySegment`1");

    private static IEnumerable<FieldInfo> FieldsOf(Type? type) =>
        type is null || type == typeof(object) ? [] : type.GetFields(Own).Where(f => !f.IsStatic).Concat(FieldsOf(type.BaseType));

    private static bool IsCompilers(Type type) =>
        type.Name.StartsWith('<')
        || type.IsDefined(typeof(CompilerGeneratedAttribute))
        || (type.DeclaringType is { } outer && IsCompilers(outer));
}
