// The page's worker: lays plans, step by step, and posts what came of it. After the first it waits until the page has
// shown that. A newer plan ends this worker.

function runWorker() {
  let starting = null, program = null, winder = 0, job = 0, passes = 0;

  const wind = (pass) => {
    const at = program._winder_wind(winder, pass);
    if (!at) {
      const trouble = program.UTF8ToString(program._winder_trouble(winder));
      postMessage({ job, trouble });
      return false;
    }
    const [bytes, count, x, r, flags, nodes, fidelity, share, cost] =
      new Float64Array(program.HEAPU8.buffer, at, 9);
    const heap = program.HEAPU8.buffer;
    const parts = [heap.slice(bytes, bytes + count), heap.slice(x, x + 4 * nodes),
                   heap.slice(r, r + 4 * nodes), heap.slice(flags, flags + nodes)];
    postMessage({ job, parts, nodes, fidelity, share, cost, pass, passes }, parts);
    return true;
  };

  // Steps are tasks of their own, so that what was posted goes out in between.
  const windOn = (pass) => {
    if (pass < passes && wind(pass)) setTimeout(windOn, 0, pass + 1);
  };

  const start = async (compiled) => {
    // No oftener than somebody sees: the page has better things to do.
    let told = 0;
    program = await startProgram(compiled, {
      tellShare(share) {
        const now = performance.now();
        if (now < told + 100) return;
        told = now;
        postMessage({ job, percent: Math.floor(100 * share) });
      },
    });
    winder = program._winder_open();
  };

  onmessage = async ({ data }) => {
    if (data.compiled) {
      starting = start(data.compiled);
    } else if (data.shown) {
      windOn(1);
    } else {
      // The plan comes right behind the program.
      await starting;
      job = data.job;
      passes = withText(program, data.text, (text) => program._winder_plan(winder, text, data.seed, data.cost));
      if (passes > 0) wind(0);
    }
  };
}
