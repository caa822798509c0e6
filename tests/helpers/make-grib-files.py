"""Makes the small GRIB files under tests/forecast/grib/files and what ecCodes reads in them (expected.json).

All weather in them is invented. Not run by the tests: only when a case is added.
    apt-get install -y python3-eccodes libeccodes-tools     (made with ecCodes 2.28.0, Debian 12)
    python3 tests/helpers/make-grib-files.py tests/forecast/grib/files
"""

import json
import math
import os
import struct
import sys

import eccodes as ec
import numpy as np

FOLDER = sys.argv[1]
MISSING = -9.5e9

WAVES = (10, 0, 3)
PERIOD = (10, 0, 34)
U = (0, 2, 2)
V = (0, 2, 3)
GUST = (0, 2, 22)
PRESSURE = (0, 3, 1)


def invented(count, low=0.4, high=6.2, turn=0.0):
    """Smooth with a little noise, the same every time."""
    i = np.arange(count)
    wave = 0.5 + 0.45 * np.sin(0.31 * i + turn) + 0.05 * np.cos(7.7 * i + 3 * turn)
    return low + (high - low) * wave


def field(edition=2, ni=9, nj=7, first=(42.0, -12.0), step=0.5, lon_step=None, scan=0, **keys):
    """A handle on a regular grid; `scan` are the flags of the scanning mode."""
    handle = ec.codes_grib_new_from_samples(f"regular_ll_sfc_grib{edition}")
    lon_step = lon_step or step
    down = 1 if scan & 0x40 else -1
    east = -1 if scan & 0x80 else 1
    last = (first[0] + down * step * (nj - 1), first[1] + east * lon_step * (ni - 1))
    settings = {
        "centre": 7,
        "dataDate": 20260203,
        "dataTime": 600,
        "Ni": ni,
        "Nj": nj,
        "latitudeOfFirstGridPointInDegrees": first[0],
        "longitudeOfFirstGridPointInDegrees": first[1],
        "latitudeOfLastGridPointInDegrees": last[0],
        "longitudeOfLastGridPointInDegrees": last[1],
        "iDirectionIncrementInDegrees": lon_step,
        "jDirectionIncrementInDegrees": step,
        "scanningMode": scan,
        **keys,
    }
    for key, value in settings.items():
        ec.codes_set(handle, key, value)
    return handle


def parameter2(handle, numbers, surface=1, level=1, hours=0):
    discipline, category, number = numbers
    ec.codes_set(handle, "discipline", discipline)
    ec.codes_set(handle, "parameterCategory", category)
    ec.codes_set(handle, "parameterNumber", number)
    ec.codes_set(handle, "typeOfFirstFixedSurface", surface)
    ec.codes_set(handle, "scaleFactorOfFirstFixedSurface", 0)
    ec.codes_set(handle, "scaledValueOfFirstFixedSurface", level)
    ec.codes_set(handle, "forecastTime", hours)
    return handle


def fill(handle, values, packing=None, decimals=2, **keys):
    values = np.array(values, dtype=float)
    if np.any(values == MISSING):
        ec.codes_set(handle, "bitmapPresent", 1)
        ec.codes_set(handle, "missingValue", MISSING)
    if decimals is not None:
        ec.codes_set(handle, "decimalPrecision", decimals)
    ec.codes_set_values(handle, values)
    # A packing is set on values that are there: some cannot hold the sample's.
    if packing:
        ec.codes_set(handle, "packingType", packing)
    for key, value in keys.items():
        ec.codes_set(handle, key, value)
    if keys:
        ec.codes_set_values(handle, values)
    return handle


def seas(count=63, **keys):
    return fill(parameter2(field(**keys), WAVES), invented(count))


def octets(handle):
    return ec.codes_get_message(handle)


# Packing and header edits ecCodes offers no key for: done on the octets, and read back by ecCodes.


def sections2(message):
    """Offset and length of each section of an edition 2 message, by number."""
    found, at = {}, 16
    while message[at : at + 4] != b"7777":
        length = struct.unpack(">I", message[at : at + 4])[0]
        found[message[at + 4]] = (at, length)
        at += length
    return found


def with_sections(message, replaced):
    body = b""
    for number, (at, length) in sections2(message).items():
        body += replaced.get(number, message[at : at + length])
    total = 16 + len(body) + 4
    return message[:8] + struct.pack(">Q", total) + body + b"7777"


