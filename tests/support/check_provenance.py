#!/usr/bin/env python3
"""Where the reference values come from: every entry says so, and the README tells the shares truly.

usage: check_provenance.py PROJECT        checks tests/reference/**/*.yaml and the sentence of README.md
       check_provenance.py PROJECT --counts   prints the sentence that would be true
       check_provenance.py --self-test
"""
import pathlib
import re
import sys

import yaml

SEEN, WORKED, MEMORY, COMPUTED = "seen", "worked", "memory", "computed"
# Two families of files, two words for one thing.
KINDS = {"published": SEEN, "found": SEEN, "worked": WORKED, "memory": MEMORY, "computed": COMPUTED}
UNTRACEABLE = ("web page", "public data sheet", "not recorded which", "as collected", "design handbook")


def entries(document):
    """(name, entry) of a file, whichever way it lists them."""
    listed = document["entries"]
    return [(e["id"], e) for e in listed] if isinstance(listed, list) else list(listed.items())


def faults(name, entry):
    """What is wrong with the provenance of one entry."""
    kind = KINDS.get(entry.get("basis", entry.get("checked")))
    source = entry.get("source", "")
    found = []
    if kind is None:
        found.append(f"{name}: says neither seen, worked, memory nor computed")
    if not source:
        found.append(f"{name}: has no source")
    if kind == MEMORY and "memory" not in source:
        found.append(f"{name}: is from memory, and its source does not say so")
    if kind == SEEN and "not recorded" in f"{source} {entry.get('edition', '')}":
        found.append(f"{name}: cannot be found again, which counts as from memory")
    if kind == COMPUTED and not all(w in source for w in ("computed, not measured", "one mesh each", "indicative")):
        found.append(f"{name}: is a flow solution, and its source does not say what that is worth")
    found += [f"{name}: '{words}' cannot be found again" for words in UNTRACEABLE if words in source.lower()]
    return found


def sentence(counts):
    total = sum(counts.values())
    share = round(100 * counts[MEMORY] / total)
    return (f"Of the {total} entries of reference values, {counts[SEEN]} were seen in the named source, "
            f"{counts[WORKED]} are worked from the named law, and {counts[MEMORY]} ({share} %) come from memory"
            + (f"; {counts[COMPUTED]} are flow solutions, computed, not measured" if counts[COMPUTED] else ""))


def survey(project):
    counts, wrong = {SEEN: 0, WORKED: 0, MEMORY: 0, COMPUTED: 0}, []
    for path in sorted((project / "tests/reference").rglob("*.yaml")):
        for name, entry in entries(yaml.safe_load(path.read_text(encoding="utf-8"))):
            wrong += [f"{path.relative_to(project)}: {fault}" for fault in faults(name, entry)]
            kind = KINDS.get(entry.get("basis", entry.get("checked")))
            if kind:
                counts[kind] += 1
    return counts, wrong


def self_test():
    good = {"basis": "published", "source": "CRC Handbook, section 6", "edition": "97th"}
    assert not faults("a", good)
    assert faults("a", {**good, "basis": "guess"})
    assert faults("a", {**good, "source": ""})
    assert faults("a", {**good, "basis": "memory"})
    assert faults("a", {**good, "edition": "not recorded"})
    assert faults("a", {**good, "source": "web pages"})
    assert faults("a", {"basis": "computed", "source": "a flow solver"})
    assert not faults("a", {"basis": "computed", "source": "computed, not measured; one mesh each, indicative"})
    three = {SEEN: 1, WORKED: 1, MEMORY: 1, COMPUTED: 0}
    assert "3 entries" in sentence(three) and "33 %" in sentence(three) and "flow" not in sentence(three)
    assert "4 entries" in sentence({**three, COMPUTED: 1}) and "1 are flow" in sentence({**three, COMPUTED: 1})


def main():
    if sys.argv[1:] == ["--self-test"]:
        return self_test()
    project = pathlib.Path(sys.argv[1])
    counts, wrong = survey(project)
    said = sentence(counts)
    if sys.argv[2:] == ["--counts"]:
        print(said)
        return None
    readme = re.sub(r"\s+", " ", (project / "README.md").read_text(encoding="utf-8"))
    if said not in readme:
        wrong.append(f"README.md does not say: {said}")
    return "\n".join(wrong) or None


if __name__ == "__main__":
    sys.exit(main())
