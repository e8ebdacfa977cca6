// Written down while the page runs: what it asks of the browser, in order. Each entry: [name, milliseconds, figures].
(() => {
  const watched = window.watched = [];
  const note = (name, figures = {}) => watched.push([name, performance.now(), figures]);
  const after = (owner, name, does) => {
    const own = owner[name];
    owner[name] = function (...given) {
      const result = own.apply(this, given);
      does.call(this, result, given);
      return result;
    };
  };

  const compiles = (module) => module.then(() => note('compiled'), () => note('not compiled'));
  after(WebAssembly, 'compile', compiles);
  after(WebAssembly, 'compileStreaming', compiles);
  after(WebAssembly, 'instantiate',
    (_, [what]) => note('instance', { compiles: !(what instanceof WebAssembly.Module) }));

  const Own = window.Worker;
  window.Worker = function (...given) {
    note('worker');
    const worker = new Own(...given);
    worker.addEventListener('message', ({ data }) => note(data.parts ? 'wound' : 'told', { nodes: data.nodes }));
    after(worker, 'postMessage', (_, [data]) => note('order', { shown: data.shown === true }));
    return worker;
  };

  const contexts = new Set();
  after(HTMLCanvasElement.prototype, 'getContext', function (context) {
    if (contexts.has(context)) return;
    contexts.add(context);
    note('context', { canvas: this.id, draws: context instanceof WebGL2RenderingContext });
  });

  const gl = WebGL2RenderingContext.prototype;
  let used = null, view = [0, 0];
  after(gl, 'linkProgram', (_, [program]) => note('linked', { program: names(program) }));
  after(gl, 'useProgram', (_, [program]) => used = program);
  after(gl, 'viewport', (_, [, , width, height]) => view = [width, height]);
  after(gl, 'readPixels', () => note('read back'));
  for (const name of ['drawArrays', 'drawElements', 'drawArraysInstanced', 'drawElementsInstanced'])
    after(gl, name, () => note('drawn', { program: names(used), pixels: view[0] * view[1] }));
  after(gl, 'blitFramebuffer', (_, given) => note('shown', { pixels: given[6] * given[7] }));

  const programs = [];
  function names(program) {
    if (!programs.includes(program)) programs.push(program);
    return programs.indexOf(program);
  }
})();
