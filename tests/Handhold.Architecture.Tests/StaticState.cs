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
        if (type.IsPrimitive || type.IsEnum || above.Contains(type) || type.Namespace is "System.Collections.Frozen")
        {
            return true;
        }
        if (type.IsGenericType && type.Namespace == typeof(ImmutableArray).Namespace)
        {
            return type.GetGenericArguments().All(a => IsImmutable(a, above));
        }
        if (type.Assembly == typeof(object).Assembly || type == typeof(Regex))
        {
            return type == typeof(string)
                || type == typeof(decimal)
                || type == typeof(Version)
                || type == typeof(Regex)
                || typeof(Delegate).IsAssignableFrom(type)
                || (Nullable.GetUnderlyingType(type) is { } inner && IsImmutable(inner, above));
        }
        bool closed =
            type.IsValueType || type.IsSealed || (type.IsAbstract && type.IsAssignableTo(typeof(IEquatable<>).MakeGenericType(type)));
        return closed && FieldsOf(type).All(f => f.IsInitOnly && IsImmutable(f.FieldType, above.Add(type)));
    }

    private static IEnumerable<FieldInfo> FieldsOf(Type? type) =>
        type is null || type == typeof(object) ? [] : type.GetFields(Own).Where(f => !f.IsStatic).Concat(FieldsOf(type.BaseType));

    private static bool IsCompilers(Type type) =>
        type.Name.StartsWith('<')
        || type.IsDefined(typeof(CompilerGeneratedAttribute))
        || (type.DeclaringType is { } outer && IsCompilers(outer));
}
