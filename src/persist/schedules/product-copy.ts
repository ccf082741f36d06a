import { parse, stringify } from 'yaml';
import { isGroup } from './explain-issue.ts';

/**
 * A products file with one product of another, under another id, to be changed to the times of a label. Every figure
 * keeps its source until it is changed; `label` is there to be named instead.
 * @returns null where that file has no such product
 */
export function productCopyText(
  text: string,
  id: string,
  newId: string,
  schema: string,
): string | null {
  const file: unknown = parse(text, { merge: true });
  if (!isGroup(file) || !isGroup(file['products'])) return null;
  const product = file['products'][id];
  if (!isGroup(product)) return null;
  const sources = isGroup(file['sources']) ? file['sources'] : {};
  const body = stringify(
    { sources: { label: 'the label of the can', ...sources }, products: { [newId]: product } },
    { aliasDuplicateObjects: false, lineWidth: 0 },
  );
  return [
    `# yaml-language-server: $schema=${schema}`,
    '#',
    `# Your own can, beginning with the times of ${id}. Write the label's in their place, with "source: label",`,
    '# and the climate that they are stated for. What you know of the can goes beside its name:',
    '#     batch: 24-117 B',
    '#     opened on: 2026-11-02',
    '#     shelf life: 2027-06-30 # the last day the maker vouches for',
    '#     once opened: 180 d',
    '',
    body,
  ].join('\n');
}
