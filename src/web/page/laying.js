// Has plans laid in the worker. Only the newest counts: a worker that is busy with an older one is ended, and another
// one stands ready once the first plan lies. Until somebody listens, what is heard is kept.

class Laying {
  constructor(compiled, script) {
    this.compiled = compiled;
    this.address = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
    this.heard = null;
    this.early = [];
    this.job = 0;
    this.cost = 350;  // ns for a node, until one was timed
    this.busy = false;
    this.waits = false;  // the worker, until its first look was shown
    this.worker = this.hire();
    this.spare = null;
  }

  // heard: {wound(parcel), percent(number), trouble(words)}
  listen(heard) {
    this.heard = heard;
    this.heard.percent(0);
    for (const data of this.early.splice(0)) this.hear(this.worker, data);
  }

  end() {
    this.worker.terminate();
  }

  hire() {
    const worker = new Worker(this.address);
    worker.onmessage = ({ data }) => this.hear(worker, data);
    worker.onerror = (error) => this.hear(worker, { job: this.job, trouble: error.message || 'The worker stopped.' });
    worker.postMessage({ compiled: this.compiled });
    return worker;
  }

  lay(text, seed) {
    if (this.busy) {
      this.worker.terminate();
      this.worker = this.spare ?? this.hire();
      this.spare = this.hire();
    }
    this.busy = true;
    this.waits = false;
    this.text = text;
    this.worker.postMessage({ job: ++this.job, text, seed, cost: this.cost });
    this.heard?.percent(0);
  }

  // The first look was shown: its worker lays the rest.
  goOn() {
    if (this.waits) this.worker.postMessage({ shown: true });
    this.waits = false;
  }

  hear(worker, data) {
    if (worker !== this.worker || data.job !== this.job) return;
    if (!this.heard) {
      this.early.push(data);
    } else if (data.trouble !== undefined) {
      this.busy = false;
      this.heard.trouble(data.trouble);
    } else if (data.percent !== undefined) {
      this.heard.percent(data.percent);
    } else {
      this.cost = data.cost;
      this.waits = data.pass === 0 && data.passes > 1;
      if (data.pass + 1 === data.passes) {
        this.busy = false;
        this.spare ??= this.hire();
      }
      this.heard.wound({ ...data, text: this.text });
    }
  }
}