def bits_of(values, width):
    return "".join(format(int(value), f"0{width}b") if width else "" for value in values)


def packed_octets(bits):
    bits += "0" * (-len(bits) % 8)
    return bytes(int(bits[i : i + 8], 2) for i in range(0, len(bits), 8))


def complex_by_hand(groups, missing, reference=0.0, decimal=2, order=None):
    """Template 5.2 or 5.3 and section 7 from groups (reference, width, numbers), wide 8 bits for references."""
    lengths = [len(numbers) for _, _, numbers in groups]
    count = sum(lengths)
    widths = [width for _, width, _ in groups]
    template = 2 if order is None else 3
    section5 = struct.pack(">IH", count, template)
    section5 += struct.pack(">fHHBB", reference, 0, decimal, 8, 0)
    section5 += struct.pack(">BBII", 1, missing, 0x7F7FFFFF, 0x7F7FFFFF)
    section5 += struct.pack(">IBBIBIB", len(groups), 0, 4, min(lengths), 1, lengths[-1], 5)
    extra = b""
    if order is not None:
        firsts, least = order
        section5 += struct.pack(">BB", len(firsts), 2 if firsts else 0)
        for number in [*firsts, least] if firsts else []:
            extra += struct.pack(">H", number if number >= 0 else 0x8000 - number)
    data = extra
    data += packed_octets(bits_of([reference for reference, _, _ in groups], 8))
    data += packed_octets(bits_of(widths, 4))
    data += packed_octets(bits_of([length - min(lengths) for length in lengths], 5))
    data += packed_octets("".join(bits_of(numbers, width) for _, width, numbers in groups))
    return (
        struct.pack(">IB", len(section5) + 5, 5) + section5,
        struct.pack(">IB", len(data) + 5, 7) + data,
    )


def by_hand(groups, missing, **keys):
    count = sum(len(numbers) for _, _, numbers in groups)
    message = octets(seas(count=count, ni=count, nj=1))
    section5, section7 = complex_by_hand(groups, missing, **keys)
    section6 = struct.pack(">IBB", 6, 6, 255)
    return with_sections(message, {5: section5, 6: section6, 7: section7})


def mended(message, section, at, data):
    """The message with octets of a section replaced; `at` counts from 1 as the tables do."""
    start = sections2(message)[section][0] + at - 1
    return message[:start] + data + message[start + len(data) :]


# The files.

FILES = {}


def several(*messages):
    return b"".join(octets(one) if isinstance(one, int) else one for one in messages)


for edition in (1, 2):
    # Heights above 45 degrees south and west of 180 put signs into every corner.
    FILES[f"simple-{edition}"] = octets(seas(edition=2)) if edition == 2 else octets(
        fill(field(1, table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1), invented(63))
    )

for name, packing, keys in [
    ("complex", "grid_complex", {}),
    ("differences-1", "grid_complex_spatial_differencing", {"orderOfSpatialDifferencing": 1}),
    ("differences-2", "grid_complex_spatial_differencing", {"orderOfSpatialDifferencing": 2}),
    ("ieee-32", "grid_ieee", {"precision": 1}),
    ("ieee-64", "grid_ieee", {"precision": 2}),
    ("jpeg", "grid_jpeg", {}),
    ("ccsds", "grid_ccsds", {}),
]:
    decimals = None if packing == "grid_ieee" else 2
    FILES[name] = octets(fill(parameter2(field(), WAVES), invented(63), packing, decimals, **keys))

# Enough values for every option of the entropy coder: long flats (zero blocks), small steps (pairs), noise (uncoded).
flat = np.concatenate([np.full(700, 2.5), invented(200, 2.4, 2.6), 3 + (np.arange(252) * 7919 % 1009) / 10])
FILES["ccsds-options"] = octets(
    fill(parameter2(field(ni=48, nj=24, step=0.25), WAVES), flat, "grid_ccsds", 1, ccsdsBlockSize=8, ccsdsRsi=16)
)
FILES["ccsds-wide"] = octets(fill(parameter2(field(), PRESSURE, 101, 0), invented(63, 99000, 103000), "grid_ccsds", 3))
FILES["ccsds-plain"] = octets(
    fill(parameter2(field(), WAVES), invented(63), "grid_ccsds", 1, ccsdsFlags=4, ccsdsBlockSize=16, ccsdsRsi=2)
)

