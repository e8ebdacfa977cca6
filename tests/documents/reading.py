"""What stands in a document: its command lines, the output that it shows, its links and pictures."""

import dataclasses
import re

LANGUAGES = {"sh", "text", "toml", "json", "cpp"}
PROGRAMS = ("laywright", "sh", "cmake", "TIDY=1")


@dataclasses.dataclass
class Block:
    language: str
    text: str
    before: str  # the line of text before it
    line: int


def blocks_of(document):
    lines, found, before, i = document.splitlines(), [], "", 0
    while i < len(lines):
        if lines[i].startswith("```"):
            end = next(j for j in range(i + 1, len(lines)) if lines[j].startswith("```"))
            found.append(Block(lines[i][3:].strip(), "\n".join(lines[i + 1:end]) + "\n", before, i + 1))
            i = end
        elif lines[i].strip():
            before = lines[i]
        i += 1
    return found


def without_blocks(document):
    return re.sub(r"^```.*?^```$", lambda block: "\n" * block[0].count("\n"), document, flags=re.MULTILINE | re.DOTALL)


def spans_of(document):
    """Code within the text that begins as a command line does."""
    text = without_blocks(document)
    return [" ".join(span.split()) for span in re.findall(r"`([^`]+)`", text)
            if span.split(" ")[0] in PROGRAMS and " " in span]


def commands_of(block):
    """Its command lines; a block that begins with #! is one script."""
    if block.text.startswith("#!"):
        return [block.text]
    return [line for line in block.text.replace("\\\n", " ").splitlines() if line.split("#")[0].strip()]


def shown_output(block):
    """The command of which a block of text is the output: the text before it ends in `COMMAND` prints:."""
    said = re.search(r"`([^`]+)` prints:$", block.before)
    return said[1] if said and block.language == "text" else None


def links_of(document):
    text = without_blocks(document)
    return re.findall(r"\]\(([^)\s]+)\)", text) + re.findall(r'<img src="([^"]+)"', text)


def anchors_of(document):
    heads = re.findall(r"^#+ (.*)$", without_blocks(document), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", head.lower()).replace(" ", "-") for head in heads}
