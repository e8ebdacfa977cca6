"""What a program says of its commands: `laywright --help` and `laywright COMMAND --help`, taken apart.

The man page and the shell's completion are made from this, so that neither can say anything else than the program.
"""

import dataclasses
import os
import re
import subprocess

COLUMN = 30  # in which the program begins to say what an option does


@dataclasses.dataclass
class Entry:
    """A line of a section: an option, a positional or a command, as the program shows it, and what it says of it."""
    shown: str
    says: str

    @property
    def names(self):
        """Of an option: ["-o", "--output"]."""
        return self.shown.split()[0].split(",")

    @property
    def value(self):
        """Name of an option's value, like DIR, without its default; empty where it takes none."""
        words = [word for word in self.shown.split()[1:] if word not in ("REQUIRED", "...")]
        return "" if not words or words[0].endswith(":") else words[0].split("=")[0]


@dataclasses.dataclass
class Help:
    about: str
    usage: str
    sections: dict  # title -> [Entry], in order
    footer: str     # as it stands

    def entries(self, *titles):
        return [entry for title in titles for entry in self.sections.get(title, [])]

    @property
    def options(self):
        return [entry for entries in self.sections.values() for entry in entries if entry.shown.startswith("-")]


def read_help(text):
    about, usage, rest = re.fullmatch(r"(.*?)\nUsage: (.*?)\n\n(.*)", text, re.DOTALL).groups()
    sections, entries, footer = {}, None, []
    lines = rest.splitlines()
    for line, after in zip(lines, lines[1:] + [""]):
        if footer:
            footer.append(line)
        elif title := re.fullmatch(r"(\S.*):", line):
            if title[1] in ("Example", "Examples", "Start with") or line.startswith("With "):
                footer.append(line)
            else:
                entries = sections.setdefault(title[1], [])
        elif not line.strip():
            entries = None
        elif entries is None:
            footer.append(line)
        elif line.startswith(" " * COLUMN):  # under a name that is too long for its column
            entries[-1].says = line.strip()
        elif after.startswith(" " * COLUMN):
            entries.append(Entry(line.strip(), ""))
        else:
            entries.append(Entry(line[:COLUMN].strip(), line[COLUMN:].strip()))
    return Help(about.strip(), usage, sections, "\n".join(footer).strip())


def ask(program, *words):
    # Leaks are no matter of a help text, where a sanitizer watches.
    environment = dict(os.environ, ASAN_OPTIONS="detect_leaks=0", LC_ALL="C")
    run = subprocess.run([program, *words], env=environment, capture_output=True, text=True, check=True)
    return run.stdout


def all_help(program):
    """The program's own help, and that of each command by its name, in the program's order; behind a command that has
    commands of its own these, by both names: "record add"."""
    whole = read_help(ask(program, "--help"))
    commands = {}
    for entry in whole.entries("Subcommands"):
        commands[entry.shown] = read_help(ask(program, entry.shown, "--help"))
        for inner in commands[entry.shown].entries("Subcommands"):
            name = f"{entry.shown} {inner.shown}"
            commands[name] = read_help(ask(program, *name.split(), "--help"))
    for help_ in (whole, *commands.values()):
        for entry in help_.options:
            # How many threads a machine has is not a matter of the page.
            entry.shown = re.sub(r"(--threads \w+)=\d+", r"\1", entry.shown)
    return whole, commands
