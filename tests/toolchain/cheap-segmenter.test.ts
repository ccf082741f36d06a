import { runInThisContext } from 'node:vm';
import { expect, test } from 'vitest';
import stringWidth from 'string-width';
import { cheapSegmenter, plainText } from '../../scripts/build-trim.mjs';

type Segmenting = { readonly segment: (text: string) => Iterable<{ readonly segment: string }> };

/** The source text that goes into the bundle, run by itself. */
const { segmenter, joinsNothing } = runInThisContext(
  `(() => {${cheapSegmenter('')} return { segmenter, joinsNothing }; })()`,
) as { readonly segmenter: Segmenting; readonly joinsNothing: RegExp };

const graphemes = (by: Segmenting, text: string): readonly string[] =>
  [...by.segment(text)].map(({ segment }) => segment);

const plain = Array.from({ length: 0x1_0000 }, (_, code) => String.fromCharCode(code)).filter(
  (character) => joinsNothing.test(character),
);

test('characters that are taken one by one join with nothing, as Intl.Segmenter has it', () => {
  expect(plain.length).toBeGreaterThan(800);
  const intl = new Intl.Segmenter();
  const joining = plain.filter(
    (character) =>
      graphemes(intl, `a${character}${character}a`).length !== 4 ||
      graphemes(intl, `─${character}°`).length !== 3,
  );
  expect(joining).toEqual([]);
});

test.each(['│··(────', 'e\u0301', '\r\n', '👩‍🔧 at the bench', '19 °C 59 %', '한국'])(
  'takes %j apart as Intl.Segmenter does',
  (text) => {
    expect(graphemes(segmenter, text)).toEqual(graphemes(new Intl.Segmenter(), text));
  },
);

test('plain signs are those that are taken one by one and act on nothing, each one cell wide', () => {
  const isPlain = runInThisContext(plainText) as RegExp;
  expect(plain.filter((character) => !isPlain.test(character))).toEqual(['\n', '\x1b']);
  const seen = plain.filter((character) => isPlain.test(character));
  expect(seen.filter((character) => stringWidth(character) !== 1)).toEqual([]);
  // A line of them is as wide as it is long, however far it is taken.
  expect(stringWidth(seen.join(''))).toBe(seen.length);
});
