"""The program from outside: what a person types, what is printed, what it ends with, and that the
folder stays whole. Each function `case_*` is one thing that must hold.

Usage: run.py PROGRAM [WORD...]; with words, only the cases whose name holds one of them.
"""

import json
import os
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import traceback
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PROGRAM = Path(sys.argv[1]).resolve()
CARS = sorted(path.parent.name for path in (ROOT / "builds").glob("*/build.toml"))
CLEAN, FINDINGS, FAILED, STOPPED = 0, 1, 2, 130
# Enough for a first plan, little enough for a test.
EFFORT = ["--effort", os.environ.get("EFFORT", "20000")]


def run(*arguments, cwd=None, wanted=(CLEAN,), **more):
    ran = subprocess.run(
        [PROGRAM, *map(str, arguments)], cwd=cwd, capture_output=True, text=True, timeout=600,
        stdin=subprocess.DEVNULL, **more,
    )
    words = " ".join(map(str, arguments))
    assert ran.returncode in wanted, (
        f"`{words}` ended with {ran.returncode}, wanted {wanted}:\n{ran.stdout}\n{ran.stderr}"
    )
    return ran


def new_car(folder, car):
    run("new", folder / car, "--like", car)
    return folder / car


def texts(car):
    """Every file that a person or the record owns, by name."""
    return {
        str(path.relative_to(car)): path.read_bytes()
        for path in sorted(car.rglob("*")) if path.is_file() and path.name != "plan.json"
    }


def in_any_order(value):
    """Lists sorted by what they hold: what is listed by name stands elsewhere under another name."""
    if isinstance(value, dict):
        return {key: in_any_order(held) for key, held in value.items()}
    if isinstance(value, list):
        return sorted((in_any_order(held) for held in value), key=lambda held: json.dumps(held, sort_keys=True))
    return value


def assert_readable(text, columns=80):
    assert "\x1b" not in text, "colour without a terminal"
    for line in text.splitlines():
        assert len(line) <= columns, f"{len(line)} columns: {line!r}"


def case_help_names_every_command(_folder):
    words = run("--help").stdout
    for command in ["new", "measure", "route", "buy", "cut", "check", "rename", "demo", "completions"]:
        assert re.search(rf"^\s+{command}\b", words, re.M), f"{command} is not in --help"
    assert_readable(words)


def case_a_slip_of_the_hand_ends_with_2(_folder):
    ran = run("mesure", wanted=(FAILED,))
    assert "measure" in ran.stderr and not ran.stdout


def case_completions_for_every_shell(_folder):
    for shell in ["bash", "zsh", "fish", "powershell", "elvish"]:
        assert "tubewright" in run("completions", shell).stdout


def case_no_folder_is_said_plainly(folder):
    ran = run("measure", folder / "nowhere", wanted=(FAILED,))
    assert "nowhere" in ran.stderr and not ran.stdout


def case_new_overwrites_nothing(folder):
    car = new_car(folder, CARS[0])
    before = texts(car)
    run("new", car, wanted=(FAILED,))
    assert texts(car) == before


def case_an_empty_build_opens_and_says_what_it_lacks(folder):
    run("new", folder / "bare")
    ran = run("check", folder / "bare", wanted=(CLEAN, FINDINGS))
    assert "not checked" in ran.stdout


# A quarter of an hour under a car: three marks, the port and where the tip shall be. One a line: number,
# from, to (or the height or slope of what), clock on the rim or face, what was read.
FIFTEEN_READINGS = """
1 | A left | A right | | 1000 mm
2 | A left | B rear | | 2169 mm
3 | A right | B rear | | 2150 mm
4 | height | A left | | 420 mm
5 | height | A right | | 415 mm
6 | height | B rear | | 380 mm
7 | B rear | tip place | | 715 mm
8 | A right | tip place | | 2704 mm
9 | height | tip place | | 300 mm
10 | A left | port | | 478 mm
11 | A right | port | | 767 mm
12 | height | port | | 360 mm
13 | face | port | 12:00 | 74.5 deg
14 | face | port | 3:00 | 0 deg
15 | B rear | port | 3:00 | 1766 mm
"""

