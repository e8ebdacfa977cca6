"""Drops files on a window as a file manager does: the source's side of XDND 5 (freedesktop.org), through libX11.

    drop_files.py WINDOW FILE...        WINDOW: its number, decimal
"""

import ctypes
import pathlib
import sys
import time

x11 = ctypes.CDLL("libX11.so.6")
Atom = Id = ctypes.c_ulong
Display = ctypes.c_void_p

SELECTION_REQUEST, SELECTION_NOTIFY, CLIENT_MESSAGE = 30, 31, 33
XA_ATOM = 4
PROP_MODE_REPLACE = 0


class ClientMessage(ctypes.Structure):
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("send_event", ctypes.c_int), ("display", Display),
                ("window", Id), ("message_type", Atom), ("format", ctypes.c_int), ("data", ctypes.c_long * 5)]


class SelectionRequest(ctypes.Structure):
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("send_event", ctypes.c_int), ("display", Display),
                ("owner", Id), ("requestor", Id), ("selection", Atom), ("target", Atom), ("property", Atom),
                ("time", ctypes.c_ulong)]


class SelectionNotify(ctypes.Structure):
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("send_event", ctypes.c_int), ("display", Display),
                ("requestor", Id), ("selection", Atom), ("target", Atom), ("property", Atom), ("time", ctypes.c_ulong)]


class Event(ctypes.Union):
    _fields_ = [("type", ctypes.c_int), ("client", ClientMessage), ("request", SelectionRequest),
                ("notify", SelectionNotify), ("pad", ctypes.c_long * 24)]


def declare():
    d, i = Display, ctypes.c_int
    for name, result, arguments in (
            ("XOpenDisplay", d, [ctypes.c_char_p]),
            ("XDefaultRootWindow", Id, [d]),
            ("XCreateSimpleWindow", Id, [d, Id, i, i, ctypes.c_uint, ctypes.c_uint, ctypes.c_uint, Id, Id]),
            ("XInternAtom", Atom, [d, ctypes.c_char_p, i]),
            ("XSetSelectionOwner", i, [d, Atom, Id, ctypes.c_ulong]),
            ("XSendEvent", i, [d, Id, i, ctypes.c_long, ctypes.POINTER(Event)]),
            ("XPending", i, [d]),
            ("XNextEvent", i, [d, ctypes.POINTER(Event)]),
            ("XChangeProperty", i, [d, Id, Atom, Atom, i, i, ctypes.c_char_p, i]),
            ("XFlush", i, [d])):
        function = getattr(x11, name)
        function.restype, function.argtypes = result, arguments


def drop(window, files, seconds=20.0):
    declare()
    display = x11.XOpenDisplay(None)
    assert display, "no display"
    source = x11.XCreateSimpleWindow(display, x11.XDefaultRootWindow(display), 0, 0, 1, 1, 0, 0, 0)

    def atom(name):
        return x11.XInternAtom(display, name.encode(), 0)

    selection, uri_list = atom("XdndSelection"), atom("text/uri-list")
    text = "".join(pathlib.Path(f).resolve().as_uri() + "\r\n" for f in files).encode()
    x11.XSetSelectionOwner(display, selection, source, 0)

    def send(name, *data):
        event = Event()
        event.client = ClientMessage(CLIENT_MESSAGE, 0, 1, display, window, atom(name), 32,
                                     (ctypes.c_long * 5)(source, *data))
        x11.XSendEvent(display, window, 0, 0, ctypes.byref(event))
        x11.XFlush(display)

    def answer(request):
        x11.XChangeProperty(display, request.requestor, request.property, request.target, 8, PROP_MODE_REPLACE, text,
                            len(text))
        event = Event()
        event.notify = SelectionNotify(SELECTION_NOTIFY, 0, 1, display, request.requestor, request.selection,
                                       request.target, request.property, request.time)
        x11.XSendEvent(display, request.requestor, 0, 0, ctypes.byref(event))
        x11.XFlush(display)

    send("XdndEnter", 5 << 24, uri_list, 0, 0)
    send("XdndPosition", 0, (200 << 16) | 200, 0, atom("XdndActionCopy"))
    end, dropped = time.monotonic() + seconds, False
    while time.monotonic() < end:
        if not x11.XPending(display):
            time.sleep(0.02)
            continue
        event = Event()
        x11.XNextEvent(display, ctypes.byref(event))
        if event.type == SELECTION_REQUEST:
            answer(event.request)
        elif event.type == CLIENT_MESSAGE and event.client.message_type == atom("XdndStatus") and not dropped:
            assert event.client.data[1] & 1, "the window does not take the files"
            send("XdndDrop", 0, 0, 0, 0)
            dropped = True
        elif event.type == CLIENT_MESSAGE and event.client.message_type == atom("XdndFinished"):
            return
    raise SystemExit("the window did not finish the drop")


if __name__ == "__main__":
    drop(int(sys.argv[1]), sys.argv[2:])
