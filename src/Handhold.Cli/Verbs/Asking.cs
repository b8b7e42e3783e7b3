namespace Handhold.Cli;

/// <summary>Puts a verb's questions to one curve.</summary>
internal delegate IEnumerable<Answer> Asking(KeeperCurve curve, AnswerOptions options);