ROUGH_CAR = """format = "tubewright-build/1"
name = "Rough"
frame = { origin = "A left", centre-line = [["A left", "A right"]], level = "floor" }
wishes = { units = "mm" }
setup = [{ name = "floor", stance = "wheels" }]
mark = [
  { name = "A left", side = "left", place = "front jig hole of the left sill" },
  { name = "A right", side = "right", place = "front jig hole of the right sill" },
  { name = "B rear", place = "towing eye" },
]
point = [{ name = "tip place", side = "right" }]
end = [
  { name = "port", kind = "flange", carrier = "chassis", od = "63.5 mm", flows = "out" },
  { name = "tip", kind = "tip", carrier = "chassis", od = "63.5 mm", flows = "in", at = "tip place", points = "rearwards", within = "15 mm" },
]
run = [{ name = "exhaust", from = "port", to = "tip", tube = "63.5x1.5 304" }]
"""


def rough_reading(line):
    number, origin, to, clock, reads = (part.strip() for part in line.split("|"))
    keys = {"number": int(number), "reads": reads}
    if origin == "height":
        keys |= {"kind": "height", "of": to, "setup": "floor"}
    elif origin == "face":
        keys |= {"kind": "face", "end": to, "clock": clock, "setup": "floor"}
    else:
        keys |= {"kind": "tape", "from": origin, "to": to} | ({"rim": clock} if clock else {})
    return "[[reading]]\n" + "".join(f"{key} = {json.dumps(value)}\n" for key, value in keys.items())


def case_fifteen_readings_give_a_rough_way_with_a_wide_plus_minus(folder):
    car = folder / "rough"
    run("new", car)
    lines = FIFTEEN_READINGS.strip().splitlines()
    assert len(lines) == 15
    (car / "build.toml").write_text(ROUGH_CAR + "\n" + "\n".join(map(rough_reading, lines)))
    shutil.copy(ROOT / "builds/kitcar-mid4/stock.toml", car / "stock.toml")
    ran = run("measure", car, wanted=(CLEAN, FINDINGS))
    assert_readable(ran.stdout)
    for words in ("nothing checks them yet", "Measure this next", "Nothing tells this car from its mirror"):
        assert words in ran.stdout, words
    told = json.loads(run("measure", car, "--json", wanted=(CLEAN, FINDINGS)).stdout)
    places = {place["name"]: place for place in told["places"]}
    # The tip lies at the rear, though no reading says so, and nothing is surer than it is.
    assert places["tip place"]["at"][0] > 2000 and places["tip place"]["at"][1] > 0, places
    assert 5 < places["tip place"]["plus-minus"] < 50, places
    port = next(end for end in told["ends"] if end["name"] == "port")
    assert 2 < port["direction-plus-minus"] < 30, port
    ran = run("route", car, *EFFORT)
    assert "exhaust" in ran.stdout and "mm" in ran.stdout, ran.stdout
    ways = json.loads(run("route", car, *EFFORT, "--json").stdout)
    assert json.dumps(ways).count('"bend') + json.dumps(ways).count("bends") > 0, ways
    # Rough is said, not hidden: the direction is not good enough to cut by.
    ran = run("check", car, wanted=(FINDINGS,))
    assert "the direction of port" in ran.stdout and "not checked" in ran.stdout


def is_in_inches(car):
    build = (car / "build.toml").read_text()
    return build.count(" in\"") > build.count(" mm\"")


def case_every_demonstration_car_runs_from_readings_to_saw_marks(folder):
    for car_name in CARS:
        car = new_car(folder, car_name)
        before = texts(car)
        for command in [["measure"], ["route", *EFFORT], ["buy"], ["cut"], ["check"], ["counter"], ["fit"], ["wanted"]]:
            ran = run(command[0], car, *command[1:], wanted=(CLEAN, FINDINGS))
            assert ran.stdout.strip(), f"{command[0]} {car_name} printed nothing"
            assert_readable(ran.stdout)
            if is_in_inches(car):
                # Wire is sold by its millimetres everywhere.
                metric = re.search(r".*\d mm\b(?! wire).*", ran.stdout)
                assert not metric, f"{command[0]} {car_name}: {metric[0]}"
        assert texts(car) == before, f"{car_name}: looking changed what a person wrote"


