// The program: WebAssembly that came with the page, once for the page itself and once for its worker.

// The module, compiled while it is unpacked. Browsers that cannot unpack are older than those that run it.
function compileProgram(text) {
  const unpacked = new Blob([bytesOf(text)]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return WebAssembly.compileStreaming(new Response(unpacked, { headers: { 'Content-Type': 'application/wasm' } }));
}

function bytesOf(text) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(text);
  const letters = atob(text), bytes = new Uint8Array(letters.length);
  for (let i = 0; i < letters.length; ++i) bytes[i] = letters.charCodeAt(i);
  return bytes;
}

// An instance of the compiled module. `more` goes into Emscripten's object.
function startProgram(compiled, more) {
  return makeLaywright({
    ...more,
    instantiateWasm(imports, done) {
      WebAssembly.instantiate(compiled, imports).then((instance) => done(instance, compiled));
      return {};
    },
  });
}

// Calls `use` with the address of a text, which is freed afterwards.
function withText(program, text, use) {
  const bytes = program.lengthBytesUTF8(text) + 1;
  const at = program._malloc(bytes);
  program.stringToUTF8(text, at, bytes);
  try {
    return use(at);
  } finally {
    program._free(at);
  }
}
