"""The tables and model options of the cases. Every table is invented; numbers are chosen to strain one thing each."""

MODEL = {"ceiling": "estimated", "floor": "0", "luck": "normal", "tauPrior": {"mean": -5.6, "sd": 2},
         "steepnessPrior": {"median": 1.6, "logSd": 0.35}}
CASES = []


def case(name, about, rows, at, rates=(0.5, 0.8), grids={}, **options):
    """rows: (exposure as text or number, frames, keepers[, session[, burst]]); grids: finer grids where one is needed."""
    seconds = lambda e: 1 / float(e[2:]) if isinstance(e, str) else float(e)
    rows = [(seconds(r[0]), r[1], r[2], *(tuple(r[3:]) + (None, None))[:2]) for r in rows]
    CASES.append({"name": name, "about": about, "rows": rows, "at": list(at), "rates": list(rates), "grids": grids, "options": {**MODEL, **options}})


def levels(first, keepers, frames=6, session=None):
    """Powers of two from 2^first on."""
    frames = frames if isinstance(frames, list) else [frames] * len(keepers)
    return [(2.0 ** (first + i), n, k, session) for i, (k, n) in enumerate(zip(keepers, frames))]


README = [("1/60", 6, 6), ("1/30", 6, 5), ("1/15", 6, 3), ("1/8", 6, 0)]
THIRDS = [("1/80", 4, 4), ("1/60", 4, 4), ("1/50", 4, 3), ("1/40", 4, 4), ("1/30", 4, 2), ("1/25", 4, 3), ("1/20", 4, 1), ("1/15", 4, 0)]

case("four-speeds", "four speeds by six frames, every frame a fresh grip", README, (-6, -4, -2.5))
case("four-speeds-no-luck", "the same table without luck", README, (-6, -4, -2.5), luck="none")
case("separated", "all or nothing: every frame up to 2^-4 s kept, none from 2^-3 s on", levels(-7, [6, 6, 6, 6, 0, 0, 0]), (-5, -4, -2))
case("no-keepers", "nothing kept at three speeds", levels(-6, [0, 0, 0], 5), (-9, -7, -5))
case("all-keepers", "everything kept at three speeds", levels(-6, [6, 6, 6]), (-4, -2, 0))
case("one-speed-mixed", "one speed, some kept", [("1/30", 8, 3)], (-6.5, -5, -3.5))
case("one-speed-all", "one speed, all kept", [("1/15", 6, 6)], (-6, -4, -2))
case("one-speed-none", "one speed, none kept", [("1/15", 6, 0)], (-8, -6, -4))
case("two-speeds", "two speeds", [("1/60", 6, 5), ("1/8", 6, 1)], (-6, -4.5, -3))
case("single-frame", "one frame, kept", [("1/30", 1, 1)], (-7, -5, -3))
case("ceiling-visible", "fast speeds lose frames for other reasons than shake", levels(-8, [14, 15, 13, 15, 9, 3], 18), (-8, -4.5, -3.5), grids={"c": 44})
case("ceiling-one", "ceiling fixed at 1", README, (-6, -4, -2.5), ceiling="one")
case("ceiling-fixed", "ceiling fixed at 0.97", README, (-6, -4, -2.5), ceiling="0.97")
case("floor-fixed", "floor fixed at 0.02", levels(-7, [6, 6, 5, 2, 1, 0, 1]), (-6, -4, -2), floor="0.02")
case("floor-estimated", "floor and ceiling estimated, no luck", levels(-7, [8, 8, 6, 3, 1, 1, 2], 8), (-6, -4, -2), floor="estimated", luck="none", grids={"g": 32, "fine": 56, "theta": 130, "t": 200})
case("bursts-two-of-three", "two bursts of three at each speed",
     [(2.0 ** x, 3, k, None, f"b{2 * i + j + 1}") for i, (x, ks) in enumerate(zip(range(-7, -1), [(3, 3), (3, 2), (3, 2), (1, 2), (1, 0), (0, 0)])) for j, k in enumerate(ks)], (-6, -4, -2.5))
case("bursts-one-per-speed", "one burst of six at each speed",
     [(2.0 ** x, 6, k, None, f"b{x + 8}") for x, k in zip(range(-7, -1), [6, 6, 4, 4, 1, 0])], (-6, -4, -2.5))