def case_json_is_json_and_the_same_twice(folder):
    car = new_car(folder, CARS[0])
    for command in [["measure"], ["route", *EFFORT], ["buy"], ["cut"], ["check"]]:
        first, second = (
            run(command[0], car, *command[1:], "--json", wanted=(CLEAN, FINDINGS)).stdout
            for _ in range(2)
        )
        assert json.loads(first), command
        assert first == second, f"{command[0]} --json differs from run to run"


def case_the_plan_may_be_deleted(folder):
    car = new_car(folder, CARS[0])
    run("route", car, *EFFORT, wanted=(CLEAN, FINDINGS))
    before = texts(car)
    assert (car / "plan.json").is_file(), "route keeps no plan"
    first = run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout
    (car / "plan.json").unlink()
    assert texts(car) == before, "the plan held what a person wrote"
    # Solved anew with the build's own effort, the way may be another; nothing is lost or in the way.
    assert json.loads(run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout)
    run("route", car, *EFFORT, wanted=(CLEAN, FINDINGS))
    assert run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout == first


def case_a_chosen_way_stands_without_the_plan_and_says_what_it_is_older_than(folder):
    car = new_car(folder, CARS[1])
    run("route", car, *EFFORT, wanted=(CLEAN, FINDINGS))
    run("route", car, "--choose", "1")
    record = (car / "shop.toml").read_text()
    assert 'what = "chosen"' in record
    assert "older than" not in run("check", car, wanted=(CLEAN, FINDINGS)).stdout
    build = car / "build.toml"
    written = build.read_text()
    build.write_text("# looked at again\n" + written)
    assert "older than" not in run("check", car, wanted=(CLEAN, FINDINGS)).stdout
    # One millimetre more in reading 1.
    old = re.search(r'number = 1\n(?:.*\n)*?reads = "(\d+) mm"', written)
    build.write_text(written[: old.start(1)] + str(int(old.group(1)) + 1) + written[old.end(1):])
    ran = run("check", car, wanted=(CLEAN, FINDINGS))
    assert re.search(r"routes: older than reading 1\b", ran.stdout), ran.stdout[:600]
    assert_readable(ran.stdout)
    # What was chosen stands in the record, pieces and all: without the plan file it is the same.
    build.write_text(written)
    first = run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout
    (car / "plan.json").unlink()
    assert run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout == first
    assert (car / "shop.toml").read_text() == record, "looking changed the record"


def case_the_chosen_way_itself_is_offered_as_no_change_and_a_price_moves_no_tube(folder):
    # Two banks through one crossover, whose place the record keeps.
    car = new_car(folder, CARS[0])
    run("route", car, *EFFORT, wanted=(CLEAN, FINDINGS))
    cards = run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout
    run("route", car, "--choose", "1", "--on", "2026-05-04")
    assert run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout == cards
    ways = json.loads(run("route", car, *EFFORT, "--json", wanted=(CLEAN, FINDINGS)).stdout)
    assert ways["alternatives"][0]["offer"]["runs"] == []
    stock = car / "stock.toml"
    stock.write_text(re.sub(r'price = "1', 'price = "2', stock.read_text(), count=1))
    assert "older than" not in run("check", car, wanted=(CLEAN, FINDINGS)).stdout


def case_an_old_and_broken_plan_is_no_harm(folder):
    car = new_car(folder, CARS[1])
    first = run("buy", car, "--json", wanted=(CLEAN, FINDINGS)).stdout
    for broken in ['{"half of a pl', "", "[]", '{"format": "tubewright-plan/0"}', "\0\0\0"]:
        (car / "plan.json").write_text(broken)
        assert run("buy", car, "--json", wanted=(CLEAN, FINDINGS)).stdout == first, broken


