// How the build is looked at: layers, cuts, colours, what else is shown.

const colourings = [['layer', 'Layer'], ['direction', 'Stroke direction'], ['rise', 'Rise over the layer below'],
                    ['gap', 'Gap to the neighbour'], ['height', 'Height above the middle'],
                    ['support', 'What carries the fiber'], ['length', 'Length from the start'],
                    ['tension', 'Tension when it was laid'],
                    ['payoff', 'Pull to draw it off the side'], ['payoff_left', 'Pull over the left end'],
                    ['payoff_right', 'Pull over the right end'], ['material', 'Material']];

class LookPanel {
  // ask(name, question): puts it to the viewer and shows what came of it.
  constructor(ask) {
    const group = (name, ...rows) => element('fieldset', {}, element('legend', { text: name }), ...rows);
    const show = (name) => (on) => ask('show', { [name]: on });
    const number = ({ input }) => Number(input.value);
    this.first = slider('from', 1, (n) => ask('peel', { first: n, last: Math.max(n, number(this.last)) }));
    this.last = slider('to', 1, (n) => ask('peel', { first: Math.min(n, number(this.first)), last: n }));
    this.first.input.min = this.last.input.min = 1;
    this.fade = checkbox('Fade the others', show('fade'));
    this.wedge = checkbox('Wedge', (on) => ask('wedge', { on }));
    const wedge = () => ask('wedge', { from: number(this.from), opening: number(this.opening) });
    this.from = slider('begins', 360, wedge);
    this.opening = slider('opening', 350, wedge);
    this.opening.input.min = 1;
    this.cut = checkbox('Axial cut', (on) => ask('cut', { on }));
    this.angle = slider('at', 360, (angle) => ask('cut', { angle }));
    this.colours = colourings.map(([value, name]) => {
      const input = element('input', { type: 'radio', name: 'colouring', value,
                                       on: { change: () => ask('show', { colouring: value }) } });
      return { input, row: element('label', { class: 'check' }, input, name) };
    });
    this.shown = { findings: checkbox('Findings', show('findings')),
                   dimensions: checkbox('Dimensions', show('dimensions')),
                   legend: checkbox('Legend', show('legend')),
                   seeThrough: checkbox('See-through flanges', show('seeThrough')) };
    const look = (name, azimuth, elevation) =>
      element('button', { type: 'button', text: name, on: { click: () => ask('look', { azimuth, elevation }) } });
    byId('look').replaceChildren(
      group('Layers', this.first.row, this.last.row, this.fade.row),
      group('Cuts', this.wedge.row, this.from.row, this.opening.row, this.cut.row, this.angle.row),
      group('Colour by', ...this.colours.map(({ row }) => row)),
      group('Also shown', ...Object.values(this.shown).map(({ row }) => row)),
      group('Look from', element('div', { class: 'row' }, look('Front', 0, 0), look('Above', 0, 90),
        look('Left', -90, 0), look('Right', 90, 0), look('Askew', 30, 20))));
  }

  show(seen) {
    const set = ({ input, output }, value, text) => {
      input.value = value;
      output.textContent = text;
    };
    this.first.input.max = this.last.input.max = seen.layers;
    set(this.first, seen.first, seen.first);
    set(this.last, seen.last, seen.last);
    this.fade.input.checked = seen.fade;
    this.wedge.input.checked = seen.wedge !== null;
    this.cut.input.checked = seen.cut !== null;
    this.from.row.hidden = this.opening.row.hidden = seen.wedge === null;
    this.angle.row.hidden = seen.cut === null;
    const setAngle = (row, { deg, words }) => set(row, deg, words);
    if (seen.wedge) {
      setAngle(this.from, seen.wedge.from);
      setAngle(this.opening, seen.wedge.opening);
    }
    if (seen.cut) setAngle(this.angle, seen.cut.angle);
    for (const { input } of this.colours) input.checked = input.value === seen.colouring;
    for (const [name, { input }] of Object.entries(this.shown)) input.checked = seen[name];
  }
}

// What is known of the picked turn, and the ways to those beside it.
class TurnPanel {
  constructor(go) {
    this.go = go;
    this.shown = undefined;
  }

  show(facts) {
    const now = JSON.stringify(facts);
    if (now === this.shown) return;
    this.shown = now;
    const panel = byId('turn');
    if (!facts) {
      const words = 'Click or tap a turn in the picture: what is known of it stands here then.';
      panel.replaceChildren(element('p', { text: words }));
      return;
    }
    const focused = panel.contains(document.activeElement) ? document.activeElement.dataset.way : null;
    const way = (name, to) => element('button', { type: 'button', text: name, 'data-way': to,
      disabled: to in facts.ways && !facts.ways[to], on: { click: () => this.go(to) } });
    panel.replaceChildren(
      element('dl', { class: 'facts' }, ...facts.rows.flatMap(([name, value]) =>
        [element('dt', { text: name }), element('dd', { text: together(value) })])),
      element('div', { class: 'ways' }, way('Previous', 'previous'), way('Above', 'above'), way('Next', 'next'),
        way('Left', 'left'), way('Below', 'below'), way('Right', 'right')),
      element('div', { class: 'row' }, way('Wind to here', 'here'), way('Let go', 'none')));
    if (focused) panel.querySelector(`[data-way="${focused}"]`)?.focus();
  }
}
