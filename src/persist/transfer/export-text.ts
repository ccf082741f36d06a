import { factsFields, withSum } from '../file/document.ts';
import { ownField, type Exported } from './exported.ts';

/**
 * One file that holds a store: `{"recoat": <form>, "export": {"bench": {"facts": [...], "shared": {...}}, ..., "settings": {...},
 * "history/2025": {...}, "schedules": {"<name>": "<text>"}}, "sum": "..."}`. Its parts are as the store's own files have them,
 * one fact a line, and the sum is that of the whole.
 */
export function exportText(form: number, exported: Exported): string {
  const { bench, conditions, pings, settings, years, own } = exported;
  const facts = (list: readonly object[]) => `{${factsFields(list)}}`;
  const parts: readonly (readonly [string, string])[] = [
    ['settings', JSON.stringify(settings)],
    [ownField, JSON.stringify(Object.fromEntries(own))],
    ...[...years].map(([year, list]) => [`history/${yearDigits(year)}`, facts(list)] as const),
    ['conditions', facts(conditions)],
    ['pings', facts(pings)],
    ['bench', facts(bench)],
  ];
  const lines = parts.map(([name, text]) => `\n"${name}":${text}`).join(',');
  return withSum(quiet(`{"recoat":${form},"export":{${lines}\n}`));
}

const yearDigits = (year: number): string => String(year).padStart(4, '0');

/** What acts on a terminal or on the order of its text stands as an escape, which reads back the same. */
const quiet = (json: string): string =>
  json.replace(/[^\P{C}\n]|[\u2028\u2029]/gu, (character) =>
    Array.from(
      { length: character.length },
      (_, index) => `\\u${character.charCodeAt(index).toString(16).padStart(4, '0')}`,
    ).join(''),
  );
