"""Every link in the handbook and the top pages leads somewhere, and the handbook's contents name
every chapter. Links out of the project are refused: the handbook must read the same with no
network, so a source is named by author, title and edition instead.
"""

import re
import urllib.parse
from pathlib import Path

import tree

LINK = re.compile(r"!?\[(?:[^\[\]]|\[[^\]]*\])*\]\(([^()\s]*(?:\([^()\s]*\))?[^()\s]*)(?:\s+\"[^\"]*\")?\)")
FENCE = re.compile(r"^(```|~~~)")


def prose(text):
    """Line numbers and lines outside fenced code, with inline code taken out."""
    inside = False
    for number, line in enumerate(text.splitlines(), 1):
        if FENCE.match(line.strip()):
            inside = not inside
        elif not inside:
            yield number, re.sub(r"`[^`]*`", "", line)


def anchors(path):
    """The anchors that a renderer gives to the headings of a page."""
    found = set()
    inside = False
    for line in (tree.ROOT / path).read_text().splitlines():
        if FENCE.match(line.strip()):
            inside = not inside
        heading = re.match(r"#+\s+(.*)", line)
        if heading and not inside:
            plain = re.sub(r"[`*]|\[([^\]]*)\]\([^)]*\)", r"\1", heading.group(1)).strip().lower()
            kept = "".join(c for c in plain if c.isalnum() or c in " -_")
            anchor = kept.replace(" ", "-")
            number = 0
            while (anchor if number == 0 else f"{anchor}-{number}") in found:
                number += 1
            found.add(anchor if number == 0 else f"{anchor}-{number}")
    return found


def main():
    problems = []
    links = 0
    pages = [path for path in tree.files(".md")]
    for page in pages:
        for number, line in prose((tree.ROOT / page).read_text()):
            for target in LINK.findall(line):
                links += 1
                where = f"{page}:{number}"
                if re.match(r"[a-z]+:", target):
                    problems.append(f"{where}: leads out of the project: {target}")
                    continue
                name, _, anchor = urllib.parse.unquote(target).partition("#")
                goal = (tree.ROOT / page.parent / name).resolve() if name else tree.ROOT / page
                if not goal.exists():
                    problems.append(f"{where}: leads nowhere: {target}")
                elif anchor and goal.suffix == ".md" and anchor not in anchors(goal.relative_to(tree.ROOT)):
                    problems.append(f"{where}: no such heading: {target}")
    contents = Path("handbook/src/SUMMARY.md")
    listed = set(LINK.findall((tree.ROOT / contents).read_text()))
    for page in pages:
        if page.parts[:2] == ("handbook", "src") and page != contents:
            if str(page.relative_to("handbook/src")) not in listed:
                problems.append(f"{page}: not in {contents}")
    tree.verdict(problems, f"{links} links on {len(pages)} pages lead somewhere")


main()