def case_a_comment_makes_nothing_stale_and_an_error_names_its_line(folder):
    car = new_car(folder, CARS[0])
    build = car / "build.toml"
    first = run("measure", car, "--json", wanted=(CLEAN, FINDINGS)).stdout
    build.write_text("# looked at again\n" + build.read_text())
    assert run("measure", car, "--json", wanted=(CLEAN, FINDINGS)).stdout == first
    lines = build.read_text().splitlines()
    at = next(n for n, line in enumerate(lines) if line.startswith("reads = "))
    lines[at] = "reads = 812"
    build.write_text("\n".join(lines) + "\n")
    ran = run("measure", car, wanted=(FAILED,))
    assert f"build.toml:{at + 1}:" in ran.stderr, ran.stderr


def case_a_whole_job_played(folder):
    """Two lines out, one cut spoiled, one joint tacked 4 mm off: every gap held at the end."""
    car = new_car(folder, "estate-v6")
    run("route", car, "--effort", "40000", wanted=(CLEAN, FINDINGS))
    run("route", car, "--choose", "1")
    # At the counter: two of the bought bends are out; the plan without them is bought.
    counter = json.loads(run("counter", car, "--json", "--pairs", "1").stdout)
    bends = [buy["item"] for buy in counter["plan"]["buy"] if buy["item"].startswith("bend")][:2]
    for item in bends:
        run("tick", car, "out", item)
    out = [word for item in bends for word in ("--without", item)]
    bought = json.loads(run("counter", car, "--json", "--pairs", "0", *out).stdout)
    assert not bought["plan"]["missing"] and bought["dearer-minor"] is not None
    for buy in bought["plan"]["buy"]:
        assert buy["item"] not in bends
        run("tick", car, "got", buy["item"], "--count", buy["quantity"], "--from", buy["supplier"])
    # Everything is on hand now: nothing is left to buy, and the buying list says the same.
    rest = json.loads(run("counter", car, "--json", "--pairs", "0").stdout)
    assert rest["plan"]["buy"] == [], rest["plan"]["buy"]
    listed = json.loads(run("buy", car, "--json").stdout)
    assert listed["buy"] == [] and not listed["missing"], listed
    assert {it["item"] for it in listed["done"]["got"]} == {buy["item"] for buy in bought["plan"]["buy"]}
    assert "Nothing: all is on hand." in run("buy", car).stdout
    # A bend is cut; what its legs serve is cut with it, and the cards show what is still to be cut.
    def to_cut():
        cards = json.loads(run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout)
        return {mark for card in cards["cards"] for part in card["gives"] for mark in part["pieces"]}

    all_marks = to_cut()
    cards = json.loads(run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout)["cards"]
    whole = next(card for card in cards if len(card["gives"]) == 1 and card["stock"]["kind"] == "bend")
    done = json.loads(run("tick", car, "--json", "cut", whole["gives"][0]["pieces"][0]).stdout)
    assert done["pieces"] == whole["gives"][0]["pieces"], done
    left = to_cut()
    assert not left & set(done["pieces"]) or any("straight" in card["from"] for card in cards), left
    assert left < all_marks, (left, all_marks)
    assert json.loads(run("buy", car, "--json").stdout)["buy"] == []
    ran = run("tick", car, "cut", done["pieces"][0], wanted=(FAILED,))
    assert "is cut already" in ran.stderr, ran.stderr
    # One cut is spoiled; what is left goes on the shelf and a remake is named.
    cards = json.loads(run("cut", car, "--json", wanted=(CLEAN, FINDINGS)).stdout)["cards"]
    straight = next(
        card["gives"][0]["pieces"][0] for card in cards
        if card["stock"]["kind"] == "straight" and len(card["gives"][0]["pieces"]) == 1
    )
    run("tick", car, "cut", straight)
    assert straight not in to_cut()
    spoiled = json.loads(run("spoiled", car, straight, "--left", "60 mm", "--json",
                             wanted=(CLEAN, FINDINGS)).stdout)
    assert spoiled["remake-from"] or spoiled["missing"], spoiled
    assert f'name = "rest of {straight}"' in (car / "stock.toml").read_text()
    assert straight in to_cut(), "a spoiled piece is cut again"
    board = json.loads(run("check", car, "--json", wanted=(CLEAN, FINDINGS)).stdout)
    covers = [finding for finding in board["findings"] if finding["rule"] == "buy.covered"]
    assert [finding["state"] for finding in covers] == ["passes"] or spoiled["missing"], covers
    # A joint of the left bank is tacked 4 mm off, away from the first mark; the tapes say so.
    fit = json.loads(run("fit", car, "--json", wanted=(CLEAN, FINDINGS)).stdout)
    checks = [
        check for step in fit["steps"] if step["act"] == "tack" and step["run"] == "left bank"
        for check in step["checks"] if len(check["distances"]) >= 3
    ]
    check = checks[0]
    first = check["distances"][0]
    line = [b - a for a, b in zip(first["from-at"], first["scribed-at"])]
    off = [4 * step / first["reads"] for step in line]
    tapes = []
    for distance in check["distances"]:
        there = [a + b for a, b in zip(distance["scribed-at"], off)]
        reads = sum((a - b) ** 2 for a, b in zip(there, distance["from-at"])) ** 0.5
        tapes += ["--tape", f'{distance["from"]}, {distance["clock"]:.0f} deg, {reads:.1f} mm']
    tacked = json.loads(run("tacked", car, check["joint"], "--json", "--effort", "0", *tapes,
                            wanted=(CLEAN, FINDINGS)).stdout)
    found = sum(a * b for a, b in zip(tacked["off"], off)) / 4
    assert 1 < found < 7, tacked["off"]
    holds = [n for n, offer in enumerate(tacked["offers"], 1) if offer["holds"]]
    assert holds, tacked["offers"]
    assert not tacked["offers"][holds[0] - 1]["lost"], "no cut steel is lost to 4 mm"
    run("tacked", car, check["joint"], "--effort", "0", "--accept", holds[0])
    board = json.loads(run("check", car, "--json", wanted=(CLEAN, FINDINGS)).stdout)
    broken = [
        finding["subject"] for finding in board["findings"]
        if finding["state"] == "fails" and finding["rule"].startswith("clearance")
    ]
    assert not broken, broken
    # Sawing goes on: every part that is ticked leaves the cards, and the steel for the rest is there or
    # on the list: the spoiled piece alone may have to be bought again.
    left = to_cut()
    for mark in sorted(left)[:2]:
        if mark in to_cut():
            run("tick", car, "cut", mark)
    assert to_cut() < left
    listed = json.loads(run("buy", car, "--json").stdout)
    assert not listed["missing"], listed
    assert listed["buy"] == [] or spoiled["still-to-buy"], listed