sea = invented(63)
land = np.array([MISSING if (i * 5) % 7 < 2 else value for i, value in enumerate(sea)])
FILES["bitmap-1"] = octets(
    fill(field(1, table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1), land)
)
for name, packing in [("simple", "grid_simple"), ("complex", "grid_complex"), ("jpeg", "grid_jpeg"), ("ccsds", "grid_ccsds")]:
    FILES[f"bitmap-{name}"] = octets(fill(parameter2(field(), WAVES), land, packing))
FILES["bitmap-all-land"] = octets(fill(parameter2(field(), WAVES), np.full(63, MISSING)))

# Missing values without a bitmap: ones in all bits; a group without bits whose reference is all ones; one less for the second kind.
groups = [(10, 3, [0, 7, 2, 6, 1]), (255, 0, [0, 0, 0]), (4, 2, [3, 1, 2, 0]), (254, 0, [0, 0]), (7, 0, [0, 0, 0])]
FILES["missing-1"] = by_hand(groups, 1)
FILES["missing-2"] = by_hand(groups, 2)
FILES["missing-0"] = by_hand(groups, 0)
FILES["differences-0"] = by_hand(groups, 0, order=([], 0))
FILES["differences-1-missing"] = by_hand([(0, 3, [1, 7, 2, 3]), (2, 2, [0, 3, 1, 2])], 1, order=([120], -3))
FILES["differences-2-missing"] = by_hand([(0, 3, [7, 1, 2, 3, 4]), (2, 2, [0, 3, 1, 2])], 1, order=([120, 118], -3))

# Two fields in one message, the second with the bitmap of the first.
once = FILES["bitmap-simple"]
at = sections2(once)
again = {number: once[start : start + length] for number, (start, length) in at.items()}
again[6] = struct.pack(">IBB", 6, 6, 254)
body = once[16:-4] + again[4] + again[5] + again[6] + again[7]
FILES["bitmap-as-before"] = once[:8] + struct.pack(">Q", 16 + len(body) + 4) + body + b"7777"

for flags in (0x00, 0x40, 0x80, 0xC0, 0x20, 0x60, 0xA0, 0xE0):
    FILES[f"scan-2-{flags:02x}"] = octets(seas(12, ni=4, nj=3, scan=flags))
for flags in (0x40, 0x80, 0x20):
    FILES[f"scan-1-{flags:02x}"] = octets(
        fill(field(1, ni=4, nj=3, scan=flags, table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1), invented(12))
    )
# ecCodes 2.28 does not heed alternating rows on these grids: it packs the values as they are given and reads them back the same.
# So the second row is given backwards, and what is expected is the field with its rows all one way.
AS = {}
for flags in (0x10, 0x50):
    rows = invented(12).reshape(3, 4)
    rows[1] = rows[1][::-1]
    FILES[f"scan-2-{flags:02x}"] = octets(fill(parameter2(field(ni=4, nj=3, scan=flags), WAVES), rows.ravel()))
    AS[f"scan-2-{flags:02x}"] = FILES[f"scan-2-{flags - 0x10:02x}"]

FILES["greenwich-1"] = octets(
    fill(field(1, ni=5, nj=2, first=(50.0, -1.0), table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1), invented(10))
)
FILES["greenwich-2"] = octets(seas(10, ni=5, nj=2, first=(50.0, 359.0)))
FILES["date-line"] = octets(seas(10, ni=5, nj=2, first=(-18.0, 179.0)))
FILES["round-the-world"] = octets(seas(36, ni=12, nj=3, first=(30.0, 0.0), step=30.0))
half_round = invented(39)
half_round[12::13] = half_round[0::13]
FILES["half-round"] = octets(
    fill(parameter2(field(ni=13, nj=3, first=(30.0, -180.0), step=30.0), WAVES), half_round)
)
FILES["sixths"] = octets(seas(28, ni=7, nj=4, first=(-41.0, 174.0), step=1 / 6))
FILES["south-west"] = octets(
    fill(field(1, ni=4, nj=3, first=(-33.5, -72.25), table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1), invented(12))
)
FILES["one-point"] = octets(seas(1, ni=1, nj=1))
FILES["one-column"] = octets(seas(3, ni=1, nj=3))

