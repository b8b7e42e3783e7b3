namespace Handhold;

/// <summary>For which day an answer is meant.</summary>
public enum Day
{
    /// <summary>Another day, with luck of its own.</summary>
    Another,

    /// <summary>The day of the test.</summary>
    Same,
}