case("bursts-strong-luck", "bursts all kept or all lost beside each other",
     [(2.0 ** x, 4, k, None, f"b{2 * i + j + 1}") for i, (x, ks) in enumerate(zip(range(-6, -1), [(4, 4), (4, 0), (4, 0), (4, 0), (0, 0)])) for j, k in enumerate(ks)], (-6, -4, -2.5), grids={"sb": 30})
case("two-sessions", "two days, equal speeds", levels(-6, [6, 5, 3, 0], session="mon") + levels(-6, [6, 4, 4, 1], session="tue"), (-6, -4, -2.5))
case("three-sessions-shifted", "three days half a stop to two stops apart",
     levels(-7, [6, 6, 6, 5, 2, 0], session="mon") + levels(-7, [6, 6, 4, 1, 0, 0], session="tue") + levels(-7, [5, 5, 2, 0, 0, 0], session="wed"), (-6, -4, -2.5), grids={"beta": 50, "theta": 220, "ss": 24})
case("seven-by-six", "seven speeds by six frames", levels(-8, [6, 6, 5, 5, 2, 1, 0]), (-7, -4.5, -3))
case("nine-by-six", "nine speeds by six frames", levels(-9, [6, 6, 6, 5, 4, 3, 1, 0, 0]), (-7, -5, -3))
case("third-stops", "eight speeds a third of a stop apart, four frames each", THIRDS, (-6, -5, -4))
case("many-frames", "300 frames at six speeds", levels(-7, [49, 48, 41, 25, 8, 2], 50), (-6, -4, -2), grids={"t": 440, "beta": 48})
case("steep", "falls within one stop; steepness against its prior", [(2.0 ** (x / 3), 8, k) for x, k in zip(range(-15, -8), [8, 8, 8, 7, 1, 0, 0])], (-4.5, -4, -3.5), grids={"t": 440})
case("wrong-direction", "slow frames kept, fast frames lost", levels(-7, [0, 1, 2, 4, 6]), (-7, -5, -3), grids={"c": 40})
case("far-from-prior", "half point nine stops from its prior", levels(1, [6, 5, 3, 1, 0]), (1, 3.5, 6), grids={"c": 36})
case("exposures-of-minutes", "log2 seconds around +8", levels(6, [6, 5, 3, 1, 0]), (6, 8, 10), tauPrior={"mean": 7.0, "sd": 2})
case("exposures-of-microseconds", "log2 seconds around -14", levels(-16, [6, 4, 4, 1, 0]), (-16, -14, -12), tauPrior={"mean": -13.0, "sd": 2})
case("own-priors", "user priors: narrow half point, wide steepness around a steeper median", levels(-7, [6, 5, 5, 1, 0]), (-7, -5, -3),
     tauPrior={"mean": -5.0, "sd": 0.3}, steepnessPrior={"median": 2.0, "logSd": 0.5}, grids={"t": 360, "luck_step": 0.2})
case("two-sessions-with-bursts", "two days, bursts of three",
     [(2.0 ** x, 3, k, s, f"{s}{x + 8}{'ab'[j]}") for s, table in (("mon", [(3, 3), (3, 2), (2, 1), (0, 1)]), ("tue", [(3, 3), (2, 3), (0, 1), (0, 0)]))
      for x, ks in zip(range(-6, -2), table) for j, k in enumerate(ks)], (-6, -4, -2.5))
case("some-frames-in-bursts", "bursts that run over two speeds, beside frames with a fresh grip each",
     [(2.0 ** -6, 3, 3, None, "a"), (2.0 ** -5, 3, 2, None, "a"), (2.0 ** -5, 3, 3, None, "b"), (2.0 ** -4, 3, 2, None, "b"),
      (2.0 ** -6, 2, 2), (2.0 ** -4, 4, 2), (2.0 ** -3, 4, 0)], (-6, -4, -2.5))
case("floor-estimated-with-luck", "floor estimated with luck and a ceiling of 1", levels(-6, [6, 5, 3, 1, 0, 1]), (-6, -4, -2), ceiling="one", floor="estimated", grids={"g": 28, "fine": 60})
