// The program's side of the page: questions by name, answers as values.

class Viewer {
  constructor(program) {
    this.program = program;
    this.page = program._viewer_open();
  }

  ask(name, question = {}) {
    const { program, page } = this;
    const answer = withText(program, name, (at) => withText(program, JSON.stringify(question), (what) =>
      JSON.parse(program.UTF8ToString(program._viewer_answer(page, at, what)))));
    if (answer.trouble !== undefined) throw new Error(answer.trouble);
    return answer.value;
  }

  // A build from the worker. False when there is no memory for it.
  take({ parts, nodes, fidelity, share, text }) {
    const { program, page } = this;
    const [head, ...columns] = parts.map((part) => new Uint8Array(part));
    const room = program._viewer_room(page, nodes);
    if (!room) return false;
    const addresses = new Uint32Array(program.HEAPU8.buffer, room, 3);
    columns.forEach((column, i) => program.HEAPU8.set(column, addresses[i]));
    const bytes = program._malloc(head.length);
    program.HEAPU8.set(head, bytes);
    const taken = withText(program, text, (at) =>
      program._viewer_take(page, bytes, head.length, at, fidelity, share));
    program._free(bytes);
    return Boolean(taken);
  }
}
