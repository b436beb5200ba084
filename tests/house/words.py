"""Words that do not belong in a project others build: places of one machine, hosts of package
registries, unfinished work, and words that no welder says on what the fabricator reads.

The patterns are written so that this file does not find itself.
"""

import re

import tree

# What is found anywhere is a slip.
ANYWHERE = {
    "a place on one machine": r"(?<![\w.])/(?:work|root|home|Users|farm)/(?![*.])",
    "a path out of the project": r"\.\./shared\b",
    "the host of a package registry": r"\b(?:static\.)?crates[.]io\b|\bpypi[.]org\b|\bnpm[j]s\b|files\.pythonhosted",
    "a stray conflict marker": r"^(?:<{7}|>{7}|\|{7}) ",
    "unfinished work": r"\b(?:TOD[O]|FIXM[E]|HAC[K])\b",
}
# Lock files record where packages come from; that is their purpose.
LOCKS = {"Cargo.lock", "package-lock.json"}

# What the fabricator reads: the words are ours to choose. The chapter that explains the statistics
# is the one place where these may stand.
READ_BY_WELDERS = {
    "a statistician's word (say 'plus or minus, 19 in 20')":
        r"\b(?:covariances?|chi-squared?|Jacobians?|residuals?|eigenvalues?|sigma)\b",
}
STATISTICS = {"handbook/src/statistics.md", "handbook/src/sources.md"}


def main():
    problems = []
    looked_at = 0
    for path in tree.files():
        if path.name in LOCKS:
            continue
        text = tree.text(path)
        if text is None:
            continue
        looked_at += 1
        rules = dict(ANYWHERE)
        if path.parts[0] == "handbook" and str(path) not in STATISTICS:
            rules |= READ_BY_WELDERS
        for number, line in enumerate(text.splitlines(), 1):
            for what, pattern in rules.items():
                if found := re.search(pattern, line):
                    problems.append(f"{path}:{number}: {what}: {found.group(0)!r}")
    tree.verdict(problems, f"{looked_at} files hold none")


main()