minutes = parameter2(field(), WAVES)
ec.codes_set(minutes, "indicatorOfUnitOfTimeRange", 0)
ec.codes_set(minutes, "forecastTime", 90)
FILES["minutes-2"] = octets(fill(minutes, invented(63)))
FILES["minutes-1"] = octets(
    fill(
        field(1, table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1, unitOfTimeRange=0, P1=90),
        invented(63),
    )
)
FILES["three-hours-1"] = octets(
    fill(
        field(1, table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1, unitOfTimeRange=10, P1=7),
        invented(63),
    )
)
long_lead = field(1, table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1)
ec.codes_set(long_lead, "timeRangeIndicator", 10)
ec.codes_set(long_lead, "stepRange", 300)
FILES["long-lead-1"] = octets(fill(long_lead, invented(63)))
FILES["before-2"] = mended(octets(seas()), 4, 19, struct.pack(">I", 0x80000006))

FILES["constant-2"] = octets(fill(parameter2(field(), WAVES), np.full(63, 1.75)))
FILES["constant-scaled-2"] = mended(FILES["constant-2"], 5, 18, struct.pack(">H", 2))
FILES["constant-1"] = octets(
    fill(field(1, table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1), np.full(63, 1.75))
)
FILES["constant-scaled-1"] = FILES["constant-1"][:34] + struct.pack(">H", 2) + FILES["constant-1"][36:]
constant_bitmap = np.where(land == MISSING, MISSING, 1.75)
FILES["constant-bitmap-2"] = octets(fill(parameter2(field(), WAVES), constant_bitmap))
FILES["constant-jpeg"] = octets(fill(parameter2(field(), WAVES), np.full(63, 1.75), "grid_jpeg"))
# Groups and values without bits: a constant all the same, and its decimal scale counts.
FILES["constant-groups"] = by_hand([(0, 0, [0, 0, 0]), (0, 0, [0, 0])], 0, reference=1.5)
# As some encoders write a constant field: no groups at all, the value as reference, the decimal scale left standing.
no_groups = struct.pack(">IBIHfHHBBBBIIIBBIBIB", 47, 5, 12, 2, 1.75, 0, 2, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0)
FILES["constant-complex"] = with_sections(
    octets(seas(12, ni=12, nj=1)), {5: no_groups, 7: struct.pack(">IB", 5, 7)}
)
FILES["constant-ccsds"] = octets(fill(parameter2(field(), WAVES), np.full(63, 1.75), "grid_ccsds"))

for bits in (1, 7, 8, 13, 16, 24, 25, 27):
    FILES[f"bits-{bits:02d}"] = octets(
        fill(parameter2(field(), PRESSURE, 101, 0), invented(63, 98000, 104000), None, None, bitsPerValue=bits)
    )
FILES["negative-scale-2"] = octets(
    fill(parameter2(field(), PRESSURE, 101, 0), np.round(invented(63, 98000, 104000), -2), None, -2)
)
FILES["negative-winds-1"] = octets(
    fill(field(1, table2Version=2, indicatorOfParameter=33, indicatorOfTypeOfLevel=105, level=10), invented(63, -14, -3))
)

multi = ec.codes_grib_multi_new()
for number, (numbers, low, high) in enumerate([(U, -9, 4), (V, -3, 11), (GUST, 9, 16)]):
    values = invented(63, low, high)
    part = fill(parameter2(field(), numbers, 103, 10, 6), values)
    ec.codes_grib_multi_append(part, 0 if number == 0 else 4, multi)
with open("/tmp/multi.grib2", "wb") as out:
    ec.codes_grib_multi_write(multi, out)
FILES["several-fields"] = open("/tmp/multi.grib2", "rb").read()

members = []
for member in (0, 1, 2):
    one = parameter2(field(ni=3, nj=3, productDefinitionTemplateNumber=1), WAVES, hours=6)
    ec.codes_set(one, "typeOfEnsembleForecast", 1 if member == 0 else 3)
    ec.codes_set(one, "perturbationNumber", member)
    ec.codes_set(one, "numberOfForecastsInEnsemble", 3)
    members.append(fill(one, invented(9, 1 + member, 2 + member)))
