import {
  classesOf,
  nearest,
  notInTable,
  over,
  type OverRow,
  type OverTable,
  type Product,
} from '../tracker/trade/index.ts';
import { tradeRulesOf } from '../shell/trade-rules.ts';
import { verdictWords } from '../views/format/index.ts';
import { overRowJson } from './json/over-json.ts';
import type { OverJson } from './json-shapes/index.ts';
import { failure, isFailure, type Answer, type CommandFile, type Failure } from './line/command.ts';
import { match, type Named } from './names/match.ts';
import { readLibrary } from './read/find-schedule.ts';

export const overWhat: CommandFile = {
  takes: '[below] [above]',
  help: 'Takes product classes or products: recoat over oil-stain "nitrocellulose lacquer". With one of them the rows on what goes over it; with none the whole table. The label comes first.',
  run: async (room, given) => {
    const { over: table } = await tradeRulesOf(room.world);
    const [below, above] = [given.maybe('below'), given.maybe('above')];
    if (below === null) return rowsAnswer(table.rows, null);
    const { products } = await readLibrary(room);
    const names = namesOf(table, products);
    const under = classMeant(below, names);
    if (isFailure(under)) return under;
    if (above === null) {
      const rows = table.rows.filter((row) => row.below.includes(under.productClass));
      return rows.length === 0 ? unknownPair(under, null) : rowsAnswer(rows, under.productClass);
    }
    const upper = classMeant(above, names);
    if (isFailure(upper)) return upper;
    const { row } = over(table, under.productClass, upper.productClass);
    return row === null ? unknownPair(under, upper) : pairAnswer(under, upper, row);
  },
};

type Meant = { readonly productClass: string; readonly nearest: readonly string[] };

/** Classes by their own names and by those of the products that are of them. */
function namesOf(
  table: OverTable,
  products: Readonly<Record<string, Product>>,
): readonly Named<string>[] {
  const all = Object.values(products);
  return [...new Set([...classesOf(table), ...all.map((each) => each.productClass)])].map(
    (productClass) => ({
      thing: productClass,
      called: productClass,
      name: productClass,
      names: [
        productClass,
        ...all
          .filter((product) => product.productClass === productClass)
          .flatMap(({ id, name }) => [id, name]),
      ],
    }),
  );
}

/** A class, also one that nobody knows: of that the table says nothing, and what was meant perhaps is told. */
function classMeant(typed: string, names: readonly Named<string>[]): Meant | Failure {
  const found = match(typed, names, { not: 'Not found', what: 'product class' });
  if (!isFailure(found)) return { productClass: found.found, nearest: [] };
  if (found.several)
    return failure('unknown', found.says.replace(', or the number', ''), found.nearest);
  const near =
    found.nearest.length > 0
      ? found.nearest
      : nearest(
          typed,
          names.map(({ name }) => name),
        );
  return { productClass: typed, nearest: near };
}

function pairAnswer(below: Meant, above: Meant, row: OverRow): Answer {
  return {
    lines: () => [
      `${above.productClass} over ${below.productClass}: ${verdictWords(row)}`,
      `  why: ${row.why}`,
      ...(row.instead === undefined ? [] : [`  ${doWord(row)}: ${row.instead}`]),
      `  source: ${row.source}. The label comes first.`,
    ],
    json: (): OverJson => ({
      below: below.productClass,
      above: above.productClass,
      verdict: row.verdict,
      says: null,
      rows: [overRowJson(row)],
    }),
  };
}

const doWord = ({ verdict }: OverRow): string => (verdict === 'no' ? 'instead' : 'do');

function unknownPair(below: Meant, above: Meant | null): Answer {
  const near = [...below.nearest, ...(above?.nearest ?? [])];
  const pair =
    above === null
      ? `over ${below.productClass}`
      : `${above.productClass} over ${below.productClass}`;
  return {
    lines: () => [
      `${pair}: ${notInTable}`,
      ...(near.length === 0 ? [] : [`  nearest: ${near.join(', ')}`]),
    ],
    json: (): OverJson => ({
      below: below.productClass,
      above: above?.productClass ?? null,
      verdict: null,
      says: notInTable,
      rows: [],
    }),
  };
}

function rowsAnswer(rows: readonly OverRow[], below: string | null): Answer {
  return {
    lines: () => [
      ...rows.flatMap((row) => [
        `${row.called.above} over ${below ?? row.called.below}: ${verdictWords(row)}`,
        `    ${row.why}${row.instead === undefined ? '' : `. ${doWord(row)}: ${row.instead}`}`,
      ]),
      `The first row that fits counts; what no row fits is ${notInTable}. The label comes first.`,
    ],
    json: (): OverJson => ({
      below,
      above: null,
      verdict: null,
      says: null,
      rows: rows.map(overRowJson),
    }),
  };
}