def case_renaming_carries_every_reference(folder):
    car = new_car(folder, CARS[0])
    first = run("measure", car, "--json", wanted=(CLEAN, FINDINGS)).stdout
    old = re.search(r'\[\[mark\]\]\s*name = "([^"]+)"', (car / "build.toml").read_text()).group(1)
    run("rename", car, "mark", old, "naïve マーク 1")
    for name in ["build.toml", "stock.toml", "shop.toml"]:
        if (car / name).exists():
            assert f'"{old}"' not in (car / name).read_text(), f"{name} still says {old}"
    second = run("measure", car, "--json", wanted=(CLEAN, FINDINGS)).stdout
    again = json.loads(second.replace("naïve マーク 1", old))
    assert in_any_order(again) == in_any_order(json.loads(first))


def case_a_renaming_keeps_the_routes(folder):
    car = new_car(folder, "kitcar-mid4")
    run("route", car, *EFFORT, wanted=(CLEAN, FINDINGS))
    first = run("check", car, "--json", wanted=(CLEAN, FINDINGS))
    text = (car / "build.toml").read_text()
    for kind in ["body", "mark", "component", "run"]:
        old = re.search(rf'\[\[{kind}\]\]\s*name = "([^"]+)"', text).group(1)
        run("rename", car, kind, old, f"the renamed {kind}")
        again = run("check", car, "--json", wanted=(CLEAN, FINDINGS))
        assert "solving" not in again.stderr, again.stderr
    counts = [{key: json.loads(ran.stdout)[key] for key in ("pass", "fail", "not-checked")} for ran in (first, again)]
    assert counts[0] == counts[1], counts


