import type { Can, Product } from '../../tracker/trade/index.ts';
import type { WindowRule } from '../../tracker/windows/index.ts';
import type { Provenance } from './library-types.ts';
import { makeCoat } from './make-coat.ts';
import { makeWindow, type WindowsByWood } from './make-window.ts';
import { optional } from './stretches.ts';
import type { ProductForm } from './product-form.ts';
import type { rowSource } from './window-form.ts';
import type * as z from 'zod/mini';

/** A product with the sources of its windows, by window id. */
export type SourcedProduct = {
  readonly product: Product;
  readonly sources: Readonly<Record<string, Provenance>>;
};

/** @param named publications by the short names that the file uses */
export function makeProduct(
  id: string,
  form: ProductForm,
  named: Readonly<Record<string, string>>,
): SourcedProduct {
  const around = { chemistry: form.dries, statedFor: form['stated for'] };
  const coat = form.coat === undefined ? [] : makeCoat(form.coat, around, form['acid hardens it']);
  const written = Object.entries(form.windows ?? {});
  const others = joinByWood(written.map(([windowId, row]) => makeWindow(windowId, row, around)));
  const sources: Record<string, Provenance> = {};
  for (const [name, row] of Object.entries(form.coat ?? {})) {
    sources[name.replaceAll(' ', '-')] = provenance(row.source, form.source, named);
  }
  for (const [name, row] of written) sources[name] = provenance(row.source, form.source, named);
  const air = form['needs air'];
  const can: Can = optional({
    batch: form.batch,
    openedOn: form['opened on'],
    keepsTill: form['shelf life'],
    onceOpened: form['once opened'],
  });
  const product: Product = {
    id,
    name: form.name,
    productClass: form.class,
    chemistry: form.dries,
    statedFor: form['stated for'],
    windows: [...coat, ...others.any],
    ...(air === undefined
      ? {}
      : {
          needsAir: {
            ...optional({ fromC: air.from, toC: air.to, rhUpTo: air['rh up to'] }),
            source: named[air.source ?? form.source] ?? '',
          },
        }),
    cautions: form.cautions ?? [],
    ...(form.deadly === undefined ? {} : { deadly: form.deadly }),
    ...(form['rags self-heat'] === undefined ? {} : { selfHeatingRags: form['rags self-heat'] }),
    ...(Object.keys(can).length === 0 ? {} : { can }),
    ...(others.soft.length + others.hard.length > 0
      ? { byWood: { soft: others.soft, hard: others.hard } }
      : {}),
  };
  return { product, sources };
}

export const joinByWood = (all: readonly WindowsByWood[]): WindowsByWood => ({
  any: all.flatMap((each) => each.any),
  soft: all.flatMap((each) => each.soft),
  hard: all.flatMap((each) => each.hard),
});

function provenance(
  row: z.infer<typeof rowSource> | undefined,
  usual: string,
  named: Readonly<Record<string, string>>,
): Provenance {
  const words = (name: string | undefined): string => named[name ?? usual] ?? '';
  return typeof row === 'object'
    ? { opens: words(row.opens), closes: words(row.closes) }
    : { opens: words(row), closes: words(row) };
}

/** Every window a product can start, whatever the wood. */
export const windowsOf = (product: Product): readonly WindowRule[] => [
  ...product.windows,
  ...(product.byWood?.soft ?? []),
  ...(product.byWood?.hard ?? []),
];
