import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { pathToFileURL } from 'node:url';

/* Starts `src/<name>.ts` (main unless named) as one file made of today's sources, because four hundred small files start three
 * times as slowly. The made file carries the sum of all that it was made of in its name, so it cannot be stale; where none can be
 * kept, the sources are run as they are. `--ready` only makes the files, for a place that will be read-only. */

const SRC = import.meta.dirname;
const MADE = join(SRC, '..', '.cache');
const PROGRAMS = ['main', 'jigwright', 'demo'];

const [name = 'main', ...rest] = process.argv.slice(2);
if (name === '--ready') for (const program of PROGRAMS) await made(program);
else if (PROGRAMS.includes(name)) await start(name);
else {
  process.stderr.write(`Name one of ${PROGRAMS.join(', ')}.\n`);
  process.exitCode = 2;
}

/** @param {string} program */
async function start(program) {
  const file = await made(program).catch((error) => sourceOf(program, error));
  process.argv.splice(1, process.argv.length, file, ...rest);
  await import(pathToFileURL(file).href);
}

/** The made file, made now if it is not there. @param {string} program */
async function made(program) {
  const sources = readSources();
  const file = join(MADE, `${program}-${sumOf(sources)}.mjs`);
  if (existsSync(file)) return file;
  mkdirSync(MADE, { recursive: true });
  const code = await bundled(program, sources);
  const old = readdirSync(MADE).filter((other) => other.startsWith(`${program}-`));
  // Safe on the medium before it has its name, or a power cut could leave an empty program there.
  writeFileSync(`${file}.${process.pid}`, code, { flush: true });
  renameSync(`${file}.${process.pid}`, file);
  for (const other of old) rmSync(join(MADE, other), { force: true });
  return file;
}

/** Only a folder that cannot be written is a reason to do without. @param {string} program @param {unknown} error */
async function sourceOf(program, error) {
  if (typeof error !== 'object' || error === null || !('syscall' in error)) throw error;
  const { register } = await import('tsx/esm/api');
  register();
  return join(SRC, `${program}.ts`);
}

function readSources() {
  return new Map(
    sourcesIn(SRC)
      .sort()
      .map((file) => [file, readFileSync(file, 'utf8')]),
  );
}

/** @param {string} folder @returns {string[]} */
function sourcesIn(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}${sep}${entry.name}`;
    return entry.isDirectory() ? sourcesIn(path) : entry.name.endsWith('.ts') ? [path] : [];
  });
}

/** @param {Map<string, string>} sources */
function sumOf(sources) {
  const sum = createHash('sha256').update(process.version);
  for (const file of [join(SRC, 'launch.js'), join(SRC, '..', 'package-lock.json')]) sum.update(readFileSync(file));
  for (const [file, text] of sources) sum.update(`${file}\0${text}\0`);
  return sum.digest('hex').slice(0, 32);
}

/** Made of the very texts that were summed up; each keeps its own idea of where it lies. @param {string} program @param {Map<string, string>} sources */
async function bundled(program, sources) {
  const { build, stop } = await import('esbuild');
  const here = (path) => ({
    'import.meta.dirname': JSON.stringify(join(path, '..')),
    'import.meta.url': JSON.stringify(pathToFileURL(path).href),
  });
  const load = ({ path }) => ({
    loader: 'ts',
    contents: sources.get(path)?.replace(/import\.meta\.(dirname|url)/g, (found) => here(path)[found]),
  });
  const { outputFiles } = await build({
    entryPoints: [join(SRC, `${program}.ts`)],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    plugins: [{ name: 'sources', setup: (made) => made.onLoad({ filter: /\.ts$/ }, load) }],
  });
  await stop();
  return outputFiles[0].contents;
}
