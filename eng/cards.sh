#!/usr/bin/env bash
# Looks at field cards in headless Chromium: at the width of a telephone, 390 px, and in print. Installs Chromium from Debian where it is missing.
# usage, after a Release build: eng/cards.sh [FOLDER]
set -euo pipefail
cd "$(dirname "$0")/.."
out=${1:-artifacts/cards}
fail() { echo "cards: $*" >&2; exit 1; }

if ! command -v chromium >/dev/null; then
    { apt-get update && apt-get install -y --no-install-recommends chromium; } >/dev/null 2>&1 ||
        fail "NOT CHECKED: there is no chromium here and apt-get cannot install it. Install it by hand and run this again."
fi
rm -rf "$out"
mkdir -p "$out"
browser() { timeout 120 chromium --headless --no-sandbox --disable-gpu --no-first-run --hide-scrollbars --allow-file-access-from-files --user-data-dir="$out/profile" "$@" 2>/dev/null; }

# Five setups, so that A4 needs a second sheet; the first has the most rows, and a name that must be wrapped.
{
    echo exposure,frames,keepers,photographer,setup,session,criterion
    for setup in "movement at close range, 90 mm with a supplementary lens" second third fourth fifth; do
        kept=6
        for speed in 1/500 1/250 1/125 1/60 1/30 1/15 1/8 1/4 1/2; do
            echo "$speed,6,$kept,Maximiliana,\"$setup\",2026-11-20,print"
            ((kept == 0)) || kept=$((kept - 1))
        done
    done
} >"$out/frames.csv"
handhold=artifacts/bin/Handhold.Cli/release/Handhold.Cli
$handhold fit "$out/frames.csv" --estimator bias-reduced --save "$out/fit.json" >/dev/null
$handhold card "$out/fit.json" --out "$out/a6.html"
$handhold card "$out/fit.json" --out "$out/a4.html" --paper a4
$handhold card "$out/fit.json" --out "$out/card.png"

# The page in a frame of a given size, and what a script finds wrong with it.
look() { # look NAME WIDTH HEIGHT SMALLEST_TEXT_PX CARD_HEIGHT
    cat >"$out/look-$1.html" <<END
<!doctype html><body style="margin:0"><iframe src="$1.html" style="width:$2;height:$3;border:0"></iframe><pre id="said"></pre><script>
onload = () => {
    const page = document.querySelector('iframe'), inside = page.contentDocument, wrong = [];
    const width = inside.documentElement.clientWidth, cards = inside.querySelectorAll('article');
    const light = rgb => rgb.map(c => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4).reduce((s, c, i) => s + c * [0.2126, 0.7152, 0.0722][i], 0);
    const numbers = color => color.match(/[\\d.]+/g).slice(0, 3).map(Number);
    const paper = light(numbers(getComputedStyle(inside.body).backgroundColor));
    if (cards.length !== 5) wrong.push(cards.length + ' cards');
    if (inside.documentElement.scrollWidth > width) wrong.push('scrolls sideways');
    for (const card of cards) {
        const box = card.getBoundingClientRect();
        if ($5 && card.scrollHeight > card.clientHeight) wrong.push('a card of ' + card.scrollHeight + ' px on ' + card.clientHeight);
        for (const e of card.querySelectorAll('h2, p, strong, th, td, span')) {
            const style = getComputedStyle(e), r = e.getBoundingClientRect(), words = e.textContent.slice(0, 30);
            if (r.left < box.left - 0.5 || r.right > box.right + 0.5 || e.scrollWidth > e.clientWidth + 1 && e.clientWidth) wrong.push('cut: ' + words);
            if (parseFloat(style.fontSize) < $4) wrong.push('small, ' + style.fontSize + ': ' + words);
            const ink = light(numbers(style.color));
            if ((Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05) < 4.5) wrong.push('faint: ' + words);
        }
    }
    document.getElementById('said').textContent = 'looked: ' + (wrong.length ? wrong.join('; ') : 'good');
};
</script>
END
    local said
    said=$(browser --virtual-time-budget=4000 --dump-dom "$out/look-$1.html" | sed -n 's/.*<pre id="said">\(looked: [^<]*\)<.*/\1/p') || fail "$1 was not looked at"
    [ "$said" = "looked: good" ] || fail "$1: $said"
}

cp "$out/a6.html" "$out/telephone.html"
look telephone 390px 844px 14 0
sed 's/@media print/@media all/' "$out/a6.html" >"$out/print.html"
look print 105mm 148mm 9.9 1
browser --window-size=390,844 --screenshot="$out/telephone.png" "$out/a6.html"

# One A6 side a card; four cards to a sheet of A4. Sizes in points.
printed() { # printed NAME PAGES "WIDTH HEIGHT"
    browser --no-pdf-header-footer --print-to-pdf="$out/$1.pdf" "$out/$1.html"
    local pages size
    pages=$(grep -ac '/Type /Page$' "$out/$1.pdf")
    size=$(grep -ao '/MediaBox \[[^]]*\]' "$out/$1.pdf" | head -1 | awk -F'[][ ]+' '{ printf "%.0f %.0f", $4, $5 }')
    [ "$pages" = "$2" ] || fail "$1: $pages pages, $2 expected"
    [ "$size" = "$3" ] || fail "$1: a page of $size points, $3 expected"
}
printed a6 5 "298 420"
printed a4 2 "595 842"
rm -rf "$out/profile"
echo "cards: read at 390 px and printed on A6 and A4."
