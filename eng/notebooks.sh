#!/usr/bin/env bash
# Makes the notebooks from the programs beside them, or checks and runs both.
# usage: eng/notebooks.sh write | run   (run: after a Release build)
# A program's paragraphs of // lines become text cells, what stands between them code cells, its #: line the references of the first cell.
set -euo pipefail
cd "$(dirname "$0")/../notebooks"
version() { sed -n "s/.*Include=\"$1\" Version=\"\([^\"]*\)\".*/\1/p" ../Directory.Packages.props; }
references() {
    printf '#r "nuget: MathNet.Numerics, %s"\n#r "nuget: ScottPlot, %s"\n' "$(version MathNet.Numerics)" "$(version ScottPlot)"
    printf '#r "../artifacts/bin/Handhold.Plots/release/%s"\n' Handhold.dll Handhold.Plots.dll
}

notebook() { # PROGRAM
    { references; tail -n +2 "$1"; } |
        awk 'BEGIN { RS = ""; ORS = "\036" } { print }' |
        jq -Rs '
            def lines: [scan("[^\n]*\n|[^\n]+")];
            def cell: if test("^//") then {cell_type: "markdown", metadata: {}, source: (gsub("(?m)^// ?"; "") | lines)}
                else {cell_type: "code", execution_count: null, metadata: {polyglot_notebook: {kernelName: "csharp"}}, outputs: [], source: lines} end;
            def join($a; $b): if $a | length == 0 then [$b] elif ($a[-1].cell_type == "code" and $b.cell_type == "code")
                then $a[:-1] + [$a[-1] | .source += ["\n", "\n"] + $b.source] else $a + [$b] end;
            {
                cells: (reduce (split("\u001e")[] | select(length > 0) | cell) as $c ([]; join(.; $c))),
                metadata: {kernelspec: {display_name: ".NET (C#)", language: "C#", name: ".net-csharp"}, language_info: {name: "polyglot-notebook"},
                    polyglot_notebook: {kernelInfo: {defaultKernelName: "csharp", items: [{aliases: [], languageName: "csharp", name: "csharp"}]}}},
                nbformat: 4, nbformat_minor: 5
            } | .cells |= [to_entries[] | .value + {id: "c\(.key)"}]'
}

case ${1:-} in
write)
    for program in *.cs; do notebook "$program" >"${program%.cs}.ipynb"; done
    ;;
run)
    out=../artifacts/notebooks
    mkdir -p "$out"
    for program in *.cs; do
        name=${program%.cs}
        cmp <(notebook "$program") "$name.ipynb" || { echo "$name.ipynb is not what its program says; run eng/notebooks.sh write"; exit 1; }
        dotnet run -c Release "$program" >"$out/$name.txt" & # beside the notebook: each keeps one processor busy
        running=$!
        dotnet repl --run "$name.ipynb" --exit-after-run --output-format ipynb --output-path "$out/$name.ipynb" </dev/null >/dev/null ||
            { jq -r '.cells[].outputs[]? | select(.output_type == "error") | .evalue' "$out/$name.ipynb"; exit 1; }
        wait "$running"
        cmp "$out/$name.txt" <(jq -j '.cells[].outputs[]? | select(.output_type == "stream") | .text | if type == "array" then add else . end' "$out/$name.ipynb") ||
            { echo "$name: notebook and program print different things"; exit 1; }
        echo "$name: notebook and program print the same $(wc -l <"$out/$name.txt") lines"
    done
    ;;
*)
    sed -n 2,4p "../eng/notebooks.sh"
    exit 2
    ;;
esac
