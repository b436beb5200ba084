"""Outside judges: the same question put to the program and to a library that shares nothing with it.

Usage: run.py PROGRAM [WORD...]; with words, only the peers whose file name holds one of them.
Each peer is a file `*_peer.py` with `main(program)`, which raises AssertionError when the judges
differ and returns one line that says what was compared.
"""

import importlib
import sys
import time
import traceback
from pathlib import Path

HERE = Path(__file__).resolve().parent


def main():
    program = Path(sys.argv[1]).resolve()
    words = sys.argv[2:]
    sys.path.insert(0, str(HERE))
    failed = 0
    peers = sorted(HERE.glob("*_peer.py"))
    assert peers, "there must be peers"
    for path in peers:
        if words and not any(word in path.stem for word in words):
            continue
        begun = time.monotonic()
        try:
            said = importlib.import_module(path.stem).main(program)
            print(f"{path.stem}: {said} ({time.monotonic() - begun:.1f} s)", flush=True)
        except Exception:  # every other peer still has its say
            failed += 1
            print(f"{path.stem}: DIFFERS", flush=True)
            traceback.print_exc()
    sys.exit(failed > 0)


main()