FILES["members-2"] = several(*members)
members = []
for member in (0, 1, 2):
    one = field(1, ni=3, nj=3, centre=98, table2Version=140, indicatorOfParameter=229, indicatorOfTypeOfLevel=102)
    ec.codes_set(one, "setLocalDefinition", 1)
    ec.codes_set(one, "localDefinitionNumber", 1)
    ec.codes_set(one, "type", "cf" if member == 0 else "pf")
    ec.codes_set(one, "number", member)
    ec.codes_set(one, "numberOfForecastsInEnsemble", 3)
    members.append(fill(one, invented(9, 1 + member, 2 + member)))
FILES["members-1"] = several(*members)

spread = parameter2(field(ni=3, nj=3, productDefinitionTemplateNumber=2), WAVES)
ec.codes_set(spread, "derivedForecast", 4)
FILES["spread"] = octets(fill(spread, invented(9)))

span = parameter2(field(ni=3, nj=3, productDefinitionTemplateNumber=8), GUST, 103, 10, 3)
for key, value in [
    ("yearOfEndOfOverallTimeInterval", 2026),
    ("monthOfEndOfOverallTimeInterval", 2),
    ("dayOfEndOfOverallTimeInterval", 3),
    ("hourOfEndOfOverallTimeInterval", 12),
    ("minuteOfEndOfOverallTimeInterval", 0),
    ("secondOfEndOfOverallTimeInterval", 0),
    ("typeOfStatisticalProcessing", 2),
    ("indicatorOfUnitForTimeRange", 1),
    ("lengthOfTimeRange", 3),
]:
    ec.codes_set(span, key, value)
FILES["greatest-gust-2"] = octets(fill(span, invented(9, 8, 20)))
FILES["greatest-gust-1"] = octets(
    fill(
        field(1, ni=3, nj=3, table2Version=2, indicatorOfParameter=180, indicatorOfTypeOfLevel=1, timeRangeIndicator=2, P1=3, P2=6),
        invented(9, 8, 20),
    )
)
FILES["swell-parts"] = several(
    *[fill(parameter2(field(ni=3, nj=3), (10, 0, 8), 241, part), invented(9)) for part in (1, 2, 3)],
    fill(parameter2(field(ni=3, nj=3), WAVES), invented(9)),
)
FILES["wind-aloft"] = octets(fill(parameter2(field(ni=3, nj=3), U, 103, 100), invented(9)))

# Refused by name.
lambert = ec.codes_grib_new_from_samples("GRIB2")
ec.codes_set(lambert, "gridType", "lambert")
ec.codes_set(lambert, "Nx", 3)
ec.codes_set(lambert, "Ny", 3)
ec.codes_set_values(lambert, invented(9))
FILES["refused-lambert"] = octets(lambert)
FILES["refused-gaussian-1"] = octets(ec.codes_grib_new_from_samples("reduced_gg_sfc_grib1"))[:]
png = mended(octets(seas(9, ni=3, nj=3)), 5, 10, struct.pack(">H", 41))
FILES["refused-png"] = png
second = ec.codes_grib_new_from_samples("regular_ll_sfc_grib1")
FILES["refused-second-order-1"] = octets(
    fill(field(1, table2Version=2, indicatorOfParameter=100, indicatorOfTypeOfLevel=1), invented(63), "grid_second_order")
)

# A little forecast for tests of taking it in: five times, six hours apart, an island in the waves.
island = {7, 8}


def forecast(hours):
    count, turn = 20, hours / 10
    grid = {"ni": 5, "nj": 4, "first": (38.0, -28.0)}
    wet = lambda values: [MISSING if i in island else value for i, value in enumerate(values)]
    return [
        fill(parameter2(field(**grid), U, 103, 10, hours), invented(count, -8, 8, turn)),
        fill(parameter2(field(**grid), V, 103, 10, hours), invented(count, -6, 9, turn + 1)),
        fill(parameter2(field(**grid), GUST, 1, 0, hours), invented(count, 9, 16, turn)),
        fill(parameter2(field(**grid), PRESSURE, 101, 0, hours), invented(count, 100800, 102100, turn), None, 0),
        fill(parameter2(field(**grid), WAVES, 1, 1, hours), wet(invented(count, 0.8, 3.1, turn))),
        fill(parameter2(field(**grid), PERIOD, 1, 1, hours), wet(invented(count, 5, 11, turn))),
    ]


FILES["forecast"] = several(*[one for hours in (0, 6, 12, 18, 24) for one in forecast(hours)])


