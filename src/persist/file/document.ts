import { crc32 } from 'node:zlib';
import type { ContentsName } from '../folder/names.ts';
import { isRecord } from './is-record.ts';
import { lineOf, withShared, type SharedTexts } from './shared-values.ts';

/**
 * A file of the store: `{"recoat": <form>, "facts": [...], "shared": {...}, "sum": "..."}`, settings with "settings" in place of
 * "facts". One fact a line, so that a line number names a fact.
 *
 * The sum (CRC-32 of all bytes before it, in hexadecimal) says that the program itself wrote these bytes, and it
 * writes nothing that was not checked against the schemas. A reader that finds the sum right therefore doesn't check
 * again: loading the schemas and checking 300 kB takes more than half as long as an empty Node start, the sum a twentieth. Any other
 * hand's change makes the sum wrong; such a file is checked in full, and is as good as any if it passes.
 */
export type Document = {
  readonly form: number;
  /** A list of facts, or a record of settings; not yet checked unless `vouched`. */
  readonly contents: unknown;
  /** The program wrote exactly this. */
  readonly vouched: boolean;
};

/** What is wrong inside a file. `line` counts from 1; null where it can't be told. */
export type Damage = { readonly says: string; readonly line: number | null };

const sumLength = ',"sum":"00000000"}\n'.length;
const sumShape = /^,"sum":"([0-9a-f]{8})"\}\n$/;

const sumOf = (bytes: Uint8Array | string): string => crc32(bytes).toString(16).padStart(8, '0');

/** Ends an object that is not closed yet by the sum of it. */
export const withSum = (text: string): string => `${text},"sum":"${sumOf(text)}"}\n`;

export const factsText = (form: number, facts: readonly object[]): string =>
  withSum(`{"recoat":${form},${factsFields(facts)}`);

/** Facts as fields of an object, without its braces. */
export function factsFields(facts: readonly object[]): string {
  const texts: SharedTexts = new Map();
  const lines = facts.map((fact) => `\n${lineOf(fact, texts)}`).join(',');
  const shared = [...texts].map(([key, text]) => `\n"${key}":${text}`).join(',');
  return `"facts":[${lines}\n]${texts.size === 0 ? '' : `,"shared":{${shared}\n}`}`;
}

export function settingsText(form: number, settings: Readonly<Record<string, unknown>>): string {
  return withSum(`{"recoat":${form},"settings":${JSON.stringify(settings)}`);
}

export function readDocument(bytes: Buffer, holds: ContentsName): Document | Damage {
  let parsed: unknown;
  try {
    parsed = JSON.parse(bytes.toString('utf8').replace(/^\uFEFF/, ''));
  } catch (error) {
    return syntaxDamage(bytes, error);
  }
  if (!isRecord(parsed))
    return { says: 'it does not hold an object with "recoat" in it', line: null };
  const form = parsed.recoat;
  if (typeof form !== 'number' || !Number.isInteger(form) || form < 1) {
    return {
      says: '"recoat", the number of the file\'s form, is missing or no whole number',
      line: null,
    };
  }
  const contents = holds === 'settings' ? parsed.settings : withShared(parsed.facts, parsed.shared);
  return { form, contents, vouched: hasRightSum(bytes) };
}

export function hasRightSum(bytes: Buffer): boolean {
  const written = sumShape.exec(bytes.toString('latin1', Math.max(0, bytes.length - sumLength)));
  return written !== null && written[1] === sumOf(bytes.subarray(0, -sumLength));
}

function syntaxDamage(bytes: Buffer, error: unknown): Damage {
  if (bytes.length === 0) return { says: 'it is empty', line: null };
  if (bytes.every((byte) => byte === 0))
    return { says: 'it holds nothing but zero bytes', line: null };
  const text = bytes.toString('utf8');
  const said = error instanceof Error ? error.message : '';
  if (/^Unexpected end|^Unterminated/.test(said)) {
    return { says: 'it is cut short', line: text.trimEnd().split('\n').length };
  }
  const place = /line (\d+) column/.exec(said);
  return { says: 'it is not JSON', line: place ? Number(place[1]) : firstBrokenLine(text) };
}

/** Where the JSON parser names no place: the first line that is none of those the program writes. */
function firstBrokenLine(text: string): number | null {
  const lines = text.split('\n');
  if (lines.length < 3 || !lines[0]?.startsWith('{"recoat":')) return null;
  const facts = lines.slice(0, lines.findIndex((line) => line.startsWith('],"shared":')) >>> 0);
  const broken = facts.findIndex(
    (line, index) =>
      !(index === 0 ? /^\{"recoat":\d+,"facts":\[$/ : /^\],"sum":"|^$/).test(line) && !isFact(line),
  );
  return broken < 0 ? null : broken + 1;
}

function isFact(line: string): boolean {
  try {
    return isRecord(JSON.parse(line.replace(/,$/, '')));
  } catch {
    return false;
  }
}
