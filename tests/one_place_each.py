"""What the program does in one place only is done nowhere else: starting threads, catching whatever is thrown, compiling the
parser of command lines, and giving a number that a person reads its decimals. The share page's script makes no number into
text.

    one_place_each.py SRC          reads every .h, .cpp and .js under SRC
    one_place_each.py --self-test  proves that each is found elsewhere
"""

import pathlib
import re
import sys
import tempfile

# What, the place that may do it, and how many times it does: another number means that this test no longer sees it.
PLACES = [
    ("a thread is started", re.compile(r"\bstd::(?:thread(?:\s+\w+)?\s*[({]|jthread|async)|\bpthread_create\b"), "jobs/thread.cpp", 1),
    ("whatever is thrown is caught", re.compile(r"\bcatch\s*\(\s*\.\.\.\s*\)"), "jobs/trouble.cpp", 1),
]


# What, and the files that may do it. Decimals are also given to what a program reads: a table of many rows, a field that is
# parsed again, settings.
FEW = [
    ("a number gets its decimals, which base/quantity_text.h gives it",
     re.compile(r"\{\w*:[^{}\"]*\.(?:\d+|\{\w*\})f\}|\bstd::(?:fixed|setprecision)\b|\bsnprintf\b"),
     {"base/quantity_text.cpp", "figures/table_rows.cpp", "desk/field_steps.cpp", "ui/layout.cpp"}),
    ("the parser of command lines is compiled once more; app/command_line.h stands for it", re.compile(r"#include\s*<CLI/"),
     {"app/command_line.cpp", "app/main.cpp"}),
]

IN_SCRIPTS = re.compile(r"\.to(?:Fixed|Precision|Exponential|LocaleString)\b|\bNumberFormat\b")


def wrong_in_scripts(src):
    for path in sorted(src.rglob("*.js")):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if IN_SCRIPTS.search(line):
                yield f"{path}:{number}: a number becomes text, which only base/quantity_text.cpp makes it"


def not_of_the_few(src):
    for what, sought, files in FEW:
        for path in sorted(src.rglob("*")):
            if path.suffix not in (".h", ".cpp") or path.relative_to(src).as_posix() in files:
                continue
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
                if sought.search(line):
                    yield f"{path}:{number}: {what}"


def wrong_places(src):
    wrong = [*wrong_in_scripts(src), *not_of_the_few(src)]
    for what, sought, place, times in PLACES:
        found = 0
        for path in sorted(src.rglob("*")):
            if path.suffix not in (".h", ".cpp"):
                continue
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
                if not sought.search(line.split("//")[0]):
                    continue
                if path.relative_to(src).as_posix() == place:
                    found += 1
                else:
                    wrong.append(f"{path}:{number}: {what}, which only {place} does")
        if found != times:
            wrong.append(f"{place}: {what} {found} times there, not {times}")
    return wrong


def self_test():
    with tempfile.TemporaryDirectory() as name:
        src = pathlib.Path(name)
        own = {"jobs/thread.cpp": "begun = std::thread([task] {});\n", "jobs/trouble.cpp": "} catch (...) {\n"}
        for file, text in own.items():
            (src / file).parent.mkdir(exist_ok=True)
            (src / file).write_text(text, encoding="utf-8")
        (src / "lay").mkdir()
        (src / "lay/calls.cpp").write_text("std::thread::id by;  // no catch (...) here\n", encoding="utf-8")
        assert wrong_places(src) == [], wrong_places(src)
        for line in ("std::thread t(run);", "std::thread{run}.join();", "std::jthread t(run);", "std::async(run);",
                     "pthread_create(&t, nullptr, run, nullptr);", "} catch (...) {", "catch(...)"):
            (src / "lay/other.cpp").write_text(line + "\n", encoding="utf-8")
            wrong = wrong_places(src)
            assert len(wrong) == 1 and "lay/other.cpp:1" in wrong[0], f"{line} was not found: {wrong}"
        (src / "lay/other.cpp").unlink()
        (src / "page.js").write_text("Math.round(width);\n", encoding="utf-8")
        assert wrong_places(src) == [], wrong_places(src)
        for line in ("value.toFixed(2)", "value.toLocaleString('en')", "new Intl.NumberFormat('en')", "x.toPrecision(2)"):
            (src / "page.js").write_text(line + "\n", encoding="utf-8")
            assert len(wrong_places(src)) == 1, f"{line} was not found"
        (src / "page.js").unlink()
        for line in ('fmt::format("{:.2f}", x);', 'fmt::format("{:>+12.2f} mm", x);', 'fmt::format("{:.{}f}", x, n);',
                     'fmt::format("{0:.1f}", x);', 'out << std::fixed << x;', "#include <CLI/CLI.hpp>"):
            (src / "lay/other.cpp").write_text(line + "\n", encoding="utf-8")
            assert len(wrong_places(src)) == 1, f"{line} was not found"
        (src / "lay/other.cpp").unlink()
        (src / "jobs/thread.cpp").write_text("", encoding="utf-8")
        assert len(wrong_places(src)) == 1, "a place that does it no longer was not found"


def main():
    if sys.argv[1:] == ["--self-test"]:
        return self_test()
    src = pathlib.Path(sys.argv[1])
    if not (src / "base").is_dir():
        sys.exit(f"{src} is not the source folder")
    if wrong := wrong_places(src):
        sys.exit("\n".join(wrong))


main()
