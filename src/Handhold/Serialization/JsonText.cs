using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>JSON as text: indented, UTF-8, only what must be is escaped.</summary>
internal static class JsonText
{
    private static JsonWriterOptions Options => new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of one value that <paramref name="write"/> writes.</summary>
    internal static string Of(Action<Utf8JsonWriter> write)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Options))
            write(json);
        return Encoding.UTF8.GetString(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }
}
