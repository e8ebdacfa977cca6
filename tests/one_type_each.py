"""No two types of one name in one namespace: a program that holds both takes one's functions for the other's, and crashes.

    one_type_each.py SRC

Looks at all headers, and at source files outside unnamed namespaces.
"""

import collections
import pathlib
import re
import sys

BEGIN = re.compile(r"^namespace(?: ([\w:]+))? \{$")
END = re.compile(r"^\}  // namespace")
TYPE = re.compile(r"^(?:template <.*>\s*)?(?:struct|class|enum class) (\w+)(?: final)?(?: : [^;{]*)?(?: \{|$)")


def types_of(text):
    """The types that a file defines in named namespaces: "laywright::cmd::Question"."""
    scopes = []
    for line in text.splitlines():
        if begin := BEGIN.match(line):
            scopes.append(begin.group(1))
        elif END.match(line) and scopes:
            scopes.pop()
        elif (found := TYPE.match(line)) and scopes and None not in scopes:
            yield "::".join([*scopes, found.group(1)])


def main():
    places = collections.defaultdict(set)
    src = pathlib.Path(sys.argv[1])
    for file in sorted(path for path in src.rglob("*") if path.suffix in (".h", ".cpp")):
        for name in types_of(file.read_text(encoding="utf-8")):
            places[name].add(str(file.relative_to(src)))
    if len(places) < 300:
        sys.exit(f"only {len(places)} types found: this test no longer sees what it looks for")
    twice = {name: sorted(files) for name, files in places.items() if len(files) > 1}
    for name, files in sorted(twice.items()):
        print(f"{name} is defined in {' and '.join(files)}: give one another name", file=sys.stderr)
    sys.exit(1 if twice else 0)


main()
