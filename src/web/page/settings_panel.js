// The settings of the plan that can be tried: typed in any unit, issues beside the field.

class SettingsPanel {
  // act: {change({path, text, unit}, done), step({path, text, steps}), revert(), save()}
  constructor(act) {
    this.act = act;
    this.rows = new Map();
    byId('settings').addEventListener('submit', (event) => event.preventDefault());
    byId('revert').addEventListener('click', () => act.revert());
    byId('save').addEventListener('click', () => act.save());
  }

  make(field) {
    const id = `field-${field.path.replaceAll('.', '-')}`, unit = element('span', { class: 'unit' });
    const issues = element('div', { id: `${id}-issues`, class: 'issues', 'aria-live': 'polite' });
    const row = { field, unit, issues, text: null };
    // `done`: what was typed may now be put as the plan has it.
    const tell = (done) => {
      clearTimeout(this.timer);
      this.act.change({ path: field.path, text: row.input.value, unit: unit.textContent }, done);
    };
    const send = () => tell(true), sendSoFar = () => tell(false);
    if (field.choices.length > 0) {
      row.input = element('select', { id, on: { change: send } },
        ...field.choices.map((choice) => element('option', { value: choice, text: choice })));
    } else {
      const on = { change: send, input: () => this.wait(sendSoFar),
                   keydown: (event) => this.nudge(field.path, event, sendSoFar) };
      row.input = element('input', { id, inputmode: 'text', spellcheck: 'false', on });
    }
    row.input.setAttribute('aria-describedby', issues.id);
    const label = element('label', { for: id, text: capital(field.name), title: field.help });
    row.box = element('div', { class: 'field' }, label,
      element('div', { class: 'typed' }, row.input, unit), issues);
    this.rows.set(field.path, row);
    return row.box;
  }

  // While somebody types, a pause is enough.
  wait(send) {
    clearTimeout(this.timer);
    this.timer = setTimeout(send, 450);
  }

  // Up and down are a step more or less, as in the program's window: with Shift ten, with Ctrl a tenth.
  nudge(path, event, send) {
    const way = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (!way) return;
    const next = this.act.step({ path, text: event.target.value,
                                 steps: way * (event.shiftKey ? 10 : event.ctrlKey ? 0.1 : 1) });
    if (next === null) return;
    event.preventDefault();
    event.target.value = next;
    this.wait(send);
  }

  show({ fields, others, changed, sound }, fresh = false) {
    const sentence = (issue) => issue.allowed ? `${issue.what} (${issue.allowed})` : issue.what;
    if (this.rows.size === 0) byId('settings').replaceChildren(...fields.map((field) => this.make(field)));
    for (const field of fields) {
      const row = this.rows.get(field.path);
      // What is being typed stays as it is.
      const typing = document.activeElement === row.input && !fresh;
      if (row.text !== field.text && !typing) row.input.value = field.text;
      row.text = typing ? null : field.text;
      row.unit.textContent = field.unit;
      row.unit.hidden = field.choices.length > 0;
      row.input.disabled = field.idle !== '';
      row.box.title = field.idle || `${field.help} (${field.allowed})`;
      row.box.classList.toggle('changed', field.changed);
      row.box.classList.toggle('idle', field.idle !== '');
      row.input.setAttribute('aria-invalid', field.issues.some((issue) => issue.error));
      row.issues.replaceChildren(...field.issues.map((issue) => element('p', {
        class: issue.error ? 'issue error' : 'issue',
        text: `${capital(field.name)} ${sentence(issue)}` })));
    }
    // Doubts about what cannot be changed here are the plan's own.
    byId('others').replaceChildren(...others.filter((issue) => issue.error).map((issue) =>
      element('p', { class: 'error', text: `${issue.key} ${sentence(issue)}` })));
    byId('revert').hidden = !changed;
    byId('save').hidden = !changed || !sound;
  }
}
