// Elements of the page, made from plain text alone: nothing that comes from a plan is read as HTML.

const byId = (id) => document.getElementById(id);

const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

// A unit stays with its figure at a line's end.
const together = (text) => text.replace(/(\d) (?=(mm|m|km|in|ft|kg|lb|d|s|min|h|%)(?![\w]))/g, '$1\u00a0');

// {class, text, on: {click}, ...attributes}; false and null attributes are left out.
function element(tag, { on = {}, text, ...attributes } = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes))
    if (value !== false && value !== null && value !== undefined) made.setAttribute(name, value === true ? '' : value);
  for (const [name, act] of Object.entries(on)) made.addEventListener(name, act);
  if (text !== undefined) made.textContent = text;
  made.append(...children);
  return made;
}

function tableOf(head, rows) {
  return element('table', {},
    element('thead', {}, element('tr', {}, ...head.map((text) => element('th', { scope: 'col', text })))),
    element('tbody', {}, ...rows.map((row) => element('tr', {}, ...row.map((text) => element('td', { text }))))));
}

function checkbox(name, change) {
  const input = element('input', { type: 'checkbox', on: { change: () => change(input.checked) } });
  return { input, row: element('label', { class: 'check' }, input, name) };
}

function slider(name, most, change) {
  const input = element('input', { type: 'range', min: 0, max: most, step: 1,
                                   on: { input: () => change(Number(input.value)) } });
  const output = element('output');
  return { input, output, row: element('label', { class: 'slide' }, element('span', { text: name }), input, output) };
}

// Tabs as ARIA's authoring practices have them: arrows go from one to the next.
function watchTabs(list) {
  const tabs = [...list.querySelectorAll('[role="tab"]')];
  const choose = (tab) => {
    for (const other of tabs) {
      other.setAttribute('aria-selected', other === tab);
      other.tabIndex = other === tab ? 0 : -1;
      byId(other.getAttribute('aria-controls')).hidden = other !== tab;
    }
  };
  for (const tab of tabs) tab.addEventListener('click', () => choose(tab));
  list.addEventListener('keydown', (event) => {
    const at = tabs.indexOf(document.activeElement);
    const to = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (to === undefined || at < 0) return;
    const next = tabs[(to + tabs.length) % tabs.length];
    next.focus();
    choose(next);
    event.preventDefault();
  });
  choose(tabs[0]);
  return (id) => choose(byId(id));
}