def case_renaming_back_gives_the_same_bytes(folder):
    car = new_car(folder, CARS[0])
    before = texts(car)
    old = re.search(r'\[\[mark\]\]\s*name = "([^"]+)"', (car / "build.toml").read_text()).group(1)
    run("rename", car, "mark", old, "for a while")
    run("rename", car, "mark", "for a while", old)
    assert texts(car) == before


def case_sheets_come_whole_and_the_same_twice(folder):
    car = new_car(folder, "estate-v6")
    run("route", car, *EFFORT, wanted=(CLEAN, FINDINGS))
    for out in ("once", "twice"):
        run("sheets", car, "--out", folder / out, "--date", "2026-03-14", wanted=(CLEAN, FINDINGS))
    files = {str(path.relative_to(folder / "once")): path.read_bytes()
             for path in (folder / "once").rglob("*") if path.is_file()}
    for name in ["runs.step", "runs.glb", "lists.json", "lists/cuts.csv", "lists/buy.csv", "three-views.svg",
                 "three-views.dxf", "templates/clock-strip-57.svg", "templates/clock-strip-57.dxf",
                 "bends/left-bank.txt"]:
        assert name in files, f"{name} is missing among {sorted(files)}"
    for name, held in files.items():
        assert (folder / "twice" / name).read_bytes() == held, f"{name} differs between two runs"
    lists = json.loads(files["lists.json"])
    assert lists["date"] == "2026-03-14" and lists["lists"]["cuts"] and lists["lists"]["welds"]


def case_sheets_of_an_older_plan_are_refused(folder):
    car = new_car(folder, "kitcar-mid4")
    run("route", car, *EFFORT, wanted=(CLEAN, FINDINGS))
    build = car / "build.toml"
    text = build.read_text()
    changed = re.sub(r'reads = "(\d+) mm"', lambda found: f'reads = "{int(found[1]) + 1} mm"', text, count=1)
    assert changed != text, "no reading in millimetres"
    build.write_text(changed)
    ran = run("sheets", car, "--out", folder / "out", wanted=(FAILED,))
    assert "older than reading" in ran.stderr and "tubewright route" in ran.stderr, ran.stderr
    assert not (folder / "out").exists(), "nothing may be written from an older plan"


def case_a_closed_pipe_is_no_failure(folder):
    car = new_car(folder, CARS[0])
    ran = subprocess.run(
        ["bash", "-c", 'set -o pipefail; "$0" measure "$1" --all | head -n 1', PROGRAM, car],
        capture_output=True, text=True, timeout=120, stdin=subprocess.DEVNULL,
    )
    assert ran.returncode in (CLEAN, FINDINGS), ran
    assert "panic" not in ran.stderr.lower(), ran.stderr


def case_ctrl_c_leaves_everything_whole(folder):
    car = new_car(folder, CARS[0])
    before = texts(car)
    program = subprocess.Popen(
        [PROGRAM, "route", car, "--effort", "1000000000"],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, stdin=subprocess.DEVNULL, text=True,
    )
    time.sleep(1.0)
    program.send_signal(signal.SIGINT)
    # The effort asked for would take hours; a machine under load may need a while to stop.
    out, err = program.communicate(timeout=60)
    assert program.returncode == STOPPED, (program.returncode, out, err)
    assert texts(car) == before
    assert not (car / "plan.json").exists(), "what a stopped search holds is not kept"
    run("measure", car, wanted=(CLEAN, FINDINGS))


def case_the_demonstration_runs_whole(folder):
    ran = run("demo", "--folder", "demo", *EFFORT, cwd=folder, wanted=(CLEAN, FINDINGS))
    assert_readable(ran.stdout)
    assert (folder / "demo" / "build.toml").is_file()
    assert (folder / "demo" / "three-views.svg").is_file()
    for word in ["Measure", "Route", "Buy", "Cut", "not checked"]:
        assert word in ran.stdout, f"demo does not say {word}"


