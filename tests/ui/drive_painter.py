"""Who paints the window's pictures, under a virtual display: a painter with an OpenGL of its own; one that shares the
window's textures, as on a graphics card; and, where there is no second OpenGL, the window itself. In each the picture
is the same, follows the mouse, becomes fine, rests, and the window ends well.

    drive_painter.py LAYWRIGHT SAMPLES [SHOTS]
"""

import time

from window_driver import desk, share_different


def painted(w):
    w.settled()
    return w.until("the picture is fine", lambda s: s["painted"] and not s["scene_busy"])


def follows_and_rests(w, name):
    """Gives the pixels of the first picture."""
    before, = w.at_rest("picture")
    w.drag("picture", (0.3, 0.3), (0.6, 0.35))
    w.xdo("mousemove", 5, 5)
    after, = w.at_rest("picture")
    w.shoot(f"painter-{name}")
    assert share_different(before, after) > 0.02, "the picture did not turn with the mouse"
    w.key("k")
    w.until("two builds are compared", lambda s: s["comparing"] and "other picture" in s["places"])
    w.xdo("mousemove", 5, 5)
    w.at_rest("picture", "other picture")
    passes = painted(w)["times"]["passes"]
    time.sleep(1.5)  # however slow the machine is, in this time there is nothing to paint
    assert painted(w)["times"]["passes"] == passes, "pictures were painted while nothing happened"
    w.leave()
    print(f"{name}: as it should be", flush=True)
    return before


def main():
    ways = {
        "apart": {},
        # Mesa's plainest driver is taken for a graphics card: it is not the one that the window knows as software.
        "shared": {"GALLIUM_DRIVER": "softpipe"},
        "in the window": {"__EGL_VENDOR_LIBRARY_DIRS": "/nowhere",
                          "__EGL_VENDOR_LIBRARY_FILENAMES": "/nowhere/none.json"},
    }
    with desk() as (window, copy):
        plan = copy("even.lay.toml", changes=(("length", "200 m"),))
        pictures = [follows_and_rests(window(plan, size="720x540", **more), name) for name, more in ways.items()]
        for picture in pictures[1:]:
            assert share_different(pictures[0], picture) < 0.01, "the picture depends on who paints it"


if __name__ == "__main__":
    main()
