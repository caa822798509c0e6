"""The departure curve of curve-case.ts in NumPy: the same algorithm, draws by NumPy's own generators.

Reads one line of JSON with the case, answers "ready" after a first run, and then one line a run asked for: its time in ms and the score at each departure.
Everything over the passages at once; one Python step an hour of a leg, and one a span of a departure, as the program itself takes them.
"""

import json
import sys
import time

import numpy as np

F = np.float32
E_FOLDING_HOURS = 18
SEAS_WITH_WIND = 0.7
GUST_ERROR = 1.3
FAR_OVER = 5
HEADWIND_DEG = 60
TO_WINDWARD_DEG = 45


def normal_above(rng, mean, sd, low, n):
    """A normal truncated below, by drawing anew what falls below."""
    x = rng.normal(mean, sd, n)
    while True:
        below = np.flatnonzero(x < low)
        if below.size == 0:
            return x
        x[below] = rng.normal(mean, sd, below.size)


def path(rng, hours, n):
    """First-order autoregressive errors, an hour a row."""
    kept = F(np.exp(-1 / E_FOLDING_HOURS))
    fresh = F(np.sqrt(1 - np.exp(-2 / E_FOLDING_HOURS)))
    z = rng.standard_normal((hours, n), dtype=F)
    for h in range(1, hours):
        z[h] *= fresh
        z[h] += kept * z[h - 1]
    return z


def off_bow(turn):
    return np.abs(turn - 360 * np.round(turn / 360))


def is_within(bearing, low, high):
    return (bearing - low) % 360 <= (high - low) % 360


def judge_leg(case, leg, wind, seas, direction):
    """Hour upon hour from the end: the next hour that fails, the hours over so far, the hours motored."""
    hours, n = wind.shape
    limits = case["limits"]
    t = {k: np.array(v, dtype=F) for k, v in leg["table"].items()}
    breach = np.empty((hours + 1, n), dtype=np.uint16)
    breach[hours] = hours
    over = np.zeros((hours + 1, n), dtype=np.uint16)
    motored = np.zeros((hours + 1, n), dtype=F)
    for h in range(hours - 1, -1, -1):
        e = wind[h]
        sd = t["windSd"][h]
        seas_limit = min(limits["seas"], max(1, t["period"][h] / limits["periodPerMetre"]))
        fails = e > min(
            (limits["wind"] + FAR_OVER - t["wind"][h]) / sd, (limits["gust"] - t["gust"][h]) / (GUST_ERROR * sd)
        )
        fails |= seas[h] > (seas_limit - t["seas"][h]) / t["seasSd"][h]
        is_over = e > (limits["wind"] - t["wind"][h]) / sd
        from_deg = t["dir"][h] + t["dirSd"][h] * direction[h]
        bow = off_bow(from_deg - F(leg["course"]))
        headwind = (e > (limits["headwind"] - t["wind"][h]) / sd) & (bow < HEADWIND_DEG)
        is_over |= headwind
        fails |= headwind & (e > (limits["headwind"] + FAR_OVER - t["wind"][h]) / sd)
        for sector in leg["sectors"]:
            hard = (e > (sector["wind"] - t["wind"][h]) / sd) | (seas[h] > (sector["seas"] - t["seas"][h]) / t["seasSd"][h])
            some = np.flatnonzero(hard)
            if some.size > 0:
                fails[some] |= is_within(from_deg[some], sector["from"], sector["to"])
        motors = (e < (case["motorBelow"] - t["wind"][h]) / sd) | (bow < TO_WINDWARD_DEG)
        np.copyto(breach[h], breach[h + 1])
        breach[h][fails] = h
        np.add(over[h + 1], is_over, out=over[h])
        np.add(motored[h + 1], motors, out=motored[h])
    return breach, over, motored


def sail(case, speed, legs_weather, hours, departures, n):
    """Every departure through what was judged: rows read off where each passage then is."""
    at = np.arange(n)
    begins = np.zeros(n)
    spans = []
    for leg, (breach, over, motored) in zip(case["legs"], legs_weather):
        ends = begins + leg["nm"] / speed
        b, e = np.floor(begins).astype(np.int64), np.floor(ends).astype(np.int64)
        to = np.ceil(ends).astype(np.int64)
        spans.append(
            (breach.ravel(), over.ravel(), motored.ravel(), b, begins - b, e, ends - e, to, b * n + at, e * n + at, to * n + at, to > b)
        )
        begins = ends
    arrival = begins
    day_from, day_to = np.array(case["days"]["from"]), np.array(case["days"]["to"])
    hours_motored = np.zeros((departures, n))
    held = np.empty((departures, n), dtype=bool)
    for d in range(departures):
        row = d * n
        fine = np.ones(n, dtype=bool)
        hours_over = np.zeros(n, dtype=np.int32)
        for breach, over, motored, b, b_part, e, e_part, to, b_at, e_at, to_at, sails in spans:
            here = motored.take(b_at + row)
            there = motored.take(e_at + row)
            begun = here - b_part * (here - motored.take(b_at + (row + n)))
            ended = there - e_part * (there - motored.take(e_at + (row + n)))
            hours_motored[d] += begun - ended
            hours_over += np.where(sails, over.take(b_at + row) - over.take(to_at + row), 0)
            fine &= (breach.take(b_at + row) >= to + d) | ~sails
            fine &= hours_over <= case["limits"]["overHours"]
        arrives = d + arrival
        day = np.searchsorted(day_to, arrives)
        fine &= day_from[day] <= arrives
        held[d] = fine
    return held, hours_motored


