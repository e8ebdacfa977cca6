// The page as a whole: what it shows follows the viewer; what a person does goes to the viewer.

class Page {
  constructor(program, laying, plan) {
    this.viewer = new Viewer(program);
    this.plan = plan;
    this.laid = false;  // there is a build to look at
    this.results = null;
    this.sound = true;  // the settings as they stand can be wound
    this.inch = false;
    this.result = new ResultPanel(plan.customer?.verdict ?? true);
    this.findings = new FindingsPanel((i) => this.fly(i));
    this.settings = new SettingsPanel({
      change: (question, done) => this.replan('change', question, done),
      step: (question) => this.viewer.ask('stepField', question),
      revert: () => this.replan('revert', {}, true),
      save: () => this.save(),
    });
    this.look = new LookPanel((name, question) => this.ask(name, question));
    this.turn = new TurnPanel((way) => this.ask('toward', { way }));
    this.tab = watchTabs(document.querySelector('[role="tablist"]'));
    this.watch();
    this.laying = laying;
    this.measure();
    // On a small picture the spool itself needs the room.
    const roomy = this.width >= 520;
    this.viewer.ask('show', { dark: this.night.matches, legend: roomy, dimensions: roomy });
    this.customer = plan.customer ? new CustomerPage((name, question) => this.viewer.ask(name, question)) : null;
    this.settings.show(this.viewer.ask('start', { text: plan.text, seed: plan.seed }));
    this.drawing('makeReady');
    laying.listen({
      wound: (parcel) => this.take(parcel),
      percent: (percent) => this.tellProgress(percent),
      trouble: (words) => this.fail(words),
    });
  }

  // Puts a question to the viewer, and shows what it changed.
  ask(name, question) {
    const answer = this.viewer.ask(name, question);
    this.paint();
    return answer;
  }

  // How the build is looked at, frames or none in between; null before there is one.
  now() {
    return this.viewer.ask('seen');
  }

  watch() {
    const act = {
      orbit: (azimuth, elevation) => this.ask('orbit', { azimuth, elevation }),
      pan: (x, y) => this.ask('pan', { x: x * this.scale, y: y * this.scale }),
      zoom: (times, x = this.width / 2, y = this.height / 2) =>
        this.ask('zoom', { times, x: x * this.scale, y: y * this.scale }),
      // A customer has no use for the figures of a turn.
      pick: (x, y) => {
        if (!this.customer && this.ask('pick', { x: x * this.scale, y: y * this.scale })) this.tab('tab-turn');
      },
      fit: () => this.ask('fit'),
      showAll: () => this.ask('showAll'),
      play: () => this.ask('play', { on: !this.now()?.playing }),
      scrub: (share) => this.ask('scrub', { share }),
      turns: (by) => this.ask('scrub', { by }),
      peel: (by) => this.peel(by),
      wedge: () => this.ask('wedge', { on: !this.now()?.wedge }),
      cut: () => this.ask('cut', { on: !this.now()?.cut }),
      nextFinding: () => this.nextFinding(),
      help: () => byId('help').showModal(),
    };
    watchPointers(byId('picture'), act);
    const keys = keyTable(act);
    watchKeys(keys);
    byId('keys').replaceChildren(...keys.filter(({ shown }) => shown).map(({ shown, help }) =>
      element('div', {}, element('dt', { text: shown }), element('dd', { text: help }))));
    for (const [id, does] of [['fit', act.fit], ['all', act.showAll], ['play', act.play], ['help-button', act.help],
      ['slower', () => this.ask('rate', { times: 0.5 })], ['faster', () => this.ask('rate', { times: 2 })]])
      byId(id).addEventListener('click', does);
    byId('scrub').addEventListener('input', (event) => act.scrub(Number(event.target.value)));
    for (const button of document.querySelectorAll('[data-inch]'))
      button.addEventListener('click', () => this.setUnits(button.dataset.inch === 'true'));
    this.night = matchMedia('(prefers-color-scheme: dark)');
    this.night.addEventListener('change', () => this.ask('show', { dark: this.night.matches }));
    new ResizeObserver(() => { if (this.measure()) this.paint(); }).observe(byId('pictures'));
    byId('picture').addEventListener('webglcontextlost', (event) => {
      event.preventDefault();
      this.viewer.ask('losePicture');
      this.lost = true;
    });
    byId('picture').addEventListener('webglcontextrestored', () => {
      this.lost = false;
      this.paint();
    });
  }

