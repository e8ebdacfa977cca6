"""Writes the completion of laywright for bash: its commands, their options, and files of the right kind.

    bash_completion.py PROGRAM OUTPUT
"""

import pathlib
import sys

from command_help import all_help

HEAD = r"""# Completion of laywright for bash, made from what `laywright COMMAND --help` says.

_laywright_words() {
  mapfile -t COMPREPLY < <(compgen -W "$2" -- "$1")
}

# Folders, and files whose names match one of the patterns.
_laywright_files() {
  local word=$1 pattern
  compopt -o filenames 2>/dev/null
  mapfile -t COMPREPLY < <(compgen -d -- "$word"; for pattern in "${@:2}"; do
    compgen -f -X "!$pattern" -- "$word"
  done | sort -u)
}

_laywright() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}
  # bash takes --out=DIR for three words.
  if [[ $word == = ]]; then word=
  elif [[ $before == = ]]; then before=${COMP_WORDS[COMP_CWORD-2]}; fi
  COMPREPLY=()
"""

TAIL = """  esac
}
complete -F _laywright laywright
"""


def patterns(name, says):
    """The files that an argument of this name stands for: ['*.svg', '*.png'], or none where it is no file."""
    name, _, endings = name.rstrip(".").partition(".")
    if name == "PLAN":
        return ["*.lay.toml"] + (["*.lesson.toml"] if "last that was open" in says else [])
    if name == "ORDER":
        return ["*.order.toml"]
    if name in ("MEASURED", "READINGS"):
        return ["*.csv"]
    if name == "PHOTO":
        return ["*.jpg", "*.jpeg", "*.png"]
    if name in ("FILE", "FILES"):
        return ["*." + ending for ending in endings.split("|")] if endings else ["*"]
    return []


def files(found):
    return " ".join(["_laywright_files", '"$word"', *(f"'{pattern}'" for pattern in found)])


def case_of(name, help_):
    if inner := [entry.shown for entry in help_.entries("Subcommands")]:
        offered = " ".join([*inner, *(option for entry in help_.options for option in entry.names)])
        return [f"    {name})", f"      _laywright_words \"$word\" '{offered}'", "      ;;"]
    lines = [f"    {name.replace(' ', '_')})", "      case $before in"]
    for entry in help_.options:
        if entry.value:
            found = patterns(entry.value, entry.says)
            does = files(found) + "; " if found or entry.value == "DIR" else ""
            lines.append(f"        {'|'.join(entry.names)}) {does}return ;;")
    options = " ".join(option for entry in help_.options for option in entry.names)
    positionals = [found for entry in help_.entries("Positionals")
                   for found in patterns(entry.shown.split()[0], entry.says)]
    return lines + ["      esac", f"      if [[ $word == -* ]]; then _laywright_words \"$word\" '{options}'",
                    f"      else {files(positionals)}; fi", "      ;;"]


def main():
    program, output = sys.argv[1:]
    whole, commands = all_help(program)
    first = " ".join([*(name for name in commands if " " not in name), *(name for entry in whole.options for name in entry.names)])
    lines = [f"  if ((COMP_CWORD == 1)); then _laywright_words \"$word\" '{first}'; return; fi",
             "  local command=${COMP_WORDS[1]}",
             *(f"  if [[ $command == {name} && $COMP_CWORD -gt 2 ]]; then command={name}_${{COMP_WORDS[2]}}; fi"
               for name, help_ in commands.items() if "Subcommands" in help_.sections),
             "  case $command in"]
    for name, help_ in commands.items():
        lines += case_of(name, help_)
    pathlib.Path(output).write_text(HEAD + "\n".join(lines) + "\n" + TAIL, encoding="utf-8")


main()
