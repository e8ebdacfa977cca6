// The figures of the build, and those of the plan as it came beside them.

const layersOf = (row) => (row.to_layer === null ? `${row.from_layer} on`
  : row.to_layer === row.from_layer ? `${row.from_layer}` : `${row.from_layer}-${row.to_layer}`);

class ResultPanel {
  // judges: the verdict is shown.
  constructor(judges) {
    this.judges = judges;
    this.planned = null;  // results of the plan unchanged
  }

  show(results, changed, inch) {
    if (!changed && results.full) this.planned = results;
    // Of a part of the wind, or a coarse build of it, there is none.
    const verdict = byId('verdict');
    verdict.hidden = !results.full || !this.judges;
    verdict.textContent = results.document.verdict.line;
    verdict.dataset.grade = results.document.verdict.grade;
    verdict.title = results.document.verdict.draw;
    const list = byId('figures');
    list.classList.toggle('early', results.share < 1);
    const planned = changed && this.planned ? figuresOf(this.planned, inch) : [];
    const before = new Map(planned.map(([name, value]) => [name, value]));
    list.replaceChildren(...figuresOf(results, inch).map(([name, value, more]) => {
      const shown = element('dd', { text: value, 'data-figure': name });
      if (more) shown.append(element('small', { text: more }));
      const was = before.get(name);
      if (was !== undefined && was !== value) shown.append(element('small', { class: 'was', text: `plan: ${was}` }));
      return element('div', {}, element('dt', { text: name }), shown);
    }));
    this.showPattern(results, inch);
    this.showLayers(results.document.layers, inch);
  }

  // Of a crossed wind; a part of the wind does not tell its last layer.
  showPattern({ pattern, full }, inch) {
    const crossed = pattern.rows.some((row) => row.verdict !== 'close wind');
    byId('pattern').hidden = !full || !crossed;
    const cells = (row) => [
      layersOf(row), words.size(row.pitch, inch, 3), rounded(row.turns_per_double_stroke, 4),
      `${words.size(row.diameter.inside, inch, 1)} to ${words.size(row.diameter.outside, inch, 1)}`, row.verdict];
    const head = ['Layers', 'Pitch', 'Turns to a double stroke', 'Diameter', 'Pattern'];
    const safe = (row) => row.safe_settings.map((one) => element('li', {
      text: `${one.key} ${words.size(one.value, inch, 3)} instead of ${words.size(one.instead_of, inch, 3)}: ${
        rounded(one.turns_per_double_stroke, 4)} turns` }));
    const told = (row) => [element('p', { text: `Layers ${layersOf(row)}. ${row.text}` }),
      ...(row.safe_settings.length ? [element('p', { text: 'In a close pattern, without ribbons:' }),
                                      element('ul', {}, ...safe(row))] : [])];
    byId('pattern').lastElementChild.replaceChildren(
      element('div', { class: 'wide' }, tableOf(head, pattern.rows.map(cells))), ...pattern.rows.flatMap(told));
  }

  showLayers(layers, inch) {
    const head = ['Layer', 'Way', 'Turns', 'Length', 'Mean diameter', 'Rise, d', 'Open gaps', 'Crossings', 'Bridged'];
    const rows = layers.map((layer) => [
      layer.layer, layer.direction, rounded(layer.turns, 2), words.length(layer.length_m * 1e3, inch),
      words.size(layer.mean_diameter, inch, 3), layer.mean_rise_d === null ? '–' : rounded(layer.mean_rise_d, 3),
      words.length(layer.gap_length_m * 1e3, inch), rounded(layer.crossings, 0), words.share(layer.bridged_share)]);
    byId('layers').lastElementChild.replaceChildren(tableOf(head, rows));
  }
}

// The findings as a list; a click goes there.
class FindingsPanel {
  constructor(fly) {
    this.fly = fly;
  }

  show(results, inch) {
    const findings = results.document.findings;
    byId('count').textContent = String(findings.length);
    const total = results.document.totals.length_m;
    byId('ticks').replaceChildren(...findings.map((found, i) => {
      const tick = element('i');
      tick.style.left = `${100 * Math.min(1, found.length_m[0] / total)}%`;
      tick.style.background = results.marks[i].colour;
      return tick;
    }));
    const row = (found, i) => {
      const swatch = element('i');
      swatch.style.background = results.marks[i].colour;
      const several = found.last_layer > found.layer;
      const layers = several ? `layers ${found.layer} to ${found.last_layer}` : `layer ${found.layer}`;
      const places = found.occurrences > 1 ? `, ${words.count(found.occurrences, 'place')}` : '';
      const name = results.marks[i].words;
      const head = element('span', {}, element('b', { text: capital(name) }),
        ` ${words.size(found.size, inch)}, ${layers}${places}: ${found.severity}`);
      return element('button', { type: 'button', class: 'finding', on: { click: () => this.fly(i) } },
        swatch, head, element('p', { text: found.text }));
    };
    const rows = findings.map(row);
    // The small ones come last and are folded away.
    const small = rows.filter((each, i) => findings[i].severity === 'small');
    const large = rows.slice(0, rows.length - small.length);
    const fold = element('details', { class: 'small' },
      element('summary', { text: words.count(small.length, 'small one') }), ...small);
    const none = 'No findings: nothing in this build is over the limits that the plan sets.';
    byId('findings').replaceChildren(...large, ...(small.length ? [fold] : []),
      ...(rows.length ? [] : [element('p', { text: none })]));
  }

  choose(finding) {
    [...byId('findings').querySelectorAll('.finding')].forEach((row, i) => {
      if (i === finding) row.setAttribute('aria-current', 'true');
      else row.removeAttribute('aria-current');
      if (i === finding && row.parentElement.matches('details')) row.parentElement.open = true;
    });
  }
}
