using BenchmarkDotNet.Running;
using Handhold.Benchmarks;

// dotnet run -c Release --project benchmarks/Handhold.Benchmarks -- --filter '*' --artifacts artifacts/benchmarks
BenchmarkSwitcher.FromTypes([typeof(OneCurve)]).Run(args);
