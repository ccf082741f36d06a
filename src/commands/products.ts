import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { scheduleFolders } from '../shell/port.ts';
import type { Product } from '../tracker/trade/index.ts';
import type { CopiedJson, ProductsJson } from './json-shapes/index.ts';
import { failure, isFailure, type CommandFile, type Failure } from './line/command.ts';
import { record } from './line/record.ts';
import type { Room } from './line/room.ts';
import { findOnBench } from './names/find-piece.ts';
import { findStep } from './names/find-step.ts';
import { findNamed, namedById } from './names/match.ts';
import { readLibrary } from './read/find-schedule.ts';
import { inColumns } from './text/columns.ts';
import { writeOwn } from './write-own.ts';

const idForm = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** `recoat product`: what there is to be put on. */
export const product: CommandFile = {
  help: 'Generic classes, and your own cans from files in the folder "schedules" beside your data.',
  run: async (room) => {
    const all = sorted((await readLibrary(room)).products);
    return {
      lines: () =>
        inColumns(
          all.map(({ id, name, can }) => [
            id,
            can?.batch === undefined ? name : `${name}, batch ${can.batch}`,
          ]),
        ),
      json: (): ProductsJson => ({
        products: all.map(({ id, name, productClass, can }) => ({
          id,
          name,
          class: productClass,
          batch: can?.batch ?? null,
          openedOn: can?.openedOn ?? null,
          keepsTill: can?.keepsTill ?? null,
        })),
      }),
    };
  },
};

const sorted = (products: Readonly<Record<string, Product>>): readonly Product[] =>
  Object.values(products).sort((a, b) => (a.id < b.id ? -1 : 1));

async function findProduct(typed: string, not: string, room: Room): Promise<Product | Failure> {
  return findNamed(typed, sorted((await readLibrary(room)).products).map(namedById), {
    not,
    what: 'product',
  });
}

export const useProduct: CommandFile = {
  takes: '<piece> <step> <product...>',
  help: 'For a step that is not begun. The piece takes its own copy: what you change in your file later changes no piece.',
  run: async (room, given) => {
    const not = 'Not changed';
    const chosen = await findProduct(given.sentence('product'), not, room);
    if (isFailure(chosen)) return chosen;
    return record(room, (look) => {
      const piece = findOnBench(given.word('piece'), look.bench, not);
      if (isFailure(piece)) return piece;
      const step = findStep(given.word('step'), piece, not);
      if (isFailure(step)) return step;
      return {
        intents: [{ do: 'use product', piece: piece.id, step: step.id, product: chosen }],
      };
    });
  },
};

export const productCopy: CommandFile = {
  takes: '<class> <new-id>',
  help: "Writes a file of your own with the times of a generic class, to be changed to your label's: batch, days and windows.",
  run: async (room, given) => {
    const not = 'Not copied';
    const newId = given.word('new-id');
    if (!idForm.test(newId))
      return failure(
        'usage',
        `${not}: "${newId}" is no id. Write small letters, figures and dashes: my-varnish.`,
      );
    const original = await findProduct(given.word('class'), not, room);
    if (isFailure(original)) return original;
    const { templates, own } = scheduleFolders(room.world, room.folder);
    const text = await copyOf(original.id, newId, templates);
    if (text === null || own === null)
      return failure(
        'refused',
        `${not}: ${original.id} is in a file of your own already. Copy it there.`,
      );
    const file = join(own, `${newId}.yaml`);
    const bad = await writeOwn(file, text);
    if (bad !== null) return bad;
    return {
      lines: () => [
        `copied to ${file}`,
        "Write your label's times into it, then: recoat product check FILE",
      ],
      json: (): CopiedJson => ({ copied: original.id, file }),
    };
  },
};

/** The text of a file of one's own that holds one product of the program's; null where it has none of that id. */
async function copyOf(id: string, newId: string, templates: string): Promise<string | null> {
  // The YAML parser is loaded only here.
  const { productCopyText } = await import('../persist/schedules/parsing.ts');
  const folder = join(templates, 'products');
  const schema = pathToFileURL(join(templates, 'schema', 'products.json')).href;
  for (const name of (await readdir(folder)).filter((each) => each.endsWith('.yaml'))) {
    const text = productCopyText(await readFile(join(folder, name), 'utf8'), id, newId, schema);
    if (text !== null) return text;
  }
  return null;
}
