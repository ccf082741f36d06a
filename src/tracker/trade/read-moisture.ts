/** What a moisture meter showed on the worked wood, on a spot of the same piece that was left alone, or on both. */
export type MoistureRead = { readonly wood?: number; readonly untouched?: number };

/** What `readMoisture` makes of a text. */
export type MoistureReadingText =
  | { readonly ok: true; readonly read: MoistureRead }
  | { readonly ok: false; readonly says: string };

const example = 'Write wood 12.5, untouched 9.';

/** Below this a pin meter shows noise, above it wood drips (common practice, no source). */
const driest = 4;
const wettest = 60;

const figure = /^(?:(wood|untouched)\s*:?\s*)?(\d+(?:[.,]\d+)?)(?![\w.])\s*(?:%|percent\b)?/i;

/**
 * Reads meter readings as a person writes them: `wood 12.5, untouched 9`, `12.5 untouched 9`, `12,5 9`. Figures without
 * a word are taken in that order.
 */
export function readMoisture(text: string): MoistureReadingText {
  const refuse = (says: string): MoistureReadingText => ({ ok: false, says: `${says} ${example}` });
  const read: { wood?: number; untouched?: number } = {};
  let rest = text.trim();
  if (rest === '') return refuse('nothing was given.');
  while (rest !== '') {
    const match = figure.exec(rest);
    if (match === null) return refuse(`"${text.trim()}" is no reading of a moisture meter.`);
    const [typed, word, digits = ''] = match;
    const spot = word === undefined ? (read.wood === undefined ? 'wood' : 'untouched') : word;
    const name = spot.toLowerCase() === 'wood' ? 'wood' : 'untouched';
    if (read[name] !== undefined)
      return refuse(`"${typed.trim()}" comes second: one of each will do.`);
    read[name] = Number(digits.replace(',', '.'));
    rest = rest.slice(typed.length).replace(/^(?:[\s,;/]|and\b)+/i, '');
  }
  return { ok: true, read };
}

/** What is wrong with a meter's figure, in words; null if it can be. */
export function wrongMoisture(percent: number): string | null {
  if (!Number.isFinite(percent)) return 'that is no percentage.';
  const told = Number(percent.toFixed(2));
  if (percent < driest) return `${told} % is drier than a meter can tell: ${driest} to ${wettest}.`;
  if (percent > wettest) return `${told} % would be dripping wet: ${driest} to ${wettest}.`;
  return null;
}
