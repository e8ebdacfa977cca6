// The page for a customer: the spool in its own materials, the letter, and all else folded.

class CustomerPage {
  // Before there is a build. ask(name, question): puts it to the viewer.
  constructor(ask) {
    document.querySelector('[role="tablist"]').hidden = true;
    const fold = (name, ...parts) => element('details', {}, element('summary', { text: name }), ...parts);
    const result = byId('result');
    const letter = [byId('letter'), byId('verdict')];
    const figures = [...result.children].filter((part) => !letter.includes(part));
    const findings = byId('findings');
    findings.hidden = false;
    for (const panel of [result, findings]) panel.removeAttribute('role');
    result.append(fold('All figures, and other settings', ...figures), fold('What the computation found', findings));
    this.subtitle = byId('subtitle').textContent;
    this.wound = result.querySelector('.wound').textContent;
    ask('show', { colouring: 'material', findings: false, legend: false, dimensions: true });
  }

  // What was promised is of the plan as it was sent; of other settings there is only what is wound.
  show(results, changed) {
    byId('subtitle').textContent = changed ? `Other settings than were sent: ${results.settings}` : this.subtitle;
    byId('letter').querySelector('.wound').textContent = changed && results.full ? results.wound : this.wound;
    for (const part of byId('letter').querySelectorAll('.holds, .told-rows, .sure')) part.hidden = changed;
  }
}
