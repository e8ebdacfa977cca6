"""Everything without the mouse: fields are typed into and stepped, panels reached, findings opened, the turn table
walked, section and map moved.

    drive_keyboard.py LAYWRIGHT SAMPLES [SHOTS]
"""

import sys
import time

from window_driver import desk, run

PITCH = "traverse.pitch"


def text_of(w, path):
    return w.field(path)["text"]


def half_a_unit_is_not_taken(w):
    width = "spool.inside_width"
    w.settled()
    before = text_of(w, width)
    w.scroll_to(f"field {width}")
    w.click(f"field {width}", 0.3)
    w.key("ctrl+a")
    w.type("96 m")  # on the way to "96 mm"
    time.sleep(1.2)  # longer than the pause that takes what stands for itself
    state = w.until("it is typed", lambda s: s["typing"] == width and s["typed"] == "96 m")
    assert state["fields"][width]["text"] == before, "half a unit was taken"
    assert state["sound"] and not state["dirty"], "half a unit has changed the plan"
    w.type("m")
    w.until("after a pause the whole one is taken", lambda s: s["fields"][width]["text"] == "96")
    w.key("Escape")
    w.until("Escape gives it back", lambda s: s["fields"][width]["text"] == before and not s["dirty"])


def steps(w):
    w.settled()
    w.scroll_to(f"field {PITCH}")
    w.click(f"field {PITCH}", 0.3)
    w.until("typing", lambda s: s["typing"] == PITCH)
    w.key("Up")
    w.until("a step more", lambda s: s["fields"][PITCH]["text"] == "0.265")
    w.key("Down", "Down")
    w.until("two steps less", lambda s: s["fields"][PITCH]["text"] == "0.255")
    w.key("shift+Up")
    w.until("ten steps more", lambda s: s["fields"][PITCH]["text"] == "0.305")
    w.key("Return")
    w.settled()
    w.scroll_to(f"less {PITCH}")
    w.click(f"less {PITCH}")
    w.until("the button is a step less", lambda s: s["fields"][PITCH]["text"] == "0.3")
    w.key("ctrl+z", "ctrl+z")
    w.until("two undos: the button's step, and all that the keys did", lambda s: not s["dirty"])


def untouched_fields_stay(w):
    before = w.settled()["fields"][PITCH]["text"]
    w.key("u")
    state = w.until("inches", lambda s: s["stage"]["inch"] and s["fields"][PITCH]["unit"] == "in")
    assert state["fields"][PITCH]["text"] == "0.01024", "0.26 mm over 25.4"  # 0.010236
    assert state["fields"]["spool.barrel_diameter"]["text"] == "5.906"  # 150 / 25.4
    w.scroll_to(f"field {PITCH}")
    w.click(f"field {PITCH}", 0.3)
    for path in ("traverse.left_stop", "traverse.right_stop"):
        w.key("Tab")
        w.until(f"Tab leads to {path}", lambda s, path=path: s["typing"] == path)
    w.key("Return")
    w.until("left", lambda s: not s["typing"])
    assert not w.state()["dirty"], "a field that was only visited has changed the plan"
    w.key("u")
    w.until("as it was", lambda s: s["fields"][PITCH]["text"] == before and not s["dirty"])


def panels_in_turn(w):
    for panel in ("Plan", "Section", "Findings", ""):
        before = w.state()["keys_in"]
        w.key("F6")
        after = w.until("F6 leads on", lambda s, before=before: s["keys_in"] != before)["keys_in"]
        assert after == panel, f"F6 leads from {before} to {after}, not to {panel}"
    w.key("shift+F6")
    w.until("back", lambda s: s["keys_in"] == "Findings")
    w.key("Escape")
    w.until("Escape leads to the picture", lambda s: s["keys_in"] == "")


def a_finding_by_keys(w):
    if "small findings" in w.settled()["places"]:
        w.click("small findings")  # a wind this even has only small ones
    w.key("ctrl+2")
    w.until("in the list", lambda s: s["keys_in"] == "Findings")
    w.calm()
    w.key("Down", "Return")
    first = w.until("a finding is opened", lambda s: s["stage"]["chosen_finding"] is not None)["stage"]
    w.shoot("keys-finding")
    w.key("Down", "Return")
    w.until("the next one", lambda s: s["stage"]["chosen_finding"] not in (None, first["chosen_finding"]))
    w.key("Escape", "shift+BackSpace")
    w.until("let go", lambda s: s["stage"]["chosen_finding"] is None)


