using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Handhold.Cli;

/// <summary>Reports for programs, on standard output.</summary>
internal static class Json
{
    private const int SchemaVersion = 1;

    public static void Answers(Desk desk, IEnumerable<Answer> answers) => Answers(desk, answers, AnswerJson.Write);

    public static void Answers<T>(Desk desk, IEnumerable<T> answers, Action<Utf8JsonWriter, T> write) =>
        Report(
            desk,
            json =>
            {
                json.WriteStartArray("answers");
                foreach (var answer in answers)
                    write(json, answer);
                json.WriteEndArray();
            }
        );

    public static void Kept(Desk desk, KeptReport report, ImmutableArray<FramesNeededAnswer> again) =>
        Report(
            desk,
            json =>
            {
                json.WritePropertyName("kept");
                AnswerJson.Write(json, report);
                if (again.IsEmpty)
                    return;
                json.WriteStartArray("again");
                foreach (var answer in again)
                    AnswerJson.Write(json, answer);
                json.WriteEndArray();
            }
        );

    public static void Files(Desk desk, IEnumerable<string> files) =>
        Report(
            desk,
            json =>
            {
                json.WriteStartArray("files");
                foreach (var file in files)
                    json.WriteStringValue(file);
                json.WriteEndArray();
            }
        );

    public static void Import(Desk desk, string file, ImportReport report) =>
        Report(
            desk,
            json =>
            {
                json.WriteStartArray("files");
                json.WriteStringValue(file);
                json.WriteEndArray();
                ImportPage.WriteJson(json, report);
            }
        );

    public static void Errors(Desk desk, ImmutableArray<Complaint> complaints) =>
        Report(
            desk,
            json =>
            {
                json.WriteStartArray("errors");
                foreach (var complaint in complaints)
                    Error(json, complaint);
                json.WriteEndArray();
            }
        );

    private static void Error(Utf8JsonWriter json, Complaint complaint)
    {
        json.WriteStartObject();
        json.WriteString("code", complaint.Code);
        WriteIfThere("file", complaint.File);
        if (complaint.Line is { } line)
            json.WriteNumber("line", line);
        WriteIfThere("column", complaint.Column);
        WriteIfThere("value", complaint.Value);
        json.WriteString("message", complaint.Message);
        WriteIfThere("remedy", complaint.Remedy);
        json.WriteEndObject();

        void WriteIfThere(string name, string? text)
        {
            if (text is not null)
                json.WriteString(name, text);
        }
    }

    private static void Report(Desk desk, Action<Utf8JsonWriter> body)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", SchemaVersion);
            body(json);
            json.WriteEndObject();
        }

        desk.Output.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
    }
}
