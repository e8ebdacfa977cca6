// Mouse, touch and keyboard on the picture.

const degreesPerPx = 0.35, clickPx = 5;

// Turns pointers on the canvas into {orbit, pan, zoom, pick}; places in pixels of the page from its corner.
function watchPointers(canvas, act) {
  const down = new Map();  // pointer: where it is
  let start = null, moved = false;

  const place = (event) => {
    const box = canvas.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const spread = () => {
    const [a, b] = [...down.values()];
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, apart: Math.hypot(a.x - b.x, a.y - b.y) };
  };

  canvas.addEventListener('pointerdown', (event) => {
    canvas.setPointerCapture(event.pointerId);
    down.set(event.pointerId, place(event));
    if (down.size === 1) {
      start = place(event);
      moved = false;
    } else {
      moved = true;
    }
  });
  canvas.addEventListener('pointermove', (event) => {
    const before = down.get(event.pointerId);
    if (!before) return;
    const now = place(event);
    if (down.size === 1) {
      if (!moved && Math.hypot(now.x - start.x, now.y - start.y) < clickPx) return;
      moved = true;
      const by = { x: now.x - before.x, y: now.y - before.y };
      const shifts = event.pointerType === 'mouse' && (event.buttons !== 1 || event.shiftKey);
      if (shifts) act.pan(by.x, by.y);
      else act.orbit(-by.x * degreesPerPx, by.y * degreesPerPx);
      down.set(event.pointerId, now);
    } else if (down.size === 2) {
      const from = spread();
      down.set(event.pointerId, now);
      const to = spread();
      act.pan(to.x - from.x, to.y - from.y);
      if (from.apart > 0 && to.apart > 0) act.zoom(to.apart / from.apart, to.x, to.y);
    }
  });
  const up = (event) => {
    if (!down.delete(event.pointerId)) return;
    if (event.type === 'pointerup' && !moved && event.button === 0) act.pick(start.x, start.y);
  };
  canvas.addEventListener('pointerup', up);
  canvas.addEventListener('pointercancel', up);
  canvas.addEventListener('contextmenu', (event) => event.preventDefault());
  canvas.addEventListener('wheel', (event) => {
    event.preventDefault();
    const lines = event.deltaMode === 0 ? event.deltaY / 100 : event.deltaMode === 1 ? event.deltaY / 3 : event.deltaY;
    const at = place(event);
    act.zoom(1.15 ** -Math.max(-5, Math.min(5, lines)), at.x, at.y);
  }, { passive: false });
}

// What keys do, and how the help tells it.
function keyTable(act) {
  return [
    { keys: ['ArrowLeft'], does: () => act.orbit(-6, 0) },
    { keys: ['ArrowRight'], does: () => act.orbit(6, 0) },
    { keys: ['ArrowUp'], does: () => act.orbit(0, 6) },
    { keys: ['ArrowDown'], does: () => act.orbit(0, -6), shown: 'Arrow keys', help: 'turn the spool' },
    { keys: ['Shift+ArrowLeft'], does: () => act.pan(-40, 0) },
    { keys: ['Shift+ArrowRight'], does: () => act.pan(40, 0) },
    { keys: ['Shift+ArrowUp'], does: () => act.pan(0, -40) },
    { keys: ['Shift+ArrowDown'], does: () => act.pan(0, 40), shown: 'Shift + arrows', help: 'move the picture' },
    { keys: ['+', '='], does: () => act.zoom(1.25) },
    { keys: ['-'], does: () => act.zoom(0.8), shown: '+  −', help: 'nearer, farther' },
    { keys: ['0'], does: () => act.fit(), shown: '0', help: 'the whole spool' },
    { keys: [' '], does: () => act.play(), shown: 'Space', help: 'play the wind, pause' },
    { keys: ['Home'], does: () => act.scrub(0) },
    { keys: ['End'], does: () => act.scrub(1), shown: 'Home  End', help: 'start and end of the wind' },
    { keys: [','], does: () => act.turns(-1) },
    { keys: ['.'], does: () => act.turns(1), shown: ',  .', help: 'one turn back, one on' },
    { keys: ['['], does: () => act.peel(-1) },
    { keys: [']'], does: () => act.peel(1), shown: '[  ]', help: 'take a layer off, put one on' },
    { keys: ['w'], does: () => act.wedge(), shown: 'w', help: 'cut a wedge out' },
    { keys: ['x'], does: () => act.cut(), shown: 'x', help: 'cut the spool in half' },
    { keys: ['f'], does: () => act.nextFinding(), shown: 'f', help: 'to the next finding' },
    { keys: ['a'], does: () => act.showAll(), shown: 'a', help: 'show all: no peel, no cut, the whole wind' },
    { keys: ['?'], does: () => act.help(), shown: '?', help: 'this list' },
  ];
}

function watchKeys(table) {
  // Of these, a key belongs to what has the focus.
  const own = (event) => {
    const tag = event.target.tagName;
    if (['INPUT', 'SELECT', 'TEXTAREA'].includes(tag)) return true;
    const presses = ['BUTTON', 'SUMMARY', 'A'].includes(tag);
    return (presses && event.key === ' ') || (event.target.role === 'tab' && /^(Arrow|Home|End)/.test(event.key));
  };
  addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || own(event) || document.querySelector('dialog[open]')) return;
    const arrow = event.key.startsWith('Arrow');
    const name = event.shiftKey && arrow ? `Shift+${event.key}` : event.key;
    const row = table.find(({ keys }) => keys.includes(name));
    if (!row) return;
    event.preventDefault();
    row.does();
  });
}
