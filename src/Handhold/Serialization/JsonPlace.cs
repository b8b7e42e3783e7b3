using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>A value of a saved text together with where it stands, so that every complaint names the place.</summary>
/// <param name="Element">The value.</param>
/// <param name="Path">Where it stands, such as <c>curves[2].cells[0].frames</c>.</param>
/// <param name="Kind">What the text is meant to be.</param>
internal readonly record struct JsonPlace(JsonElement Element, string Path, SavedKind Kind)
{
    private const int Shown = 40;

    /// <summary>A member that must be there.</summary>
    internal JsonPlace this[string name] =>
        Find(name) ?? throw Kind.Refused($"{Member(name)} is missing from {Kind.Name}. {Kind.Remedy}", null);

    /// <summary>A member, or null when it is absent.</summary>
    internal JsonPlace? Find(string name)
    {
        Expect(JsonValueKind.Object, "an object");
        return Element.TryGetProperty(name, out var value) ? new(value, Member(name), Kind) : null;
    }

    internal IEnumerable<JsonPlace> Items()
    {
        Expect(JsonValueKind.Array, "a list");
        var here = this;
        return Element.EnumerateArray().Select((item, i) => new JsonPlace(item, $"{here.Path}[{i}]", here.Kind));
    }

    internal IEnumerable<(string Name, JsonPlace Value)> Members()
    {
        Expect(JsonValueKind.Object, "an object");
        var here = this;
        return Element
            .EnumerateObject()
            .Select(member => here.Unbroken(() => (member.Name, new JsonPlace(member.Value, here.Member(member.Name), here.Kind))));
    }

    internal string Text()
    {
        Expect(JsonValueKind.String, "a text");
        var element = Element;
        return Unbroken(() => element.GetString()!);
    }

    internal double Number()
    {
        Expect(JsonValueKind.Number, "a number");
        return Element.TryGetDouble(out var number) && double.IsFinite(number) ? number : throw Wrong("should be a finite number");
    }

    internal int Count()
    {
        Expect(JsonValueKind.Number, "a number");
        return Element.TryGetInt32(out var count) && count >= 0 ? count : throw Wrong("should be a whole number from 0 up");
    }

    internal bool Flag() =>
        Element.ValueKind is JsonValueKind.True or JsonValueKind.False ? Element.GetBoolean() : throw Wrong("should be true or false");

    /// <summary>One of the words of an enumeration, as <see cref="JsonParts.Word"/> spells them.</summary>
    internal T OneOf<T>()
        where T : struct, Enum
    {
        var text = Text();
        foreach (var value in Enum.GetValues<T>())
        {
            if (JsonParts.Word(value) == text)
                return value;
        }

        throw Wrong($"should be {string.Join(" or ", Enum.GetValues<T>().Select(JsonParts.Word))}");
    }

    /// <summary>What to throw when the value is not as it should be.</summary>
    internal FormatException Wrong(string should, Exception? cause = null) =>
        Kind.Refused($"{Path} of {Kind.Name} is {ShortText()}, and {should}. {Kind.Remedy}", cause);

    /// <summary>What to throw when the values here do not go together.</summary>
    internal FormatException Impossible(Exception cause) => Kind.Refused($"{Path} of {Kind.Name} cannot be: {cause.Message}", cause);

    private string ShortText()
    {
        var text = Element.ValueKind switch
        {
            JsonValueKind.Object => "an object",
            JsonValueKind.Array => "a list",
            _ => Element.GetRawText(),
        };
        return text.Length > Shown ? text[..Shown] + "…" : text;
    }

    /// <summary>Half a surrogate pair is valid JSON and no text.</summary>
    private T Unbroken<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (InvalidOperationException broken)
        {
            throw Wrong("should be whole characters", broken);
        }
    }

    private string Member(string name) => Path.Length == 0 ? name : $"{Path}.{name}";

    private void Expect(JsonValueKind kind, string what)
    {
        if (Element.ValueKind != kind)
            throw Wrong($"should be {what}");
    }
}