def a_turn_by_keys(w):
    w.key("a", "1", "z")
    w.calm()
    w.key("Return")
    picked = w.until("the middle is picked", lambda s: s["stage"]["picked"])["stage"]["picked"]
    w.key("ctrl+4")
    w.until("in the turn's panel", lambda s: s["keys_in"] == "Turn")
    w.calm()
    w.key("space")  # the first button: one turn back
    w.until("one turn back", lambda s: abs(s["stage"]["picked"]["turn"] - picked["turn"] + 1.0) < 1e-6)
    w.shoot("keys-turn")
    w.key("Escape")


def a_layer_by_keys(w):
    w.key("ctrl+7")
    w.until("in the table", lambda s: s["keys_in"] == "Layers")
    w.calm()
    w.key("Down", "Return")
    w.until("the wind up to a layer", lambda s: s["stage"]["last_layer"] is not None)
    w.shoot("keys-layers")
    w.key("Escape", "a")
    w.until("all of it", lambda s: s["stage"]["last_layer"] is None)


def section_by_keys(w):
    w.key("ctrl+5")
    w.until("in the section", lambda s: s["keys_in"] == "Section")
    before = w.until("drawn", lambda s: s["section"]["drawn"])["section"]
    w.key("plus", "plus", "plus", "plus")
    near = w.until("nearer", lambda s: s["section"]["width_mm"] < 0.7 * before["width_mm"])["section"]
    w.key("Right", "Up")
    w.until("moved", lambda s: s["section"]["x_from_mm"] > near["x_from_mm"])
    w.key("Page_Up")
    w.until("turned", lambda s: s["section"]["angle_deg"] == 95.0)
    w.until("drawn anew", lambda s: s["section"]["drawn"])
    w.shoot("keys-section")
    scrub = w.state()["stage"]["scrub"]
    assert scrub["at_end"], "a key for the section has moved the scrubber"
    w.key("Home")
    w.until("all of it", lambda s: abs(s["section"]["width_mm"] - before["width_mm"]) < 1e-6)
    w.key("Escape")


def map_by_keys(w):
    w.key("ctrl+6")
    w.until("in the map", lambda s: s["keys_in"] == "Map")
    w.until("drawn", lambda s: s["map"]["drawn"])
    w.key("plus", "plus", "plus", "Right")
    w.until("nearer and moved", lambda s: s["map"]["x_from"] > 0.2 and s["map"]["x_to"] - s["map"]["x_from"] < 0.7)
    w.key("Return")
    w.until("the place at the cross is picked", lambda s: s["stage"]["picked"])
    w.shoot("keys-map")
    w.key("Home", "Escape")


def menus_by_keys(w):
    dark = w.state()["stage"]["dark"]
    w.key("alt+v")
    w.until("the menu is open", lambda s: "menu Light or dark" in s["places"])
    w.calm()
    w.key("Escape")
    w.until("the menu is closed", lambda s: "menu Light or dark" not in s["places"])
    w.key("F10")
    w.until("the first menu", lambda s: "menu Save" in s["places"])
    w.calm()
    w.key("Down", "Escape")
    w.until("closed", lambda s: "menu Save" not in s["places"])
    assert w.state()["stage"]["dark"] == dark


def typing_is_no_command(w):
    before = w.settled()
    w.key("ctrl+1")
    w.until("in the plan", lambda s: s["keys_in"] == "Plan")
    w.calm()
    w.key("Return")
    w.until("typing the title", lambda s: s["typing"] == "title")
    w.key("ctrl+a")
    w.type("lubwxk 5")
    state = w.until("the title is typed", lambda s: s["title"] == "lubwxk 5")
    for key in ("inch", "dark", "wedge", "axial_cut", "last_layer"):
        assert state["stage"][key] == before["stage"][key], f"a letter of the title has changed {key}"
    assert not state["comparing"], "a letter of the title has kept the build"
    w.key("Escape", "Escape", "ctrl+z")


def main():
    with desk() as (window, copy):
        w = window(copy("even.lay.toml", changes=(("pitch", "0.26 mm"), ("barrel_diameter", "150 mm"))))
        w.settled()
        run((half_a_unit_is_not_taken, steps, untouched_fields_stay, panels_in_turn, a_finding_by_keys, a_turn_by_keys,
             a_layer_by_keys, section_by_keys, map_by_keys, menus_by_keys, typing_is_no_command), w)
        w.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main())