  // Screens finer than two pixels to one of the page's show no more. False: all is as it was.
  measure() {
    const box = byId('pictures');
    this.width = Math.max(1, box.clientWidth);
    this.height = Math.max(1, box.clientHeight);
    this.scale = Math.min(devicePixelRatio || 1, 2);
    const width = Math.round(this.width * this.scale), height = Math.round(this.height * this.scale);
    const picture = byId('picture');
    const asked = [width, height, this.scale].join();
    if (this.measured === asked) return false;
    this.measured = asked;
    if (picture.width !== width) picture.width = width;
    if (picture.height !== height) picture.height = height;
    this.viewer.ask('size', { width, height, scale: this.scale * (this.width < 520 ? 0.85 : 1) });
    return true;
  }

  // Draws soon, and better once nothing has moved for a while.
  paint() {
    clearTimeout(this.rest);
    if (this.asked || this.lost) return;
    this.asked = requestAnimationFrame((now) => {
      this.asked = null;
      this.frame(now);
    });
  }

  frame(now) {
    if (!this.laid) return;
    clearTimeout(this.rest);
    const seconds = Math.min(0.1, Math.max(0, (now - (this.last ?? now)) / 1e3));
    const moving = this.viewer.ask('step', { seconds: this.seen?.moving ? seconds : 0 });
    this.last = now;
    const { software } = this.plan;
    const pass = software ? 'quick' : 'plain';
    // The first words take as long as the first picture, since the browser has to find letters.
    if (this.seen) this.draw(pass);
    else this.drawing('draw', { pass });
    this.showSeen();
    if (moving) this.paint();
    else if (software || !this.laying.busy)
      this.rest = setTimeout(() => this.draw(this.laying.busy ? 'plain' : 'fine'), software ? 800 : 200);
  }

  draw(pass) {
    this.drawing('draw', { pass });
    this.drawing('words');
  }

  // A question to the graphics. What they refuse is told.
  drawing(name, question) {
    if (this.lost) return;
    try {
      this.viewer.ask(name, question);
    } catch (error) {
      this.tell(error.message, true);
    }
  }

  showSeen() {
    const seen = this.seen = this.viewer.ask('seen');
    const { moment } = seen;
    this.look.show(seen);
    this.turn.show(seen.picked);
    this.findings.choose(seen.chosen);
    byId('scrub').value = moment.atEnd ? 1 : moment.length / seen.length;
    byId('play').setAttribute('aria-pressed', seen.playing);
    byId('play').setAttribute('aria-label', seen.playing ? 'Pause' : 'Play the wind');
    byId('rate').textContent = seen.rate;
    // A small screen has room for where the wind is, and no more.
    byId('moment').textContent = (this.width < 520 ? moment.fewWords : moment.words).map(together).join('  ·  ');
    byId('scrub').setAttribute('aria-valuetext', moment.fewWords.slice(0, 2).join(', '));
  }

  lay() {
    const { text, fields } = this.viewer.ask('planText');
    this.changed = fields.changed;
    this.laying.lay(text, this.plan.seed);
  }

  replan(name, question, done) {
    const before = this.viewer.ask('planText').text;
    const fields = this.viewer.ask(name, question);
    this.settings.show(fields, done);
    this.sound = fields.sound;
    if (!fields.sound) {
      this.tell('The settings cannot be wound as they stand; the picture shows the last ones that could.', true);
    } else if (this.viewer.ask('planText').text !== before || byId('state').classList.contains('bad')) {
      this.lay();
    }
  }

  take(parcel) {
    if (!this.viewer.take(parcel)) {
      this.fail('There is not enough memory here for the whole build; this is a coarser one.');
      return;
    }
    this.laid = true;
    this.frame(performance.now());
    // The picture before all else: the figures take as long again, and the rest of the wind every processor there is.
    afterFrame(() => {
      this.laying.goOn();
      this.drawing('words');
      this.readResults();
    });
  }

  readResults() {
    this.results = this.viewer.ask('results');
    this.showResults();
    // Another plan may be on its way already.
    const full = this.results.full && !this.laying.busy;
    if (full) {
      byId('progress').hidden = true;
      byId('state').hidden = this.sound;
      byId('live').textContent = this.results.laid;
    }
    document.documentElement.dataset.build = full ? 'full' : 'early';
  }

