"""Text of the readings and of the truth fixtures."""

import numpy as np

ORDER = ["number", "kind", "end", "clock", "of", "from", "from-rim", "from-bolt", "to", "rim", "bolt",
         "left", "right", "along", "base", "setup", "reads", "plus-minus", "burnt", "hole", "side", "note", "doubt"]


def value(v):
    if isinstance(v, bool):
        return "true" if v else "false"
    if isinstance(v, int):
        return str(v)
    if isinstance(v, (float, np.floating)):
        said = f"{v:.6f}".rstrip("0").rstrip(".")
        return said + ".0" if "." not in said else said
    if isinstance(v, str):
        return '"' + v.replace("\\", "\\\\").replace('"', '\\"') + '"'
    if isinstance(v, dict):
        return "{ " + ", ".join(f"{k} = {value(x)}" for k, x in v.items()) + " }"
    return "[" + ", ".join(value(x) for x in v) + "]"


def readings_text(readings):
    out = []
    for r in readings:
        out.append("[[reading]]")
        for key in ORDER:
            if key in r:
                out.append(f"{key} = {value(r[key])}")
        out.append("")
    return "\n".join(out) + "\n"


def scan_place(mark, at):
    return f"  {{ mark = {value(mark)}, at = [{', '.join(f'{v:.4f}' for v in at)}] }},\n"


def piece_words(p):
    if p["type"] == "straight":
        return f"straight {p['length_mm']:.1f}"
    if p["type"] == "bend":
        return f"bend {p['angle_deg']:.1f} at {p['clock_deg']:.1f}"
    return p.get("name", p["type"])


def write(path, slug, doc, truth, planted, runs, module):
    """The truth in the frame of the build: origin at its origin mark in x and z, y from the middle
    plane of its centre-line pairs, z along the plumb line of its level set-up."""
    lines = [
        f"# The truth of builds/{slug}, written by make_builds.py from {module.replace('.', '/')}.py; not edited by hand.",
        "# mm; x rearwards, y to the right, z up, along the plumb line of the level set-up; x = z = 0 at the",
        "# origin mark, y = 0 in the middle plane of the centre-line pairs.",
        f"build = {value(slug)}",
        f"origin = {value(doc['frame']['origin'])}",
        "",
    ]
    marks = {m["name"] for m in doc["mark"]}
    for name, p in truth["places"].items():
        lines += ["[[place]]", f"name = {value(name)}", f"kind = {value('mark' if name in marks else 'point')}", f"at = {value(list(p))}", ""]
    for name, (centre, travel) in truth["ends"].items():
        travel = np.asarray(travel, float) / np.linalg.norm(travel)
        lines += ["[[end]]", f"name = {value(name)}", f"centre = {value(list(centre))}", f"travel = [{', '.join(f'{t:.12f}' for t in travel)}]", ""]
    for name, (up, offset) in truth["setups"].items():
        up = np.asarray(up, float) / np.linalg.norm(up)
        lines += ["# floor: up . place = offset; the plumb line hangs along -up", "[[setup]]", f"name = {value(name)}",
                  f"up = [{', '.join(f'{t:.12f}' for t in up)}]", f"offset = {value(offset)}", ""]
    for slip in planted:
        lines += ["[[slip]]"] + [f"{k.replace('_', '-')} = {value(v)}" for k, v in slip.items()] + [""]
    lines += ["# Hidden runs that clear everything. Clock: from the plane of the bend before (first: from up),",
              "# clockwise looking downstream. `vertices` are the corners of the centre line before rounding."]
    for run in runs:
        if not run.pieces:
            continue
        lines += ["[[run]]", f"name = {value(run.name)}", f"od = {value(run.od)}",
                  "vertices = [" + ", ".join(value(list(v)) for v in run.vertices) + "]",
                  "pieces = ["]
        lines += [f"  {value({k.replace('_', '-'): v for k, v in p.items()})}," for p in run.pieces]
        lines += ["]", ""]
    path.write_text("\n".join(lines), encoding="utf-8")