def case_files_bad_on_purpose_are_refused_with_their_line(folder):
    for kind in ["build", "stock", "shop"]:
        for bad in sorted((ROOT / "tests/peer/bad" / kind).glob("*.toml")):
            # A sound car around the bad file, so that only the bad file can be at fault.
            car = folder / f"{kind}-{bad.stem}"
            car.mkdir()
            (car / "build.toml").write_text('format = "tubewright-build/1"\nname = "sound"\n')
            (car / f"{kind}.toml").write_bytes(bad.read_bytes())
            ran = run("check", car, wanted=(FAILED,))
            words = ran.stdout + ran.stderr
            assert re.search(rf"{kind}\.toml:\d+:\d+", words), f"{bad}: no line is named:\n{words}"


def case_too_large_a_file_is_refused_with_its_reason(folder):
    for name in ["build.toml", "stock.toml", "shop.toml"]:
        car = new_car(folder / name, CARS[0])
        with (car / name).open("ab") as file:
            file.write(b"#" * 50_000_001)
        ran = run("check", car, wanted=(FAILED,))
        assert re.search(rf"{name} is 50\.\d MB long .* more than 4 MB", ran.stderr), ran.stderr
        assert "look whether" in ran.stderr and len(ran.stderr) < 2000, ran.stderr


def case_too_large_a_scan_and_plan_are_told_and_stop_no_tape(folder):
    car = new_car(folder, "pickup-six")
    scan = next(path for path in car.rglob("*") if path.suffix in {".stl", ".obj", ".ply"})
    with scan.open("ab") as file:
        file.truncate(60 * 1024 * 1024)
    ran = run("measure", car, wanted=(CLEAN, FINDINGS))
    assert re.search(rf"{scan.name} has 60 MB; at most 50 MB are read", ran.stderr), ran.stderr
    assert "thin the mesh out" in ran.stderr, ran.stderr
    car = new_car(folder, "kitcar-mid4")
    with (car / "plan.json").open("wb") as file:
        file.truncate(60_000_000)
    ran = run("route", car, "--effort", "2000", wanted=(CLEAN, FINDINGS))
    assert "plan.json is 60.0 MB long and was not read" in ran.stderr, ran.stderr
    assert (car / "plan.json").stat().st_size < 60_000_000, "the next plan takes its place"


def case_a_slip_in_the_stock_does_not_stop_the_tape(folder):
    car = new_car(folder, CARS[0])
    whole = run("measure", car, "--json", wanted=(CLEAN, FINDINGS))
    stock = car / "stock.toml"
    stock.write_text(stock.read_text() + '\n[[offre]]\nsupplier = "nobody"\n')
    ran = run("measure", car, "--json", wanted=(CLEAN, FINDINGS))
    assert ran.stdout == whole.stdout, "the survey needs nothing of the stock"
    assert "stock.toml:" in ran.stderr and "offre" in ran.stderr and "goes on" in ran.stderr, ran.stderr
    ran = run("buy", car, wanted=(FAILED,))
    assert "stock.toml:" in ran.stderr and "offre" in ran.stderr and "goes on" not in ran.stderr, ran.stderr


def played(name):
    """Runs one case; what went wrong, if anything, and the seconds that it took."""
    begun = time.monotonic()
    trouble = ""
    try:
        with tempfile.TemporaryDirectory() as folder:
            globals()[name](Path(folder))
    except Exception:  # every other case still has its say
        trouble = traceback.format_exc()
    return trouble, time.monotonic() - begun


def main():
    words = sys.argv[2:]
    names = [name for name in globals() if name.startswith("case_")]
    names = [name for name in names if not words or any(word in name for word in words)]
    failed = 0
    # Much of what the program does runs on one core; told in the order in which they stand here.
    with ThreadPoolExecutor(max_workers=os.cpu_count() or 1) as pool:
        for name, (trouble, seconds) in zip(names, pool.map(played, names)):
            failed += bool(trouble)
            verdict = "FAILED" if trouble else "ok    "
            print(f"{verdict}  {name[5:].replace('_', ' ')} ({seconds:.1f} s)", flush=True)
            print(trouble, end="", file=sys.stderr, flush=True)
    print(f"command line: {len(names) - failed} passed, {failed} failed")
    sys.exit(failed > 0 or not names)


main()
