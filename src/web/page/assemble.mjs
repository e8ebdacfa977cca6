// Puts the share page together, all but what belongs to one plan:
//   node assemble.mjs FOLDER PROGRAM.js PROGRAM.wasm OUTPUT.html
// {{TITLE}}, {{SUBTITLE}}, {{LOGO}}, {{LETTER}}, {{FOR}}, {{STATIC}} and {{PLAN}} are left for share_page.cpp.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateRawSync } from 'node:zlib';

const [folder, program, wasm, output] = process.argv.slice(2);
const part = (name) => readFileSync(join(folder, name), 'utf8');
const scripts = ['program.js', 'worker.js', 'laying.js', 'viewer.js', 'elements.js', 'hand.js',
                 'result_panel.js', 'settings_panel.js', 'look_panel.js', 'customer.js', 'page.js'];

// In a script element nothing but its end tag is read as HTML, and an opening of a comment changes what that is.
const script = [readFileSync(program, 'utf8'), ...scripts.map(part)].join('\n');
if (/<\/script|<!--/i.test(script)) throw new Error('the script would end its element');
const style = part('page.css');
const hash = (text) => `'sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}'`;
const values = {
  SCRIPT: script,
  STYLE: style,
  SCRIPT_HASH: hash(script),
  STYLE_HASH: hash(style),
  PROGRAM: deflateRawSync(readFileSync(wasm), { level: 9 }).toString('base64'),
};
const page = part('page.html').replace(/\{\{(\w+)\}\}/g, (all, name) => values[name] ?? all);
writeFileSync(output, page);
