"""How long the share page takes until there is something to see, by its parts, beside a bare page that draws one
triangle in the same browser, and beside the full build. Figures, not checks. For Debian's own Python, which has
selenium.

    bench_page.py LAYWRIGHT PLAN [RUNS]      RUNS: of each page, 7 by default
"""

import pathlib
import statistics
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "web" / "browser"))
from browser import Browser  # noqa: E402
from machine import machine  # noqa: E402

# What any page with a picture costs here.
BARE = """<!doctype html><title>Bare</title><canvas id="picture" width="900" height="700"></canvas><script>
const gl = document.getElementById('picture').getContext('webgl2');
const program = gl.createProgram();
for (const [kind, text] of [[gl.VERTEX_SHADER, `#version 300 es
  void main() { gl_Position = vec4(float(gl_VertexID & 1), float(gl_VertexID >> 1), 0.0, 1.0); }`],
  [gl.FRAGMENT_SHADER, `#version 300 es
  precision highp float; out vec4 colour; void main() { colour = vec4(1.0); }`]]) {
  const shader = gl.createShader(kind);
  gl.shaderSource(shader, text);
  gl.compileShader(shader);
  gl.attachShader(program, shader);
}
gl.linkProgram(program);
gl.useProgram(program);
gl.drawArrays(gl.TRIANGLES, 0, 3);
requestAnimationFrame(() => setTimeout(() => { window.page = { seen: true }; }));
</script>"""

PARTS = (("the program is compiled", "compiled"), ("there is a context", "context"),
         ("the first build has come", "wound"), ("it is drawn", "shown"))


def at_rest(browser):
    """Once the browser has started, its processors are free."""
    used = browser.processor_s()
    while True:
        time.sleep(0.5)
        before, used = used, browser.processor_s()
        if used - before < 0.03:
            return used


def look(page, full):
    with Browser() as browser:
        browser.watch()
        before, began = at_rest(browser), time.monotonic()
        browser.open(page)
        browser.wait_in_page("window.page && page.seen")
        figures = {"wall": time.monotonic() - began, "processors": browser.processor_s() - before}
        if full:
            for words, name in PARTS:
                figures[words] = browser.watched(name)[0][0] / 1e3
            browser.wait_for_build()
            figures["full"] = time.monotonic() - began
        return figures


def browser_version():
    return " ".join(subprocess.run(["chromium", "--version"], capture_output=True, text=True).stdout.split()[:2])


def main():
    program, plan = sys.argv[1:3]
    runs = int(sys.argv[3]) if len(sys.argv) > 3 else 7
    with tempfile.TemporaryDirectory() as name:
        page, bare = pathlib.Path(name) / "page.html", pathlib.Path(name) / "bare.html"
        subprocess.run([program, "share", plan, "-o", page], check=True)
        bare.write_text(BARE, encoding="utf-8")
        # By turns, so that what else the machine does meets both.
        looks = [(look(bare, False), look(page, True)) for _ in range(runs)]

    def middle(which, key):
        return statistics.median(each[which][key] for each in looks)

    print(f"{machine()}, {browser_version()}; medians of {runs}")
    for key in ("wall", "processors"):
        print(f"first look / bare page, {key}: {middle(1, key) / middle(0, key):.1f} "
              f"({middle(1, key):.2f} / {middle(0, key):.2f} s)")
    print(f"full build / first look: {middle(1, 'full') / middle(1, 'wall'):.1f} ({middle(1, 'full'):.1f} s)")
    for words, _ in PARTS:
        print(f"  {words} after {middle(1, words):.2f} s")


if __name__ == "__main__":
    main()
