"""A headless Chromium that is driven through chromedriver, and watches what leaves the page."""

import json
import os
import pathlib
import time

from selenium import webdriver
from selenium.webdriver.chrome.options import Options
from selenium.webdriver.chrome.service import Service

# OpenGL by the processor, so that the test needs no graphics card.
DRAWS = ["--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader"]
DRAWS_NOT = ["--disable-3d-apis"]

PATIENCE_S = 240.0


def stat_of(folder):
    """Name and the fields after it that the kernel keeps of a process or thread; none once it has ended."""
    try:
        text = (folder / "stat").read_text(encoding="utf-8", errors="replace")
    except OSError:
        return None
    head, _, rest = text.rpartition(")")
    return [head.partition("(")[2], *rest.split()]


class Browser:
    def __init__(self, width=1280, height=800, phone=False, dark=False, draws=True, scripts=True):
        options = Options()
        options.binary_location = "/usr/bin/chromium"
        for flag in ["--headless=new", "--no-sandbox", "--hide-scrollbars", f"--window-size={width},{height}",
                     *(DRAWS if draws else DRAWS_NOT)]:
            options.add_argument(flag)
        options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
        self.driver = webdriver.Chrome(service=Service("/usr/bin/chromedriver"), options=options)
        self.command("Emulation.setDeviceMetricsOverride", width=width, height=height,
                     deviceScaleFactor=2 if phone else 1, mobile=phone)
        if phone:
            self.command("Emulation.setTouchEmulationEnabled", enabled=True, maxTouchPoints=5)
        if dark:
            self.command("Emulation.setEmulatedMedia", features=[{"name": "prefers-color-scheme", "value": "dark"}])
        if not scripts:
            self.command("Emulation.setScriptExecutionDisabled", value=True)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.driver.quit()

    def command(self, name, **arguments):
        return self.driver.execute_cdp_cmd(name, arguments)

    def open(self, page):
        self.driver.get(page.resolve().as_uri())

    def watch(self):
        """From the next page on, what it asks of the browser is written down (watch.js)."""
        script = pathlib.Path(__file__).with_name("watch.js").read_text(encoding="utf-8")
        self.command("Page.addScriptToEvaluateOnNewDocument", source=script)

    def watched(self, name):
        """What was written down of one kind: milliseconds and figures, in their order."""
        return [(at, figures) for kind, at, figures in self.value("watched") if kind == name]

    def run(self, script, *arguments):
        return self.driver.execute_script(script, *arguments)

    def value(self, expression, *arguments):
        return self.run(f"return {expression}", *arguments)

    def ask(self, name, **question):
        return self.run("return page.ask(arguments[0], arguments[1])", name, question)

    def wait(self, expression, why):
        end = time.monotonic() + PATIENCE_S
        while time.monotonic() < end:
            if self.value(expression):
                return
            time.sleep(0.02)
        raise AssertionError(f"waited in vain: {why}; {self.complaints()}")

    def wait_in_page(self, expression):
        """The same without looking in from outside again and again."""
        self.driver.set_script_timeout(PATIENCE_S)
        self.driver.execute_async_script(
            f"const done = arguments[0]; (function look() {{ ({expression}) ? done() : setTimeout(look, 5); }})();")

    def wait_for_build(self):
        self.wait("document.documentElement.dataset.build === 'full'", "the full build")

    # As many frames as it takes for what was asked to be seen.
    def settle(self):
        self.run("return 0")
        self.driver.execute_async_script(
            "const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(() => done()))")

    def draw_finely(self):
        """As it looks at rest."""
        self.run("page.draw('fine')")
        self.settle()

    def element(self, selector):
        return self.driver.find_element("css selector", selector)

    def text(self, selector):
        return self.value("document.querySelector(arguments[0]).textContent", selector)

    def seen(self):
        self.settle()
        return self.value("page.viewer.ask('seen')")

    def picture(self):
        """The pixels of both canvases; drawn and read in one go, since a browser may forget them afterwards."""
        return self.run("""
            page.viewer.ask('draw', { pass: 'plain' });
            page.viewer.ask('words');
            const picture = document.getElementById('picture');
            const copy = new OffscreenCanvas(picture.width, picture.height).getContext('2d');
            copy.drawImage(picture, 0, 0);
            const words = document.getElementById('words');
            copy.drawImage(words, 0, 0);
            const bytes = copy.getImageData(0, 0, picture.width, picture.height).data;
            let hash = 0, bright = 0;
            const colours = new Set();
            for (let i = 0; i < bytes.length; i += 4) {
              const code = bytes[i] << 16 | bytes[i + 1] << 8 | bytes[i + 2];
              hash = (Math.imul(hash, 31) + code) | 0;
              if (i % 64 === 0) colours.add(code);
            }
            return { hash, colours: colours.size };""")

    def complaints(self):
        """What the console said that was not told before."""
        return [entry["message"] for entry in self.driver.get_log("browser")
                if entry["level"] in ("WARNING", "SEVERE") and "GPU stall" not in entry["message"]]

    def requests(self):
        """Addresses of all requests that the page made."""
        asked = []
        for entry in self.driver.get_log("performance"):
            message = json.loads(entry["message"])["message"]
            if message["method"] in ("Network.requestWillBeSent", "Network.webSocketCreated"):
                params = message["params"]
                asked.append(params.get("request", params).get("url", ""))
        return asked

    def processor_s(self):
        """Seconds of processor that the browser's threads have used, all but those of workers."""
        children, left, ticks = {}, [self.driver.service.process.pid], 0
        for process in pathlib.Path("/proc").glob("[0-9]*"):
            if fields := stat_of(process):
                children.setdefault(int(fields[2]), []).append(int(process.name))
        while left:
            process = left.pop()
            left += children.get(process, [])
            for thread in pathlib.Path(f"/proc/{process}/task").glob("*"):
                fields = stat_of(thread)
                if fields and fields[0] != "DedicatedWorker":
                    ticks += int(fields[12]) + int(fields[13])
        return ticks / os.sysconf("SC_CLK_TCK")

    def click_at(self, x, y, button="left"):
        for kind in ("mousePressed", "mouseReleased"):
            self.command("Input.dispatchMouseEvent", type=kind, x=x, y=y, button=button, clickCount=1,
                         buttons=1 if kind == "mousePressed" else 0)

    def drag(self, start, end, button="left", steps=5):
        held = {"left": 1, "right": 2}[button]
        self.command("Input.dispatchMouseEvent", type="mousePressed", x=start[0], y=start[1], button=button,
                     buttons=held, clickCount=1)
        for i in range(1, steps + 1):
            at = [a + (b - a) * i / steps for a, b in zip(start, end)]
            self.command("Input.dispatchMouseEvent", type="mouseMoved", x=at[0], y=at[1], button=button, buttons=held)
        self.command("Input.dispatchMouseEvent", type="mouseReleased", x=end[0], y=end[1], button=button, buttons=0,
                     clickCount=1)

    def touch(self, *ways, steps=6):
        """Fingers that go down together, each along [start, end], and up."""
        def points(share):
            return [{"x": a[0] + (b[0] - a[0]) * share, "y": a[1] + (b[1] - a[1]) * share, "id": i}
                    for i, (a, b) in enumerate(ways)]
        self.command("Input.dispatchTouchEvent", type="touchStart", touchPoints=points(0.0))
        for i in range(1, steps + 1):
            self.command("Input.dispatchTouchEvent", type="touchMove", touchPoints=points(i / steps))
        self.command("Input.dispatchTouchEvent", type="touchEnd", touchPoints=[])

    def tap(self, x, y):
        self.command("Input.dispatchTouchEvent", type="touchStart", touchPoints=[{"x": x, "y": y}])
        self.command("Input.dispatchTouchEvent", type="touchEnd", touchPoints=[])

    def key(self, key, shift=False):
        code = {" ": "Space"}.get(key, key)
        self.command("Input.dispatchKeyEvent", type="keyDown", key=key, code=code, modifiers=8 if shift else 0,
                     **({"text": key} if len(key) == 1 else {}))
        self.command("Input.dispatchKeyEvent", type="keyUp", key=key, code=code)
