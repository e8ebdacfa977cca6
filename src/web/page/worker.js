// The page's worker: lays plans, step by step, and posts what came of it. A newer plan ends this worker.

function runWorker() {
  let program = null, winder = 0, job = 0;

  const wind = (pass, passes) => {
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
  const windOn = (pass, passes) => {
    if (pass < passes && wind(pass, passes)) setTimeout(windOn, 0, pass + 1, passes);
  };

  onmessage = async ({ data }) => {
    if (data.compiled) {
      let told = -1;
      program = await startProgram(data.compiled, {
        tellShare(share) {
          const percent = Math.floor(100 * share);
          if (percent !== told) postMessage({ job, percent: told = percent });
        },
      });
      winder = program._winder_open();
      postMessage({ ready: true });
      return;
    }
    job = data.job;
    const passes = withText(program, data.text, (text) => program._winder_plan(winder, text, data.seed, data.cost));
    windOn(0, passes);
  };
}
