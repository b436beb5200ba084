"""The printed packet, judged by poppler: the same bytes twice, every page stamped and filled, the
rulers and the clock strip as long on paper as they say."""

import re
import shutil
import subprocess
import tempfile
import time
from pathlib import Path

import numpy as np
from PIL import Image

DOTS_PER_INCH = 600
MM = 25.4 / DOTS_PER_INCH
LINE_MM = 0.2
# Little enough to route in a blink; the sheets are the same in kind.
EFFORT = "2000"
TIMES = []


def sheets(program, folder, name, *options):
    out = folder / name
    begun = time.monotonic()
    subprocess.run(
        [program, "sheets", folder / "car", "--out", out, "--date", "2026-03-14", *options],
        check=False, capture_output=True, timeout=600,
    )
    assert (out / "packet.pdf").exists(), f"{name}: no packet.pdf"
    TIMES.append(time.monotonic() - begun)
    return out


def text_of(pdf):
    return subprocess.run(["pdftotext", "-layout", pdf, "-"], check=True, capture_output=True,
                          text=True).stdout


def page_picture(pdf, page, folder, dots=DOTS_PER_INCH):
    head = folder / f"page-{dots}-{page}"
    subprocess.run(["pdftoppm", "-r", str(dots), "-f", str(page), "-l", str(page), "-gray",
                    "-singlefile", pdf, head], check=True)
    return np.array(Image.open(head.with_suffix(".pgm")))


def runs(row):
    """Lengths of the dark stretches of a row of pixels."""
    edges = np.flatnonzero(np.diff(np.concatenate([[0], row.astype(np.int8), [0]])))
    return edges[1::2] - edges[::2]


def measured(picture, want_mm):
    """The dark horizontal line nearest to a length, mm."""
    dark = picture < 150
    found = [length * MM for row in dark for length in runs(row) if length * MM > 40.0]
    assert found, "no long line on the page"
    return min(found, key=lambda mm: abs(mm - want_mm))


def geometry(pdf, pages, folder):
    """Rulers and strip of the clock strip's page."""
    number = next(i for i, page in enumerate(pages, 1) if "clock strip: degrees" in page)
    picture = page_picture(pdf, number, folder)
    worst = 0.0
    for what, want in [("100 mm ruler", 100.0), ("4 in ruler", 101.6),
                       ("clock strip, once round Ø57 in 0.1 mm paper", np.pi * 57.1)]:
        got = measured(picture, want)
        # A line is drawn to the middle of its end ticks: at most one width of a tick longer.
        assert -0.05 <= got - want <= 0.2 + LINE_MM, f"{what}: {got:.3f} mm on paper, should be {want:.3f}"
        worst = max(worst, abs(got - want))
    return worst


def main(program):
    assert shutil.which("pdftoppm"), "pdftoppm is missing: install poppler-utils"
    with tempfile.TemporaryDirectory() as where:
        folder = Path(where)
        subprocess.run([program, "new", folder / "car", "--like", "estate-v6"], check=True, capture_output=True)
        subprocess.run([program, "route", folder / "car", "--effort", EFFORT], check=False,
                       capture_output=True, timeout=600)
        once, twice = sheets(program, folder, "once"), sheets(program, folder, "twice")
        names = sorted(p.relative_to(once) for p in once.rglob("*") if p.is_file())
        assert names == sorted(p.relative_to(twice) for p in twice.rglob("*") if p.is_file())
        for name in names:
            assert (once / name).read_bytes() == (twice / name).read_bytes(), f"{name} differs between two runs"
        letter = sheets(program, folder, "letter", "--paper", "letter")
        pdf = once / "packet.pdf"
        pages = text_of(pdf).split("\f")[:-1]
        for number, page in enumerate(pages, 1):
            assert "2026-03-14" in page and "plan " in page, f"page {number} has no stamp"
            assert re.search(rf"page {number} of {len(pages)}\b", page), f"page {number} has no number"
            assert len(page.split()) > 20, f"page {number} is as good as empty"
        worst = geometry(pdf, pages, folder)
        letter_pdf = letter / "packet.pdf"
        letter_pages = text_of(letter_pdf).split("\f")[:-1]
        worst = max(worst, geometry(letter_pdf, letter_pages, folder))
    return (f"{len(pages)} pages twice the same, all stamped; rulers and strip within {worst:.2f} mm on A4 "
            f"and US Letter; {len(names)} files the same twice; "
            f"a whole packet in {min(TIMES):.1f} s")
