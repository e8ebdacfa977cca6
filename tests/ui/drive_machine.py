"""The machine's side in the window: figures where the scrubber is, curves that move it, warnings, the set-up sheet.

    drive_machine.py LAYWRIGHT SAMPLES [SHOTS]
"""

import bisect
import json
import re
import subprocess
import sys
import time

from window_driver import desk, run

FOOT, INCH, LBF = 0.3048, 25.4, 4.4482216152605


def number(text):
    return float(text.split()[0].replace(",", ""))


def shown_step(text):
    """What the last digit stands for."""
    digits = text.split()[0].replace(",", "")
    return 10.0 ** -len(digits.partition(".")[2])


def value_at(curves, name, scrub):
    """Between the samples around the place; where these lie in two layers, that of its own."""
    lengths, values = curves["length_m"], curves[name]
    at = scrub["length_mm"] / 1e3
    after = min(max(bisect.bisect_left(lengths, at), 1), len(lengths) - 1)
    before = after - 1
    for i in (before, after):
        if curves["layer"][before] != curves["layer"][after] and curves["layer"][i] == scrub["layer"]:
            return values[i]
    share = (at - lengths[before]) / (lengths[after] - lengths[before])
    return values[before] + share * (values[after] - values[before])


class Checks:
    def __init__(self, curves, folder):
        self.curves, self.folder = curves, folder

    def same(self, state, row, name, factor):
        text = state["machine"]["shown"][row]
        expected = factor * value_at(self.curves, name, state["stage"]["scrub"])
        off = abs(number(text) - expected)
        assert off <= 0.5001 * shown_step(text), f"{row} is shown as {text}, not {expected}"

    def readout(self, w):
        w.settled()
        w.key("ctrl+m")
        w.until("the machine's figures are there", lambda s: s["machine"] and "machine tension" in s["places"])
        for share in (0.05, 0.33, 0.61, 0.9):
            w.click("scrub bar", share)
            state = w.until("it is scrubbed", lambda s, share=share: abs(
                s["stage"]["scrub"]["length_mm"] / s["build"]["length_mm"] - share) < 0.02)
            for row, name, factor in (("diameter", "radius", 2.0), ("tension", "tension_N", 1.0),
                                      ("spool_speed", "spool_speed_rpm", 1.0), ("slip", "slip_rpm", 1.0),
                                      ("traverse_speed", "traverse_speed_mm_per_s", 1.0),
                                      ("reversals", "reversals_per_min", 1.0), ("current", "current_A", 1.0),
                                      ("heat", "clutch_heat_W", 1.0)):
                self.same(state, row, name, factor)
            assert abs(number(state["machine"]["shown"]["counter"]) - state["stage"]["scrub"]["length_mm"] / 1e3) < 0.051
        w.shoot("machine")
        w.key("ctrl+0")
        w.key("u")
        state = w.until("inches", lambda s: s["stage"]["inch"] and s["machine"]["shown"]["diameter"].endswith(" in"))
        self.same(state, "diameter", "radius", 2.0 / INCH)
        self.same(state, "tension", "tension_N", 1.0 / LBF)
        assert abs(number(state["machine"]["shown"]["counter"])
                   - state["stage"]["scrub"]["length_mm"] / 1e3 / FOOT) < 0.051
        w.shoot("machine-inch")
        w.key("u")
        w.until("millimetres again", lambda s: not s["stage"]["inch"])

    def playing(self, w):
        w.key("Home")
        before = w.until("at the start", lambda s: s["stage"]["scrub"]["length_mm"] == 0.0)
        w.key("space")
        w.until("the figures run while it plays", lambda s: number(s["machine"]["shown"]["counter"]) > 20.0
                and s["machine"]["shown"]["since_start"] != before["machine"]["shown"]["since_start"])
        w.key("space")
        w.until("it pauses", lambda s: not s["stage"]["scrub"]["playing"])

    def curves_move_the_scrubber(self, w):
        w.key("F4")  # as high as it gets
        w.click("tab Curves")
        w.until("the curves are there", lambda s: "curve tension" in s["places"])
        w.shoot("curves", after=0.4)
        length = w.state()["build"]["length_mm"]
        w.click("curve tension", 0.4, 0.5)
        first = w.until("a click moves the scrubber", lambda s: 0.2 < s["stage"]["scrub"]["length_mm"] / length < 0.5)
        w.drag("curve spool_speed", (0.4, 0.5), (0.8, 0.5))
        second = w.until("so does dragging", lambda s: s["stage"]["scrub"]["length_mm"] / length > 0.7)
        assert second["stage"]["scrub"]["length_mm"] > first["stage"]["scrub"]["length_mm"]
        self.same(w.state(), "tension", "tension_N", 1.0)
        w.shoot("curves-scrubbed")
        w.key("F4", "F4")

    def sheet(self, w):
        w.key("ctrl+p")
        w.until("the sheet is drawn", lambda s: s["sheet"]["drawn"] and "sheet page 1" in s["places"])
        w.shoot("sheet", after=0.5)
        width = w.state()["sheet"]["page_px"][0]
        w.click("sheet To read")
        w.until("it is drawn larger", lambda s: s["sheet"]["page_px"][0] > 1.2 * width)
        w.shoot("sheet-to-read", after=0.3)
        w.click("sheet Letter")
        w.until("on Letter paper", lambda s: s["sheet"]["letter"])
        w.click("sheet A4")
        w.until("on A4 again", lambda s: not s["sheet"]["letter"])
        for name, begins in (("sheet.pdf", b"%PDF"), ("sheet.svg", b"<?xml"), ("sheet.png", b"\x89PNG")):
            path = self.folder / name
            w.click("sheet save")
            w.name_file(path)
            w.shoot(f"save-{name[-3:]}")
            w.key("Return")
            w.until("it is saved", lambda s, path=path: s["sheet"]["saving"] and s["sheet"]["saving"]["done"]
                    and s["sheet"]["saving"]["path"] == str(path))
            assert path.read_bytes().startswith(begins), f"{name} is no such file"
        w.shoot("sheet-saved")
        text = subprocess.run(["pdftotext", "-layout", str(self.folder / "sheet.pdf"), "-"], check=True,
                              capture_output=True, text=True).stdout
        first = self.curves["tension_N"][0]
        assert "SET-UP SHEET FOR THE WINDER" in text and f"{first:.3f} N" in text, "the sheet does not tell the tension"
        size = subprocess.run(["pdfinfo", str(self.folder / "sheet.pdf")], check=True, capture_output=True,
                              text=True).stdout
        assert re.search(r"Pages:\s+2\b", size) and "A4" in size, size
        w.key("Escape")
        w.until("the sheet is closed", lambda s: s["question"] is None)

    def failed_saving(self, w):
        w.key("ctrl+p")
        w.until("the sheet is there", lambda s: "sheet page 1" in s["places"])
        w.click("sheet save")
        w.name_file(self.folder / "sheet.txt")
        w.key("Return")
        time.sleep(0.5)
        assert "file name" in w.state()["places"], "a sheet was saved under a name that does not say what it is"
        # The name is to be mended, and the keyboard is still on it.
        w.key("ctrl+a")
        w.type(str(self.folder / "nowhere" / "sheet.pdf"))
        w.key("Return")
        w.until("it is told that it failed", lambda s: s["sheet"]["saving"] and s["sheet"]["saving"]["failed"])
        w.shoot("sheet-failed")
        w.key("Escape")
        w.until("the sheet is closed", lambda s: s["question"] is None)


