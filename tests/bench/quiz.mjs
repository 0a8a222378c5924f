// The page that ours is measured beside: a plain ten-question quiz with a general form library, built
// as its documents say, minified, tree-shaken and compressed as ours is.
import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { build } from 'esbuild';

// The first ten questions of a family that have one right answer, worded as ours are.
function questions_of(root) {
  const folder = path.join(root, 'assets/families/spray');
  const read = (name) => JSON.parse(readFileSync(path.join(folder, name), 'utf8'));
  const texts = read('text.en.json').questions;
  return read('questions.json').questions.filter(({ kind }) => kind === 'one').slice(0, 10).map(({ id, options }) => ({
    type: 'radiogroup', name: id, title: texts[id].ask,
    choices: options.map((option) => ({ value: option.id, text: texts[id].options[option.id].label })),
  }));
}

const k_html = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Quiz</title>
<meta name="viewport" content="width=device-width, initial-scale=1"><link rel="stylesheet" href="quiz.css">
<script type="module" src="quiz.js"></script></head><body><div id="quiz"></div></body></html>\n`;

function compress(folder) {
  for (const name of readdirSync(folder)) {
    const bytes = readFileSync(path.join(folder, name));
    const options = { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } };
    writeFileSync(path.join(folder, `${name}.br`), brotliCompressSync(bytes, options));
    writeFileSync(path.join(folder, `${name}.gz`), gzipSync(bytes, { level: 9 }));
  }
}

export async function make_quiz(root, out) {
  const elements = questions_of(root);
  if (elements.length !== 10) throw new Error(`the quiz wants ten questions, there are ${elements.length}`);
  const source = `import { Model } from 'survey-core'; import { renderSurvey } from 'survey-js-ui';
    import 'survey-core/survey-core.fontless.min.css';
    renderSurvey(new Model(${JSON.stringify({ elements })}), document.getElementById('quiz'));`;
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  await build({
    stdin: { contents: source, resolveDir: path.join(root, 'ci/peers') },
    outfile: path.join(out, 'quiz.js'), bundle: true, minify: true, format: 'esm', target: ['es2020'],
    logLevel: 'error',
  });
  writeFileSync(path.join(out, 'index.html'), k_html);
  compress(out);
}
