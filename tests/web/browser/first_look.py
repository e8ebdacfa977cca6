"""A long wind can be looked at long before it is laid. How soon depends on the machine (tests/bench/bench_page.py);
here it is counted what the page does until then, and in which order."""

from browser import Browser

MOST_PAGE_BYTES = 15_000_000

# What laying costs before it is known, and what a first look may take (desk/passes.h): so many stations, of the
# 12 million that the whole wind has. A coarse mesh's turns are whole, so that it may be a few more.
MOST_STATIONS = 1.05 * 60e6 / 350.0

# Barrel and flanges, shell, ground, lines, patches and gaps of findings. All others, for cuts, strands, discs, words
# and averages, are not seen yet.
MOST_PROGRAMS = 6


def until_first_shown(browser):
    """Each thing that happened before the first picture was on the canvas: name and figures."""
    watched = [(name, figures) for name, _, figures in browser.value("watched")]
    names = [name for name, _ in watched]
    assert "shown" in names, f"no picture was shown: {names}"
    return watched[:names.index("shown") + 1]


def comes_before_all_else(shop):
    page = shop.page(shop.sample("long"))
    size = page.stat().st_size
    assert size <= MOST_PAGE_BYTES, f"the page has {size} bytes"
    with Browser() as browser:
        browser.watch()
        browser.open(page)
        browser.wait("window.page && page.seen", "a first look")
        happened = until_first_shown(browser)
        little_is_done(happened)
        in_this_order(happened, ["compiled", "worker", "context", "linked", "wound", "drawn", "shown"])
        canvas = browser.value("document.getElementById('picture').width * document.getElementById('picture').height")
        few_pixels_are_drawn(happened, canvas)
        browser.wait_for_build()
        the_rest_comes_after(browser)
        assert browser.ask("hash") == shop.hash(shop.sample("long")), "another build than the program's"
        shop.shoot(browser, "long")
        complaints = browser.complaints()
        assert not complaints, f"the console complains: {complaints}"


def figures_of(happened, name):
    return [figures for kind, figures in happened if kind == name]


def little_is_done(happened):
    """One of each that is dear: a compiled program, a worker, an OpenGL, a build, a picture."""
    for name in ("compiled", "worker", "wound", "shown"):
        assert len(figures_of(happened, name)) == 1, f"{name}: {len(figures_of(happened, name))} times"
    contexts = figures_of(happened, "context")
    assert [each["canvas"] for each in contexts] == ["picture"], f"contexts: {contexts}"
    assert not any(each["compiles"] for each in figures_of(happened, "instance")), "the program is compiled twice"
    assert not figures_of(happened, "read back"), "the page waits for pixels"
    nodes = figures_of(happened, "wound")[0]["nodes"]
    assert nodes <= MOST_STATIONS, f"{nodes} stations are laid"
    linked = {each["program"] for each in figures_of(happened, "linked")}
    drawn = {each["program"] for each in figures_of(happened, "drawn")}
    assert linked == drawn, f"programs {linked - drawn} are compiled and not drawn with"
    assert len(linked) <= MOST_PROGRAMS, f"{len(linked)} programs are compiled"


def in_this_order(happened, names):
    """The first of each comes after the first of the one before."""
    kinds = [kind for kind, _ in happened]
    places = [kinds.index(name) for name in names]
    assert places == sorted(places), f"not in the order {names}: {kinds}"


def few_pixels_are_drawn(happened, canvas):
    """Where the processor draws, a quarter of them: half a pixel more a side, where that is no whole number."""
    pixels = max(each["pixels"] for each in figures_of(happened, "drawn"))
    assert pixels <= 0.26 * canvas, f"{pixels} pixels are drawn for a canvas of {canvas}"
    assert figures_of(happened, "shown")[0]["pixels"] == canvas, "it does not fill the canvas"


def the_rest_comes_after(browser):
    """The worker lays no more before it hears that the first look was shown; then the whole, coarse and in full."""
    watched = [(name, figures) for name, _, figures in browser.value("watched")]
    kinds = ["go on" if name == "order" and figures["shown"] else name for name, figures in watched]
    go_on = kinds.index("go on")
    assert kinds.count("go on") == 1 and kinds.index("shown") < go_on, f"the worker goes on too early: {kinds[:go_on]}"
    assert kinds[:go_on].count("wound") == 1, f"the worker does not wait: {kinds[:go_on]}"
    nodes = [figures["nodes"] for name, figures in watched if name == "wound"]
    assert len(nodes) == 3 and nodes[0] < nodes[1] < nodes[2], f"stations of the builds: {nodes}"