# An ensemble beside it: four members of wind and seas, five times six hours apart, the last of them over any limit; gusts of no member.
def member_of_ensemble(member, hours):
    count, turn = 9, hours / 10 + member
    keys = {"ni": 3, "nj": 3, "first": (38.0, -28.0), "productDefinitionTemplateNumber": 1}
    of = {"typeOfEnsembleForecast": 1 if member == 0 else 3, "perturbationNumber": member, "numberOfForecastsInEnsemble": 4}
    more = 20 if member == 3 else 0
    made = [
        parameter2(field(**keys), numbers, surface, level, hours)
        for numbers, surface, level in [(U, 103, 10), (V, 103, 10), (WAVES, 1, 1)]
    ]
    for one in made:
        for key, value in of.items():
            ec.codes_set(one, key, value)
    ranges = [(-4 + more, 4 + more), (2, 6), (0.6 + more / 4, 1.2 + more / 4)]
    return [fill(one, invented(count, low, high, turn)) for one, (low, high) in zip(made, ranges)]


FILES["ensemble"] = several(
    *[one for hours in (0, 6, 12, 18, 24) for member in (0, 1, 2, 3) for one in member_of_ensemble(member, hours)]
)
speed = invented(9, 3, 12)
direction = np.array([350, 10, 20, 340, 0, 30, 355, 5, 15.0])
FILES["speed-and-direction"] = several(
    fill(parameter2(field(ni=3, nj=3), (0, 2, 1)), speed),
    fill(parameter2(field(ni=3, nj=3), (0, 2, 0)), direction),
)

# What mail and downloads do to a file.
two = several(seas(), fill(parameter2(field(), WAVES, hours=3), invented(63, 1, 5)))
FILES["mail-text"] = (
    b"From: forecasts@example.org\r\nSubject: your GRIB\r\n\r\nWaves as asked for; the GRIB follows.\r\n\r\n" + two + b"\r\n-- \r\n"
)
# ecCodes takes the word in the letter for the start of a message and finds none.
AS["mail-text"] = two
FILES["cut-short"] = two[: len(two) - 50]
FILES["cut-header"] = two[: len(two) // 2 + 12]
dense = octets(fill(parameter2(field(ni=31, nj=21, step=0.25), WAVES), invented(651), None, 4))
FILES["mangled-line-ends"] = dense.replace(b"\n", b"\r\n")
FILES["mangled-line-ends-lost"] = (dense[:700] + b"\r\n" + dense[702:]).replace(b"\r\n", b"\n")
FILES["mangled-seven-bits"] = bytes(octet & 0x7F for octet in dense)
FILES["mangled-utf-8"] = dense.decode("utf-8", "replace").encode("utf-8")


def read_back(data):
    """Every field ecCodes finds: its header and all its points."""
    path = "/tmp/one.grib"
    with open(path, "wb") as out:
        out.write(data)
    fields = []
    ec.codes_grib_multi_support_on()
    with open(path, "rb") as source:
        while True:
            try:
                handle = ec.codes_grib_new_from_file(source)
            except Exception:
                break
            if handle is None:
                break
            ec.codes_set(handle, "missingValue", MISSING)
            get = lambda key: ec.codes_get(handle, key)
            try:
                points = ec.codes_grib_get_data(handle)
            except Exception as error:
                fields.append({"refused": str(error)})
                continue
            ensemble = ec.codes_is_defined(handle, "perturbationNumber")
            fields.append(
                {
                    "edition": get("edition"),
                    "packing": get("packingType"),
                    "reference": f"{get('dataDate')} {get('dataTime'):04d}",
                    "valid": f"{get('validityDate')} {get('validityTime'):04d}",
                    "member": get("perturbationNumber") if ensemble else None,
                    "points": [
                        [round(p["lat"], 6), round(p["lon"], 6), None if p["value"] == MISSING else p["value"]]
                        for p in points
                    ],
                }
            )
            ec.codes_release(handle)
    return fields


expected = {}
for name, data in sorted(FILES.items()):
    with open(os.path.join(FOLDER, f"{name}.grib"), "wb") as out:
        out.write(data)
    if not name.startswith(("mangled", "refused")):
        expected[name] = read_back(AS.get(name, data))
with open(os.path.join(FOLDER, "expected.json"), "w") as out:
    json.dump(expected, out, separators=(",", ":"))
    out.write("\n")
print(len(FILES), "files,", sum(map(len, FILES.values())), "octets")
