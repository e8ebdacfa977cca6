"""The installed man page and completion against the program's own --help.

    manual_test.py BUILD
"""

import re
import subprocess
import sys

from installed import bare, folder, installed, ran


def helps(program):
    """Each command's options as its --help lists them, read here by a rule of its own: what a line begins with."""
    text = ran(program, "--help", env=bare())
    commands = re.findall(r"^  ([a-z]+) ", text.split("Subcommands:")[1].split("\n\n")[0], re.MULTILINE)
    assert {"lay", "check", "picture", "study", "open"} <= set(commands), commands
    found = {}
    inner = re.findall(r"^  ([a-z]+) ", ran(program, "record", "--help", env=bare()).split("Subcommands:")[1].split("\n\n")[0],
                       re.MULTILINE)
    assert {"add", "amend", "list", "show", "fit", "trends", "export", "import"} == set(inner), inner
    for command in [*commands, *(f"record {each}" for each in inner)]:
        lines = ran(program, *command.split(), "--help", env=bare()).splitlines()
        listed = [line.split()[0].split(",") for line in lines if re.match(r"  -{1,2}[a-z]", line)]
        found[command] = sorted(name for names in listed for name in names)
    return found


def man_page(page, options):
    warned = subprocess.run(["groff", "-man", "-ww", "-Tutf8", "-z", page], capture_output=True, text=True, check=True)
    assert not warned.stderr, warned.stderr
    text = ran("groff", "-man", "-Tascii", "-P-cbou", page)
    parts = dict(re.findall(r"^   ([a-z]+(?: [a-z]+)?)\n(.*?)(?=^   [a-z]|^[A-Z])", text, re.MULTILINE | re.DOTALL))
    for command, names in options.items():
        for name in set(names) - {"-h", "--help"}:
            assert re.search(rf"^ {{7}}.*{re.escape(name)}\b", parts[command], re.MULTILINE), f"{command} {name}"
    for heading in ("NAME", "SYNOPSIS", "COMMANDS", "EXIT STATUS", "FILES", "ENVIRONMENT", "CAUTIONS", "EXAMPLES"):
        assert f"\n{heading}\n" in text, heading
    codes = re.findall(r"^ {7}(\d+) ", text.split("EXIT STATUS")[1].split("FILES")[0], re.MULTILINE)
    assert codes == ["0", "1", "2", "3", "130"], codes


def completed(script, where, *words):
    """What bash offers for the last word of a line."""
    program = ('source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _laywright; '
               'printf "%s\\n" "${COMPREPLY[@]}"')
    lines = ran("bash", "--norc", "-c", program, "bash", script, *words, cwd=where, env=bare())
    return sorted(line for line in lines.splitlines() if line)


def completion(script, options):
    with folder() as where:
        for name in ("a plan.lay.toml", "a.lesson.toml", "an.order.toml", "a.csv", "a.png", "a.pdf", "notes.txt"):
            (where / name).write_text("", encoding="utf-8")
        (where / "album").mkdir()

        def offers(*words):
            return completed(script, where, "laywright", *words)

        assert offers("") == sorted([*(name for name in options if " " not in name), "-h", "--help", "--version", "--catalogue"])
        assert offers("ch") == ["check"]
        for command, names in options.items():
            assert offers(*command.split(), "-") == names, command
            assert offers(*command.split(), "--he") == ["--help"]
        assert offers("record", "a") == ["add", "amend"]
        assert offers("record", "add", "a") == ["a plan.lay.toml", "album"]
        assert offers("record", "add", "--picture", "a") == ["a.png", "album"]
        assert offers("lay", "a") == ["a plan.lay.toml", "album"]
        assert offers("open", "") == ["a plan.lay.toml", "a.lesson.toml", "album"]
        assert offers("fit", "a plan.lay.toml", "a") == ["a plan.lay.toml", "a.csv", "album"]
        assert offers("follow", "a plan.lay.toml", "a") == ["a plan.lay.toml", "a.csv", "album"]
        assert offers("profile", "a plan.lay.toml", "a") == ["a plan.lay.toml", "a.png", "album"]
        assert offers("order", "a") == ["album", "an.order.toml"]
        assert offers("picture", "-o", "") == ["a.png", "album"]
        assert offers("sheet", "-o", "a.p") == ["a.pdf", "a.png"]
        assert offers("lay", "--out", "a") == offers("lay", "--out", "=", "a") == ["album"]
        assert offers("lay", "--out", "=") == ["album"]
        assert offers("lay", "--seed", "a") == []


def main():
    with installed(sys.argv[1]) as prefix:
        options = helps(prefix / "bin/laywright")
        man_page(prefix / "share/man/man1/laywright.1", options)
        completion(prefix / "share/bash-completion/completions/laywright", options)


main()
