"""Writes laywright(1): what the program says of its commands, and man_tail.roff after it.

    man_page.py PROGRAM MAN_TAIL OUTPUT
"""

import pathlib
import re
import sys

from command_help import all_help, ask

VALUES = ("A value follows its option after a space or an equals sign. What stands behind an equals sign below is taken "
          "where the option is not given.")


def arguments(name, help_):
    return help_.usage.split(f"laywright {name}", 1)[1].strip()


def roff(text):
    """Plain text as roff takes it: no character means a request."""
    text = text.replace("\\", "\\e").replace("-", "\\-").replace("'", "\\(aq").replace("`", "\\(ga")
    text = text.replace("~", "\\(ti").replace("^", "\\(ha").replace('"', "\\(dq")
    return "\n".join("\\&" + line if line.startswith(".") else line for line in text.split("\n"))


def entry_lines(entry):
    """An option, with its names in bold and the value in italics."""
    names, _, rest = entry.shown.partition(" ")
    notes = re.findall(r"(Needs|Excludes): (\S+)", rest)
    value = re.sub(r"(Needs|Excludes): \S+", "", rest).replace("REQUIRED", "")
    value = " ".join(value.split())
    says = entry.says
    if "REQUIRED" in rest and entry.shown.startswith("-"):
        says += " (required)"
    for kind, other in notes:
        says += f" (needs {other})" if kind == "Needs" else f" (not with {other})"
    shown = ", ".join(f"\\fB{roff(name)}\\fR" for name in names.split(","))
    if not entry.shown.startswith("-"):
        shown = f"\\fI{roff(names)}\\fR"
    return [".TP", shown + (f" \\fI{roff(value)}\\fR" if value else ""), roff(says)]


def footer_lines(footer):
    """Paragraphs are filled; what is indented stays as it stands."""
    lines = []
    for paragraph in re.split(r"\n\n+", footer):
        inside = False
        lines.append(".PP")
        for line in paragraph.split("\n"):
            if line.startswith("  ") != inside:
                inside = not inside
                lines += [".RS 4", ".nf"] if inside else [".fi", ".RE"]
            lines.append(roff(line[2:] if inside else line))
        if inside:
            lines += [".fi", ".RE"]
    return lines


def sections_lines(help_):
    lines = []
    for title, entries in help_.sections.items():
        entries = [entry for entry in entries if entry.names != ["-h", "--help"]]
        if title == "Subcommands" or not entries:
            continue
        if title not in ("Positionals", "Options"):
            lines += [".PP", roff(title) + ":"]
        for entry in entries:
            lines += entry_lines(entry)
    return lines


def main():
    program, tail, output = sys.argv[1:]
    version = ask(program, "--version").split()[1]
    whole, commands = all_help(program)
    about, examples = whole.about, whole.footer.partition("Start with:\n")[2].partition("\n\n")[0]
    lines = [f'.TH LAYWRIGHT 1 "" "laywright {version}" "User commands"', ".nh", ".SH NAME",
             "laywright \\- " + roff(about[0].lower() + about[1:].rstrip(".")), ".SH SYNOPSIS"]
    for name, help_ in commands.items():
        if "Subcommands" not in help_.sections:
            lines += [f".B laywright {name}", f".I {roff(arguments(name, help_))}", ".br"]
    lines += [".B laywright \\-\\-help", "|", ".B \\-\\-version", ".SH DESCRIPTION", roff(about),
              "From a lay plan (spool, fiber, pitch, stops, reversal, length) it computes every turn, and says where "
              "gaps, piled edges and dropped turns come, how thick the spool gets and whether the length fits.",
              ".PP", "Without a command the window opens.", ".PP", roff(VALUES), ".SH COMMANDS"]
    for name, help_ in commands.items():
        lines += [f".SS {name}", roff(help_.about) + "."]
        if "Subcommands" not in help_.sections:
            lines += [".PP", f".B laywright {name}", f".I {roff(arguments(name, help_))}"]
        lines += sections_lines(help_) + footer_lines(help_.footer)
    lines += [".SH OPTIONS"]
    for entry in whole.options:
        lines += entry_lines(entry)
    lines += [pathlib.Path(tail).read_text(encoding="utf-8").rstrip(), ".SH EXAMPLES", ".nf",
              *[roff(line.strip()) for line in examples.split("\n")], ".fi"]
    text = "\n".join(line for line in lines if line) + "\n"
    pathlib.Path(output).write_text(text, encoding="utf-8")


main()
