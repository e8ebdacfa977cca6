// Reads a model back and holds each ring of the fiber's tube against the exported table:
//   node read_model.mjs NODE_MODULES MODEL.glb PATH.csv DIAMETER_MM SIDES STEP_MM
// The model must hold every station (--tolerance "0 mm"). The table has five digits after the point.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";

const [modules, modelFile, tableFile, ...figures] = process.argv.slice(2);
const [diameter, sides, step] = figures.map(Number);
const require = createRequire(resolve(modules, "any.js"));
const { NodeIO } = require("@gltf-transform/core");
const { KHRMeshQuantization } = require("@gltf-transform/extensions");

function assert(sound, words) {
  if (!sound) throw new Error(words);
}

// Rows of the table by layer, each with the first row of the next layer at its end, as places in mm.
function readLayers(file) {
  const [head, ...rows] = readFileSync(file, "utf8").trim().split("\n");
  assert(head === "turn,angle_deg,length_m,layer,x_mm,r_mm,support", `unknown table: ${head}`);
  const layers = new Map();
  for (const row of rows) {
    const [, angle, , layer, x, r] = row.split(",").map(Number);
    const around = (angle * Math.PI) / 180;
    const place = [x, r * Math.cos(around), r * Math.sin(around)];
    if (!layers.has(layer)) {
      layers.get(layer - 1)?.push(place);
      layers.set(layer, []);
    }
    layers.get(layer).push(place);
  }
  return layers;
}

const distance = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

// Places of a primitive in mm, by the node's matrix.
function placesOf(primitive, matrix) {
  const accessor = primitive.getAttribute("POSITION");
  const places = [];
  for (let i = 0; i < accessor.getCount(); ++i) {
    const [x, y, z] = accessor.getElement(i, []);
    places.push(
      [0, 1, 2].map((row) => 1000 * (matrix[row] * x + matrix[4 + row] * y + matrix[8 + row] * z + matrix[12 + row])),
    );
  }
  return places;
}

function ringsOf(places) {
  const rings = [];
  for (let i = 0; i < places.length; i += sides) rings.push(places.slice(i, i + sides));
  return rings;
}

const middle = (ring) => [0, 1, 2].map((k) => ring.reduce((sum, place) => sum + place[k], 0) / ring.length);

const io = new NodeIO().registerExtensions([KHRMeshQuantization]);
const document = await io.read(modelFile);
const nodes = document.getRoot().listNodes();
const named = (name) => nodes.find((node) => node.getName() === name);
for (const name of ["Spool", "Barrel", "Left flange", "Right flange", "Fiber"]) assert(named(name), `no ${name}`);

const layers = readLayers(tableFile);
// Half a step in each of three directions; the table is rounded to 1e-5 mm, and to 1e-4 degrees at up to 50 mm.
const margin = (Math.sqrt(3) / 2) * step + 1e-5 + 50 * (Math.PI / 180) * 0.5e-4;
let rings = 0;
let farthest = 0;
for (const [layer, wanted] of layers) {
  const node = named(`Layer ${layer}`);
  assert(node, `no layer ${layer}`);
  const matrix = node.getWorldMatrix();
  const pieces = node.getMesh().listPrimitives().map((primitive) => ringsOf(placesOf(primitive, matrix)));
  let at = 0;
  for (const piece of pieces.filter((list) => list.length > 1)) {
    // A piece begins with the ring that the one before ends with.
    at = Math.max(0, at - 1);
    for (const ring of piece) {
      assert(at < wanted.length, `layer ${layer} has more than ${wanted.length} rings`);
      const off = distance(middle(ring), wanted[at]);
      assert(off <= margin, `ring ${at} of layer ${layer} is off by ${off} mm, more than ${margin}`);
      for (const place of ring) {
        const radius = distance(place, wanted[at]);
        assert(Math.abs(radius - diameter / 2) <= margin, `a corner of ring ${at} stands ${radius} mm from the middle`);
        farthest = Math.max(farthest, Math.abs(radius - diameter / 2));
      }
      farthest = Math.max(farthest, off);
      at += 1;
      rings += 1;
    }
  }
  assert(at === wanted.length, `layer ${layer} has ${at} rings, not ${wanted.length}`);
}
const extras = nodes.filter((node) => node.getName().startsWith("Layer ")).length - layers.size;
assert(extras === 0, `${extras} layers too many`);
console.log(`${rings} rings in ${layers.size} layers, off by ${farthest.toExponential(2)} mm at most, ${margin.toExponential(2)} allowed`);
