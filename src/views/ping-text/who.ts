import type { BenchPing } from '../../tracker/bench/index.ts';
import { cut, width } from '../drawing/index.ts';

/** Number, name and verb are to be read in this much, as the narrowest notification shows it. */
const firstGlance = 30;

/** A name is not cut to less than this, even for a long verb. */
const leastOfName = 8;
/** Nor to less than this where the section has to be named too: the number stands before it. */
const leastBesideSection = 4;

/** `2 Wall shelf, doors`: whom a ping is about, cut so that the verb after it is seen at first glance. */
export function whoFor(ping: BenchPing, verb: string): string {
  const { piece } = ping;
  if (piece === null) {
    const pot = ping.about === 'window' ? ping.pot : null;
    if (pot === null) return 'Odd timer';
    const start = `Pot ${pot.letter}, `;
    const left = Math.max(leastOfName, firstGlance - width(start) - width(`: ${verb}`));
    return start + unbroken(shortened(pot.product.productClass, left));
  }
  const number = piece.number === null ? '' : `${piece.number} `;
  const room = firstGlance - width(number) - width(`: ${verb}`);
  const section = sectionOf(ping);
  if (section !== '') {
    const left = Math.max(leastBesideSection, room - width(section));
    return number + unbroken(shortened(piece.name, left)) + section;
  }
  const place = partOf(ping);
  const name = place === '' ? piece.name : `${piece.name}, ${place}`;
  return number + unbroken(shortened(name, Math.max(leastOfName, room)));
}

/** `, section 4`: never cut, since several may be told of one after the other. */
const sectionOf = (ping: BenchPing): string =>
  ping.about === 'hold' || ping.window.subject.section === null
    ? ''
    : `, section ${ping.window.subject.section}`;

/** The part, where it is not about the whole piece. */
function partOf(ping: BenchPing): string {
  if (ping.about === 'hold') return '';
  const { partId } = ping.window.subject;
  return ping.piece?.parts.find(({ id }) => id === partId)?.name ?? '';
}

/** Whole words where at least one fits, else cut within it. */
function shortened(name: string, cells: number): string {
  if (width(name) <= cells) return name;
  const words = name.split(' ');
  while (words.length > 1) {
    words.pop();
    const kept = words.join(' ').replace(/,$/, '');
    if (width(kept) <= cells && !leadsOn.has(words.at(-1) ?? '')) return kept;
  }
  return cut(name, cells, 'ascii');
}

/** Words that no name ends with. */
const leadsOn = new Set([
  'a',
  'an',
  'and',
  'at',
  'by',
  'for',
  'from',
  'in',
  'of',
  'on',
  'the',
  'to',
  'with',
]);

/** A text is told sentence by sentence: a full stop within a name ends none. */
const unbroken = (name: string): string => name.replaceAll('. ', '.\u00a0');