  showResults() {
    this.result.show(this.results, this.changed, this.inch);
    if (this.customer) this.customer.show(this.results, this.changed);
    else byId('subtitle').textContent = this.results.settings;
    this.findings.show(this.results, this.inch);
  }

  tellProgress(percent) {
    byId('progress').hidden = false;
    byId('progress').firstElementChild.style.width = `${percent}%`;
    const part = this.results && !this.results.full && this.results.share < 1;
    if (this.sound) this.tell(part ? 'The beginning of the wind; the rest is being laid' : 'Laying', false);
    document.documentElement.dataset.build = 'laying';
  }

  // No more comes of this laying.
  fail(text) {
    byId('progress').hidden = true;
    document.documentElement.dataset.build = 'failed';
    this.tell(text, true);
  }

  tell(text, bad) {
    const state = byId('state');
    state.hidden = false;
    state.classList.toggle('bad', bad);
    if (state.textContent === text) return;
    state.textContent = text;
    byId('live').textContent = text;
  }

  setUnits(inch) {
    this.inch = inch;
    for (const button of document.querySelectorAll('[data-inch]'))
      button.setAttribute('aria-pressed', (button.dataset.inch === 'true') === inch);
    this.ask('show', { inch });
    this.settings.show(this.viewer.ask('planText').fields, true);
    if (this.results) this.showResults();
  }

  fly(finding) {
    this.ask('fly', { finding, jump: matchMedia('(prefers-reduced-motion: reduce)').matches });
  }

  peel(by) {
    const now = this.now();
    if (now) this.ask('peel', { first: now.first, last: Math.max(now.first, now.last + by) });
  }

  nextFinding() {
    const count = this.results?.document.findings.length ?? 0;
    if (count > 0) this.fly(((this.now().chosen ?? -1) + 1) % count);
  }

  // The changed plan, for the program itself.
  save() {
    const file = new Blob([this.viewer.ask('planText').text], { type: 'application/toml' });
    const link = element('a', { href: URL.createObjectURL(file), download: 'changed.lay.toml' });
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  }
}

// Once what was drawn can be seen; at once in a page that nobody sees, where no frame comes.
function afterFrame(does) {
  if (document.hidden) setTimeout(does);
  else requestAnimationFrame(() => setTimeout(does));
}

// {why}: why a page stays a printed one. {software}: the processor draws, and fine pictures take their time.
function whatDraws() {
  // The picture's own context, with the attributes that the program will ask for: a second one takes its time.
  const context = byId('picture').getContext('webgl2', {
    alpha: false, depth: false, stencil: false, antialias: false, powerPreference: 'high-performance' });
  if (!context)
    return { why: 'This browser shows no 3D pictures (WebGL 2), so these are pictures of the spool.' };
  const named = context.getExtension('WEBGL_debug_renderer_info');
  const name = named ? context.getParameter(named.UNMASKED_RENDERER_WEBGL) : '';
  return { software: /swiftshader|llvmpipe|software|basic render/i.test(name) };
}

async function runPage() {
  const stay = (why) => {
    byId('app').hidden = true;
    byId('static').hidden = false;
    byId('why').hidden = false;
    byId('why').textContent = why;
  };
  if (typeof WebAssembly !== 'object' || typeof DecompressionStream !== 'function')
    return stay('This browser is too old to show the spool in the round; these are pictures of it.');
  try {
    // Before the browser has set the still page's tables and decoded its pictures, which are not to be seen.
    byId('app').hidden = false;
    byId('static').hidden = true;
    const compiled = await compileProgram(byId('program').textContent);
    // The worker lays while the browser wakes the graphics card up.
    const plan = JSON.parse(byId('plan').textContent);
    const laying = new Laying(compiled, byId('script').textContent);
    laying.lay(plan.text, plan.seed);
    const { why, software } = whatDraws();
    if (why) {
      laying.end();
      return stay(why);
    }
    const program = await startProgram(compiled, { overlay: byId('words') });
    window.page = new Page(program, laying, { ...plan, software });
  } catch (error) {
    stay(`The spool cannot be shown in the round here (${error.message}); these are pictures of it.`);
  }
}

if (typeof document === 'undefined') runWorker();
else runPage();
