import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { factsText, readDocument } from '../../src/persist/file/document.ts';

const steps = Array.from({ length: 20 }, (_, index) => ({
  id: `s${index}`,
  name: `step ${index}`,
}));
const clear = {
  id: 'clear',
  name: 'clear coat',
  windows: Array.from({ length: 9 }, (_, index) => index),
};

const added = (piece: string, own = steps) => ({
  id: `${piece}.1`,
  kind: 'piece-added',
  body: { piece, steps: own, products: { clear } },
});
const note = { id: 'n.1', kind: 'note-written', body: { piece: 'a', text: 'steps and products' } };

const read = (text: string) => readDocument(Buffer.from(text), 'bench');

describe('values that several pieces have alike', () => {
  it('stand in the file once, and in every piece when it is read', () => {
    const facts = [added('a'), note, added('b'), added('c')];
    const text = factsText(1, facts);
    expect(text.split('"step 19"')).toHaveLength(2);
    expect(text.split('clear coat')).toHaveLength(2);
    expect(read(text)).toMatchObject({ vouched: true, contents: facts });
  });

  it('are told apart where they differ', () => {
    const other = [{ id: 's0', name: 'another' }];
    const facts = [added('a'), added('b', other)];
    expect(read(factsText(1, facts))).toMatchObject({ contents: facts });
  });

  it('are told apart also where their keys are the same', () => {
    // Two words of one length and one CRC-32, so that lists that differ in them alone have one key too.
    const named = (name: string) => [{ id: 's0', name }];
    expect(crc32('plumless')).toBe(crc32('buckeroo'));
    const facts = [added('a', named('plumless')), added('b', named('buckeroo'))];
    expect(read(factsText(1, facts))).toMatchObject({ vouched: true, contents: facts });
  });

  it('are still one object after reading, so that the memory holds them once too', () => {
    const document = read(factsText(1, [added('a'), added('b')]));
    if (!('contents' in document)) throw new Error(document.says);
    const [first, second] = document.contents as ReturnType<typeof added>[];
    expect(first?.body.steps).toBe(second?.body.steps);
  });

  it('leave no trace in a file without pieces', () => {
    expect(factsText(1, [note])).not.toContain('shared');
  });

  it('that are missing leave their reference, which no schema takes for steps', () => {
    const text = factsText(1, [added('a')]).replace(/"shared":\{[^]*\n\}/, '"shared":{}');
    const document = read(text);
    expect(document).toMatchObject({
      vouched: false,
      contents: [{ body: { steps: { shared: expect.any(String) as string } } }],
    });
  });
});