def warnings_and_keys(w):
    """A take-up that is too slow for the empty barrel; then a plan that does not say how fast the line runs."""
    w.settled()
    w.key("ctrl+m")
    state = w.until("a warning stands in the tab", lambda s: "machine warning 0" in s["places"])
    assert state["machine"]["warnings"][0]["kind"] == "speed_ceiling" and not state["machine"]["warnings"][0]["note"]
    assert len(state["machine"]["warnings"]) > 1, "the warnings are listed with the notes"
    w.shoot("warning")
    w.key("ctrl+0")
    speed = "wind.line_speed"
    w.scroll_to(f"field {speed}")
    w.click(f"field {speed}", 0.3)
    w.until("it is typed into", lambda s: s["typing"] == speed)
    w.key("ctrl+a", "BackSpace", "Return")
    state = w.until("the key to fill in is named", lambda s: s["machine"]
                    and s["machine"]["missing"].get("spool_speed") == "wind.line_speed")
    assert "tension" in state["machine"]["shown"] and "spool_speed" not in state["machine"]["shown"]
    assert all(m["kind"] != "speed_ceiling" for m in state["machine"]["warnings"]), "warned of a speed that nobody knows"
    w.settled()
    w.click("tab Curves")
    w.until("its curve is gone", lambda s: "curve tension" in s["places"] and "curve spool_speed" not in s["places"])
    w.shoot("missing", after=0.3)


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        laid = subprocess.run([sys.argv[1], "lay", str(plan), "--json"], check=True, capture_output=True, text=True)
        checks = Checks(json.loads(laid.stdout)["takeup"]["curves"], plan.parent)
        w = window(plan)
        w.settled()
        run((checks.readout, checks.playing, checks.curves_move_the_scrubber, checks.sheet, checks.failed_saving), w)
        w.leave()
        # At line speed, the empty barrel needs 127 rpm.
        slow = window(copy("even.lay.toml", "slow.lay.toml", (("speed_ceiling", "90 rpm"),)))
        run((warnings_and_keys,), slow)
        slow.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main())
