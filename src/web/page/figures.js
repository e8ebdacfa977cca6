// Figures as words, in the units that the person chose.

const inchMm = 25.4;

function rounded(value, digits) {
  return value.toLocaleString('en', { minimumFractionDigits: digits, maximumFractionDigits: digits });
}

const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

const words = {
  size(mm, inch, digits = 2) {
    return inch ? `${rounded(mm / inchMm, digits + 2)}\u00a0in` : `${rounded(mm, digits)}\u00a0mm`;
  },
  length(mm, inch) {
    if (inch) return `${rounded(mm / inchMm / 12, mm < 1e5 ? 1 : 0)}\u00a0ft`;
    return mm < 1e6 ? `${rounded(mm / 1e3, 1)}\u00a0m` : `${rounded(mm / 1e6, 3)}\u00a0km`;
  },
  mass(kg, inch) {
    return inch ? `${rounded(kg / 0.45359237, 3)}\u00a0lb` : `${rounded(kg, 3)}\u00a0kg`;
  },
  share(value) {
    return `${rounded(100 * value, 1)}\u00a0%`;
  },
  time(seconds) {
    const whole = Math.round(seconds);
    if (whole < 60) return `${whole} s`;
    const two = (n) => String(n).padStart(2, '0');
    if (whole < 3600) return `${Math.floor(whole / 60)} min ${two(whole % 60)} s`;
    return `${Math.floor(whole / 3600)} h ${two(Math.floor((whole % 3600) / 60))} min`;
  },
  count(n, one, many = `${one}s`) {
    return `${rounded(n, 0)} ${n === 1 ? one : many}`;
  },
};

const threeSides = (od, inch) => ['left', 'middle', 'right'].map((part) =>
  `${part} ${words.size(od[part], inch)}`.replaceAll(' ', '\u00a0')).join(', ');

// Of the last layer, where it ends on the way.
function unfinishedLayer(last, inch) {
  if (!last) return [];
  return [['Unfinished', `layer ${last.layer}`, `ends ${words.size(last.end_x, inch)} from the left flange; with it ${
    threeSides(last.outer_diameter, inch)}`]];
}

// The greater ridge and valley of both sides, and each.
function edgesOf(edges, inch) {
  const { left, right } = edges;
  if (left.ridge === null) return [];
  return ['ridge', 'valley'].map((what) => [`${capital(what)} at flange`,
    words.size(Math.max(left[what], right[what]), inch),
    `left ${words.size(left[what], inch)}, right ${words.size(right[what], inch)}`]);
}

// What the page shows of a result, [name, value, of the same kind for comparing].
function figuresOf({ document: result }, inch) {
  const t = result.totals;
  const gaps = result.layers.reduce((sum, layer) => sum + layer.gap_length_m, 0) * 1e3;
  const od = t.outer_diameter;
  const figures = [
    ['Fiber wound', words.length(t.length_m * 1e3, inch)],
    ['Turns', rounded(t.turns, 1)],
    ['Layers', rounded(t.layers, 0)],
    ['Outer diameter', words.size(od.greatest, inch), threeSides(od, inch)],
    ...unfinishedLayer(t.unfinished_layer, inch),
    ...edgesOf(t.edges, inch),
    ['Fill factor', rounded(t.fill_factor, 3), 'fiber in the wound volume'],
    ['Open gaps', words.length(gaps, inch), 'fiber beside a gap over the limit'],
    ['Rim clearance', words.size(t.rim_clearance, inch)],
  ];
  if (t.wind_time_s !== null) figures.push(['Time', words.time(t.wind_time_s), 'at line speed']);
  if (t.mass_kg !== null) figures.push(['Fiber mass', words.mass(t.mass_kg, inch)]);
  return figures;
}

// Of the picked turn.
function factsOf(f, d, inch) {
  const support = { none: 'nothing: it bridges', barrel: 'the barrel', turn: 'one turn',
                    valley: 'a valley between two', flange: 'the flange' };
  const inD = (value) => `${rounded(value, 2)} d (${words.size(value * d, inch, 3)})`;
  const facts = [
    ['Turn', rounded(f.turn, 3)],
    ['Layer', `${f.layer}, stroke to the ${f.direction}`],
    ['In the layer', `turn ${rounded(f.turnInLayer, 2)}`],
    ['From the start', words.length(f.length, inch)],
    ['From the left flange', words.size(f.x, inch, 3)],
    ['Radius', words.size(f.r, inch, 3)],
    ['Angle', `${rounded(f.angle, 1)}°`],
    ['Rise', f.rise === null ? 'nothing below to rise over' : `${inD(f.rise)} over the layer below`],
    ['Gap', f.gap === null ? 'no neighbour in the layer' : `${inD(f.gap)} on the wider side`],
    ['Carried by', support[f.support]],
  ];
  if (f.ridesUp) facts.push(['Note', 'it rides up on a turn of its own layer']);
  return facts;
}
