// Holds models against the glTF specification: node validate.mjs NODE_MODULES FILE.glb...
// Fails on any error or warning of Khronos' validator, and prints all that it says.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";

const [modules, ...files] = process.argv.slice(2);
const validator = createRequire(resolve(modules, "any.js"))("gltf-validator");
let bad = 0;
for (const file of files) {
  const report = await validator.validateBytes(new Uint8Array(readFileSync(file)), { uri: file, maxIssues: 100 });
  const { numErrors, numWarnings, numInfos, numHints, messages } = report.issues;
  console.log(
    `${file}: ${numErrors} errors, ${numWarnings} warnings, ${numInfos} remarks, ${numHints} hints; ` +
      `${report.info.totalVertexCount} vertices, ${report.info.totalTriangleCount} triangles`,
  );
  for (const message of messages) console.log(`  ${message.code} at ${message.pointer}: ${message.message}`);
  bad += numErrors + numWarnings;
  if (report.info.totalTriangleCount === 0) bad += 1;
}
process.exit(bad === 0 && files.length > 0 ? 0 : 1);
