import { glyphSets, lineOf, width, type GlyphSet, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import type { LookingBack } from '../port.ts';
import type { HoursPage } from '../screens.ts';
import { isReviewPage } from './hours-pages.ts';

const barCells = 20;

/** How far it is with past years, and the key that stops or begins it; nothing once there is nothing to say of this page. */
export function lookingBackLines(
  looking: LookingBack | undefined,
  shown: HoursPage,
  columns: number,
  glyphs: GlyphSet,
): readonly Line[] {
  if (looking === undefined) return [];
  switch (looking.is) {
    case 'reading':
      return [progressLine('past years', looking, columns, glyphs)];
    case 'trying':
      return [progressLine('past steps', looking, columns, glyphs)];
    case 'stopped':
      if (looking.review !== null && isReviewPage(shown)) return [];
      return wrapWords(stoppedWords(looking), columns).map((text) => lineOf(text, 'work lost'));
    case 'failed':
      return wrapWords(
        `Not looked back: ${looking.says ?? 'why is not known'} s: try again.${looking.review === null ? ' Only the bench is shown.' : ''}`,
        columns,
      ).map((text) => lineOf(text, 'refusal'));
    case 'waiting':
      return [];
  }
}

/** `past years  ######··············  3 of 10  s: stop` */
function progressLine(
  what: string,
  { done, of }: Pick<LookingBack, 'done' | 'of'>,
  columns: number,
  glyphs: GlyphSet,
): Line {
  const { goTill, wait } = glyphSets[glyphs];
  const full = of === 0 ? 0 : Math.floor((barCells * Math.min(done, of)) / of);
  const bar = `${goTill.repeat(full)}${wait.repeat(barCells - full)}`;
  const told = `${done} of ${of}  s: stop`;
  const whole = `${what}  ${bar}  ${told}`;
  return lineOf(width(whole) <= columns ? whole : `${what} ${told}`, 'strong');
}

function stoppedWords({ done, of, review }: LookingBack): string {
  return review === null
    ? `Stopped after ${done} of ${of} years: only the bench is shown. s: read them again.`
    : `Stopped after ${done} of ${of} steps. s: from the beginning.`;
}
