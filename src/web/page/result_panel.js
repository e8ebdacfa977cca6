// The figures of the build, and those of the plan as it came beside them.

// In the units that the person chose.
const toldOf = (results, inch) => (inch ? results.inch : results.metric);

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
    const planned = changed && this.planned ? toldOf(this.planned, inch).figures : [];
    const before = new Map(planned.map(({ name, value }) => [name, value]));
    const told = toldOf(results, inch);
    list.replaceChildren(...told.figures.map(({ name, value, more }) => {
      const shown = element('dd', { text: together(value), 'data-figure': name });
      if (more) shown.append(element('small', { text: together(more) }));
      const was = before.get(name);
      if (was !== undefined && was !== value)
        shown.append(element('small', { class: 'was', text: `plan: ${together(was)}` }));
      return element('div', {}, element('dt', { text: name }), shown);
    }));
    this.showPattern(results, told.pattern);
    byId('layers').lastElementChild.replaceChildren(tableOf(told.layers.head, told.layers.rows));
  }

  // Of a crossed wind; a part of the wind does not tell its last layer.
  showPattern({ full }, pattern) {
    byId('pattern').hidden = !full || !pattern;
    if (!pattern) return;
    const safe = (rows) => rows.map((text) => element('li', { text: together(text) }));
    const told = (row) => [element('p', { text: row.text }),
      ...(row.safe.length ? [element('p', { text: 'In a close pattern, without ribbons:' }),
                             element('ul', {}, ...safe(row.safe))] : [])];
    byId('pattern').lastElementChild.replaceChildren(
      element('div', { class: 'wide' }, tableOf(pattern.head, pattern.rows)), ...pattern.told.flatMap(told));
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
    const lines = toldOf(results, inch).findings;
    const row = (found, i) => {
      const swatch = element('i');
      swatch.style.background = results.marks[i].colour;
      const head = element('span', {}, element('b', { text: results.marks[i].words }), ` ${together(lines[i])}`);
      return element('button', { type: 'button', class: 'finding', on: { click: () => this.fly(i) } },
        swatch, head, element('p', { text: found.text }));
    };
    const rows = findings.map(row);
    // The small ones come last and are folded away.
    const small = rows.filter((each, i) => findings[i].severity === 'small');
    const large = rows.slice(0, rows.length - small.length);
    const fold = element('details', { class: 'small' },
      element('summary', { text: results.small }), ...small);
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
