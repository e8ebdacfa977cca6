"""On which machine figures were measured."""

import os
import pathlib
import re


def machine():
    """The processor as the system names it, and how many cores of it there are."""
    info = pathlib.Path("/proc/cpuinfo").read_text(encoding="utf-8")
    named = {key: value for key, value in re.findall(r"^(model name|cpu family|model)\s*: (.*)$", info, re.MULTILINE)}
    name = named.get("model name", "a processor without a name")
    if "cpu family" in named and "model" in named:  # of several, one name can be all that a virtual machine tells
        name += f" (family {named['cpu family']}, model {named['model']})"
    return f"{name}, {os.cpu_count()} cores"