def items_held(case, rng, held, hours_motored, passage_hours, waiting, n):
    """The passages in which all that is vital holds, and every item's curve."""
    departures = held.shape[0]
    most = hours_motored.max(axis=0)
    boat = np.ones((departures, n), dtype=bool)
    reserve = case["reserveDays"]
    days = passage_hours / 24 + reserve
    last = departures - 1
    curves = []
    latest_vital = np.full(n, np.inf)
    for item in case["items"]:
        rooms = []
        if item["kind"] == "fluid":
            run = normal_above(rng, *item["run"], 0, n) if item["engine"] else np.zeros(n)
            rest = normal_above(rng, *item["rest"], 0, n)
            level = rng.normal(*item["level"], n)
            factor = np.maximum(0, 1 + item["vary"] * rng.standard_normal(n) / np.sqrt(np.maximum(days, 1)))
            run, rest = factor * run, factor * rest
            a_day = item["atAnchor"] * waiting if item["engine"] else 0
            at0 = level - item["reserve"] - (run * a_day * reserve + rest * days)
            rooms.append((at0, (run * a_day + rest) / 24, run if item["engine"] else None))
            rooms.append((at0, np.zeros(n), run if item["engine"] else None))
        elif item["kind"] == "spare":
            rate = rng.gamma(item["shape"], 1 / item["rate"], n)
            lasts = rng.gamma(item["stock"] + 1, 1, n)
            if item["per"] == "day":
                rooms.append((lasts - rate * days, rate / 24, None))
            else:
                rooms.append((lasts - rate * waiting * reserve, rate * waiting / 24, rate))
        elif item["kind"] == "anode":
            wear = normal_above(rng, *item["wear"], 0, n)
            share = rng.normal(item["share"], item["shareSd"], n) - wear * item["days"]
            rooms.append((share - item["limit"] - wear * days, wear / 24, None))
        elif item["kind"] == "service":
            rooms.append((item["left"] - waiting * (reserve + item["unread"]), waiting / 24, np.ones(n)))
            if item["leftHours"] is not None:
                rooms.append((item["leftHours"] - 24 * reserve - passage_hours, np.ones(n), None))
        if all(engine is None for _, _, engine in rooms):
            latest = np.full(n, np.inf)
            for at0, hourly, _ in rooms:
                with np.errstate(divide="ignore", invalid="ignore"):
                    one = np.where(at0 < 0, -np.inf, np.where(hourly > 0, at0 / hourly, np.inf))
                np.minimum(latest, one, out=latest)
            ends = np.bincount(np.minimum(np.floor(latest[latest >= 0]), last).astype(np.int64), minlength=departures)
            curves.append(np.cumsum(ends[::-1])[::-1])
            if item["vital"]:
                np.minimum(latest_vital, latest, out=latest_vital)
            continue
        unsure = [
            np.flatnonzero(~(at0 - hourly * last >= (0 if engine is None else engine * most))) for at0, hourly, engine in rooms
        ]
        curve = np.empty(departures)
        for d in range(departures):
            ok = np.ones(n, dtype=bool)
            for (at0, hourly, engine), some in zip(rooms, unsure):
                if some.size > 0:
                    left = at0[some] - hourly[some] * d
                    ok[some] &= left >= (0 if engine is None else engine[some] * hours_motored[d][some])
            curve[d] = np.count_nonzero(ok)
            if item["vital"]:
                boat[d] &= ok
        curves.append(curve)
    for d in range(departures):
        boat[d] &= latest_vital >= d
    return boat, curves


def run(case, seed):
    rng = np.random.default_rng(seed)
    n, hours, departures = case["passages"], case["hours"], case["departures"]
    speed = normal_above(rng, case["speed"]["mean"], case["speed"]["sd"], case["speed"]["mean"] / 4, n)
    waiting = rng.gamma(case["waiting"]["shape"], 1 / case["waiting"]["rate"], n)
    passage_hours = sum(leg["nm"] for leg in case["legs"]) / speed
    wind, seas, direction = path(rng, hours, n), path(rng, hours, n), path(rng, hours, n)
    seas *= F(np.sqrt(1 - SEAS_WITH_WIND**2))
    for h in range(hours):
        seas[h] += F(SEAS_WITH_WIND) * wind[h]
    legs_weather = [judge_leg(case, leg, wind, seas, direction) for leg in case["legs"]]
    held, hours_motored = sail(case, speed, legs_weather, hours, departures, n)
    boat, _ = items_held(case, rng, held, hours_motored, passage_hours, waiting, n)
    return [float(np.count_nonzero(held[d] & boat[d]) / n) for d in range(departures)]


def main():
    case = json.loads(sys.stdin.readline())
    run(case, 0)
    print("ready", flush=True)
    for seed, _ in enumerate(sys.stdin):
        began = time.perf_counter()
        scores = run(case, seed + 1)
        print(json.dumps({"ms": 1000 * (time.perf_counter() - began), "scores": scores}), flush=True)


main()
