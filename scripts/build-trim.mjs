import { readFile } from 'node:fs/promises';

/**
 * Inside of a character class: printable ASCII, Latin, punctuation, boxes and blocks. None of them joins with another
 * (UAX 29), each is one cell wide, and a screen holds little else.
 */
const plainSigns = String.raw`\x20-\x7e\u00a1-\u00ac\u00ae-\u02ff\u2010-\u2027\u2030-\u203b\u2500-\u25fc`;

/** As source text, whether a text holds nothing but them. */
export const plainText = String.raw`/^[${plainSigns}]*$/`;

/**
 * As source text, what gives the graphemes of a text like `Intl.Segmenter`, which takes a fifth as long to make as Node to
 * start. Line feeds and escapes join with nothing either.
 *
 * @param {string} options of the segmenter
 */
export const cheapSegmenter = (options) => String.raw`
  let graphemes;
  const joinsNothing = /^[\n\x1b${plainSigns}]*$/;
  const segmenter = {
    segment: (text) =>
      joinsNothing.test(text)
        ? Array.from(text, (segment, index) => ({ segment, index }))
        : (graphemes ??= new Intl.Segmenter(${options})).segment(text),
  };`;

/**
 * Text edits to dependencies that cost much at start and give this program
 * nothing. Each must still find its text: when a new version moved it, the build
 * stops, and somebody looks.
 *
 * @type {{file: RegExp, find: string | RegExp, replacement: string, why: string}[]}
 */
const edits = [
  {
    file: /[\\/]ink[\\/]build[\\/](reconciler|ink)\.js$/,
    find: /process\.env\['DEV'\] === 'true'/g,
    replacement: 'false',
    why: 'development tools, which also bring top-level awaits',
  },
  {
    file: /[\\/]yoga-layout[\\/]dist[\\/]src[\\/]index\.js$/,
    find: /import loadYoga from [^;]*;([^]*)const Yoga = wrapAssembly\(await loadYoga\(\)\);/,
    replacement: `
      import loadYoga, { wasmBase64 } from '../binaries/yoga-wasm-base64-esm.js';$1
      const host = {
        instantiateWasm(imports, done) {
          const bytes = Buffer.from(wasmBase64, 'base64');
          const instance = new WebAssembly.Instance(new WebAssembly.Module(bytes), imports);
          done(instance);
          return instance.exports;
        },
      };
      loadYoga(host);
      const Yoga = wrapAssembly(host);`,
    why: 'as shipped it decodes itself through fetch, which loads the whole HTTP client',
  },
  {
    file: /[\\/]yoga-layout[\\/]dist[\\/]binaries[\\/]yoga-wasm-base64-esm\.js$/,
    find: /"data:application\/octet-stream;base64,([A-Za-z0-9+/=]+)"([^]*)$/,
    replacement: '"data:,"$2\nexport const wasmBase64 = "$1";',
    why: 'so that the layout engine can be built from the bytes, at once',
  },
  {
    file: /[\\/]string-width[\\/]index\.js$/,
    find: /const segmenter = new Intl\.Segmenter\(\);([^]*)const rgiEmojiRegex = (\/\^\\p\{RGI_Emoji\}\$\/v);/,
    // Every emoji of that list has in it a pictograph, a letter of a flag, a skin tone or the box of a key.
    replacement: String.raw`${cheapSegmenter('')}$1
      let rgiEmoji;
      const mayBeEmoji = /[\p{Extended_Pictographic}\u{1F1E6}-\u{1F1FF}\u{1F3FB}-\u{1F3FF}\u20E3]/u;
      const rgiEmojiRegex = {
        test: (text) => mayBeEmoji.test(text) && (rgiEmoji ??= $2).test(text),
      };`,
    why: 'making the two takes as long as starting Node, and text without emoji needs none',
  },
  {
    file: /[\\/](wrap-ansi[\\/]index|slice-ansi[\\/]tokenize-ansi)\.js$/,
    find: /const (\w+) = new Intl\.Segmenter\(([^)]*)\);/,
    replacement:
      'let made; const $1 = { segment: (text) => (made ??= new Intl.Segmenter($2)).segment(text) };',
    why: 'making the first one takes a fifth as long as starting Node, and a screen of plain text needs none',
  },
  {
    file: /[\\/]ink[\\/]build[\\/]line-update\.js$/,
    find: /const segmenter = new Intl\.Segmenter\(([^)]*)\);([^]*)const printableAscii = \/\^\[ -~\]\*\$\/u;/,
    replacement: `${cheapSegmenter('$1')}$2const printableAscii = ${plainText.replaceAll('$', '$$$$')};`,
    why: 'a line that changed is compared with the one before sign by sign, through what finds graphemes, though those of plain signs are known',
  },
  {
    file: /[\\/]ansi-tokenize[\\/]build[\\/]tokenize\.js$/,
    find: /const segmenter = new Intl\.Segmenter\(([^)]*)\);/,
    replacement: cheapSegmenter('$1'),
    why: 'the same, for each line that is drawn',
  },
  {
    file: /[\\/]ink[\\/]build[\\/](measure|wrap)-text\.js$/,
    find: /maxSize: 4096/,
    replacement: 'maxSize: 256',
    why: 'a screen that runs for days fills them with frames that never come again, 100 MB of them',
  },
  {
    file: /[\\/]ink[\\/]build[\\/]render-node-to-output\.js$/,
    find: /import widestLine from 'widest-line';([^]*)const currentWidth = widestLine\(text\);/,
    replacement:
      "import measureText from './measure-text.js';$1const currentWidth = measureText(text).width;",
    why: 'the layout has just measured the same text, and remembers its width',
  },
  {
    file: /[\\/]ink[\\/]build[\\/]output\.js$/,
    find: /(export default class Output \{[^]*?)caches = new OutputCaches\(\);/,
    // Twenty screens full of lines; then it begins anew, for the same reason as those above.
    replacement: `
      let kept = new OutputCaches();
      const keptCaches = () =>
        kept.styledChars.size > 500 ? (kept = new OutputCaches()) : kept;
      $1caches = keptCaches();`,
    why: 'it takes every line apart into cells, and forgets them after each frame, though most lines come again',
  },
  {
    file: /[\\/]conf[\\/]dist[\\/]source[\\/]index\.js$/,
    find: /import crypto from 'node:crypto';([^]*)import \{ Ajv2020 as Ajv \} from 'ajv\/dist\/2020\.js';\s*import ajvFormatsModule from 'ajv-formats';([^]*)import semver from 'semver';/,
    // Asking for one of them all the same ends in an error that names it, not in a check that wasn't made.
    replacement: `$1$2
      const leftOut = (name) => {
        const refuse = () => {
          throw new Error(\`\${name} is left out of this build of conf\`);
        };
        return new Proxy(class {}, { get: refuse, construct: refuse });
      };
      const [crypto, Ajv, ajvFormatsModule, semver] =
        ['node:crypto', 'ajv', 'ajv-formats', 'semver'].map(leftOut);`,
    why: 'nothing here is encrypted, has a JSON Schema or is migrated by conf, and loading these three takes most of its time',
  },
];

/** @returns {import('esbuild').Plugin} */
export function trimDependencies() {
  return {
    name: 'trim-dependencies',
    setup(build) {
      for (const { file, find, replacement, why } of edits) {
        build.onLoad({ filter: file }, async ({ path }) => {
          const original = await readFile(path, 'utf8');
          const contents = original.replace(find, replacement);
          if (contents !== original) return { contents, loader: 'js' };
          return { errors: [{ text: `${path} no longer holds what is edited here (${why})` }] };
        });
      }
    },
  };
}
