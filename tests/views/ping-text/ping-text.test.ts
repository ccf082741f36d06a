import { describe, expect, it, test } from 'vitest';
import { readScheduleFolders } from '../../../src/persist/schedules/index.ts';
import { sendingsDue, type Sending } from '../../../src/tracker/bench/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { pingsOf, stampEvents, workOutWindow } from '../../../src/tracker/windows/index.ts';
import { pingText } from '../../../src/views/ping-text/index.ts';
import { shippedProduct } from '../../support/shipped.ts';
import {
  afternoon,
  at,
  bleach,
  Facts,
  recoat,
  sense,
  shop,
  step,
  tense,
} from '../support/bench-of.ts';

/** What is due at an instant of all that has fallen due after `seen`. */
function dueAfter(facts: Facts, seen: string, now: string): readonly Sending[] {
  const bench = facts.bench();
  const claimed = sendingsDue(bench, new Set(), at(seen), sense).flatMap(({ settles }) => settles);
  return sendingsDue(bench, new Set(claimed), at(now), sense);
}

/** The one sending that goes out at an instant, in words. The second before, nothing was due any more. */
function textAt(facts: Facts, now: string, clock: typeof shop = shop) {
  const sendings = dueAfter(facts, secondBefore(now), now);
  expect(sendings).toHaveLength(1);
  return pingText(sendings[0] as Sending, at(now), clock, 0);
}

function secondBefore(when: string): string {
  const before = new Date(at(when) - 1000).toISOString();
  return `${before.slice(5, 10)} ${before.slice(11, 19)}`;
}

describe('a ping of a dwell', () => {
  it('counts down to its moment, with the clock time, what is lost and the gear', () => {
    expect(textAt(tense(), '12-03 16:37:00')).toEqual({
      title: '2 Wall shelf: B on at 16:40, in 3 min',
      body: 'Open to 16:42. Late: rinse, dry, start over. Gloves, goggles.',
      text: '2 Wall shelf: B on at 16:40, in 3 min. Open to 16:42. Late: rinse, dry, start over. Gloves, goggles.',
    });
    expect(textAt(tense(), '12-03 16:39:00').title).toBe('2 Wall shelf: B on at 16:40, in 1 min');
  });

  it('says how long is left while it is open, a second late or not', () => {
    const open = '2 Wall shelf: B on, by 16:42, 2 min left';
    expect(textAt(tense(), '12-03 16:40:00').title).toBe(open);
    const [sending] = dueAfter(tense(), '12-03 16:39:59', '12-03 16:40:01');
    expect(pingText(sending as Sending, at('12-03 16:40:01'), shop, 0).title).toBe(open);
    expect(textAt(tense(), '12-03 16:41:00').title).toBe(
      '2 Wall shelf: B on, by 16:42, 1 min left',
    );
  });

  it('names the rescue once it is too late', () => {
    expect(textAt(tense(), '12-03 16:42:00')).toMatchObject({
      title: '2 Wall shelf: B on, late since 16:42',
      body: 'Rinse, dry, start over. Gloves, goggles.',
    });
  });
});

describe('a ping of a coat, of glue, of a gap', () => {
  it.each([
    ['24 15:10', '3 Beech stool: try it, till 23:00, 7 h 50 left', 'After 23:00 scuff 320 first.'],
    ['24 22:30', '3 Beech stool: try it, till 23:00, 30 min left', 'After 23:00 scuff 320 first.'],
    ['24 18:30', '2 Plant stand: scuff 320 first, closed 18:30', ''],
    ['24 15:20', '4 Side table: clamps off since 15:20', 'Nothing lost by waiting.'],
    ['24 09:40', '5 Garden bench: keep off till Wed 08:55', 'Recoating now wrinkles it.'],
  ])('at %s', (when, title, body) => {
    expect(textAt(afternoon(), when)).toMatchObject({ title, body });
  });

  it("follows the shop's clock", () => {
    expect(textAt(afternoon(), '24 15:10', { ...shop, hours: '12' }).title).toBe(
      '3 Beech stool: try it, till 11:00 pm, 7 h 50 left',
    );
  });
});

it('asks about what a hold waits for', () => {
  expect(textAt(afternoon(), '26 09:00').text).toBe('8 Hat rack: ask about hinge plates');
});

describe('an odd timer', () => {
  const timer = (piece: string | null) =>
    new Facts()
      .piece('24 09:00', 4, 'Side table', [step('glue', 'glue-up')])
      .tell('24 14:00', 'timer-started', { timer: 't', piece, label: 'clamps', ms: 35 * minute });

  it('is told by its label', () => {
    expect(textAt(timer(null), '24 14:35').title).toBe('Odd timer: clamps, timer up since 14:35');
  });

  it('is told with the piece that it belongs to', () => {
    expect(textAt(timer('p4'), '24 14:35').title).toBe(
      '4 Side table: clamps, timer up since 14:35',
    );
  });
});

// The stages print-free, dry-hard and dry to handle are those of ASTM D1640 (from memory).
test.each([
  ['scuff', 'Paper must powder, not gum.'],
  ['turn over', 'Turn it if cloth pressed on leaves no print.'],
  ['rub out', 'Rub it out if a hard thumb leaves no mark.'],
  ['refit', 'Refit if a thumb pressed and turned leaves no mark.'],
] as const)('a coat that is to be tried for %s says how', (milestone, says) => {
  const coat = { ...recoat(2 * 60 * minute, null), milestone };
  const facts = new Facts()
    .piece('24 09:00', 3, 'Beech stool', [
      step('coat', 'coat', { windows: [coat] }),
      step('next', 'next', { needs: [milestone] }),
    ])
    .done('24 10:00', 3, 'coat');
  expect(textAt(facts, '24 12:00').text).toContain(says);
});

describe('at first glance', () => {
  const named = (name: string, number = 2) =>
    new Facts()
      .piece('12-01 09:00', number, name, [step('bleach', 'bleach', { windows: [bleach] })])
      .stamp('12-03 16:30', number, 'bleach', 'first-stroke', { agent: 'A' });
  const titleFor = (name: string, number = 2) =>
    textAt(named(name, number), '12-03 16:40:00').title;

  it('shows number, name and verb in 30 characters', () => {
    for (const name of ['Oak', 'Grandfather clock from the hall', 'Donaudampfschifffahrtskommode'])
      expect(titleFor(name, 12).slice(0, 30)).toContain('B on');
  });

  it('cuts a long name between its words', () => {
    expect(titleFor('Grandfather clock from the hall')).toMatch(/^2 Grandfather clock: B on, /);
  });

  it('cuts a long word where it must', () => {
    expect(titleFor('Donaudampfschifffahrtskommode')).toMatch(
      /^2 Donaudampfschifffahrts?~: B on, /,
    );
  });

  it('does not take a full stop in a name for the end of the sentence', () => {
    const { title, text } = textAt(named('St. Ives chair'), '12-03 16:40:00');
    expect(text.split(/(?<=\.) /)[0]).toBe(`${title}.`);
  });

  it('names the part or the section', () => {
    const parts = new Facts()
      .piece('24 09:00', 3, 'Beech stool', [
        step('coat', 'coat', { windows: [recoat(2 * 60 * minute, null)] }),
        step('next', 'next', { needs: ['recoat'] }),
      ])
      .tell('24 09:01', 'parts-named', {
        piece: 'p3',
        parts: [
          { id: 'a', name: 'legs' },
          { id: 'b', name: 'seat' },
        ],
      })
      .stamp('24 10:00', 3, 'coat', 'first-stroke', { part: 'b' })
      .done('24 10:00', 3, 'coat', 'b');
    expect(textAt(parts, '24 12:00').title).toBe('3 Beech stool, seat: try it since 12:00');
  });

  it('never cuts the number of a section', () => {
    const stained = (name: string) =>
      new Facts()
        .piece(
          '24 09:00',
          2,
          name,
          [step('s', 'stain', { product: 'oil-stain' })],
          [shippedProduct('oil-stain')],
        )
        .stamp('24 10:00', 2, 's', 'section-on', { section: 4 });
    const titleOf = (name: string) => textAt(stained(name), '24 10:03').title;
    expect(titleOf('Box')).toMatch(/^2 Box, section 4: wipe off, by 10:15/);
    expect(titleOf('Pine box')).toMatch(/^2 Pine, section 4: wipe off, by 10:15/);
    expect(titleOf('Sideboard')).toMatch(/^2 Sideb.+, section 4: wipe off, by 10:15/);
  });
});

it('tells several at once in one text, worst first, and what is a moment away with them', () => {
  const both = new Facts()
    .piece('12-01 09:00', 2, 'Wall shelf', [step('bleach', 'bleach', { windows: [bleach] })])
    .piece('12-01 09:01', 3, 'Book rack', [
      step('coat', 'coat', { windows: [recoat(120 * minute, null)] }),
      step('next', 'next', { needs: ['recoat'] }),
    ])
    .stamp('12-03 16:30', 2, 'bleach', 'first-stroke', { agent: 'A' })
    .done('12-03 14:40:20', 3, 'coat');
  expect(textAt(both, '12-03 16:40:00')).toEqual({
    title: '2 Wall shelf: B on, by 16:42, 2 min left',
    body: 'Late: rinse, dry, start over. Gloves, goggles. 3 Book rack: try it at 16:40, in 20 s.',
    text: '2 Wall shelf: B on, by 16:42, 2 min left. Late: rinse, dry, start over. Gloves, goggles. 3 Book rack: try it at 16:40, in 20 s.',
  });
});

it('tells the nearest minute from half a minute on, and seconds below', () => {
  const body = (last: string): string =>
    textAt(
      new Facts()
        .piece('12-01 09:00', 2, 'Wall shelf', [step('bleach', 'bleach', { windows: [bleach] })])
        .piece('12-01 09:01', 3, 'Book rack', [
          step('coat', 'coat', { windows: [recoat(120 * minute, null)] }),
          step('next', 'next', { needs: ['recoat'] }),
        ])
        .stamp('12-03 16:30', 2, 'bleach', 'first-stroke', { agent: 'A' })
        .done(last, 3, 'coat'),
      '12-03 16:40:00',
    ).body;
  expect(body('12-03 14:40:29')).toContain('3 Book rack: try it at 16:40, in 29 s.');
  expect(body('12-03 14:40:40')).toContain('3 Book rack: try it at 16:40, in 1 min.');
});

it('says what the surface must stand when it may be tried, and not again before it closes', () => {
  const scuffed = new Facts()
    .piece('24 09:00', 2, 'Wall shelf', [
      step('coat', 'coat', {
        windows: [{ ...recoat(120 * minute, 720 * minute), id: 'scuff', milestone: 'scuff' }],
      }),
      step('scuff', 'scuff', { needs: ['scuff'] }),
    ])
    .stamp('24 09:30', 2, 'coat', 'first-stroke')
    .done('24 10:00', 2, 'coat');
  expect(textAt(scuffed, '24 12:00').body).toContain('Paper must powder, not gum.');
  expect(textAt(scuffed, '24 21:00').body).not.toContain('Paper must powder');
});

describe('what was missed', () => {
  it('is told as one summary after a sleep, worst first, saying how long ago', () => {
    const [sending] = dueAfter(afternoon(), '24 15:00', '24 20:10');
    const words = pingText(sending as Sending, at('24 20:10'), shop, 0, at('24 15:02'));
    expect(words.title).toBe('Asleep or stopped 15:02 to 20:10');
    expect(words.body).toBe(
      'Worst: 2 Plant stand: scuff 320 first, closed 18:30, 1 h 40 ago. ' +
        '3 Beech stool: try it, till 23:00, 2 h 50 left, opened 5 h 00 ago. ' +
        '4 Side table: clamps off since 15:20, 4 h 50 ago.',
    );
    expect(words.text).toBe(`${words.title}. ${words.body}`);
  });

  it('speaks of no sleep where there was none: what began the window was told later than it was', () => {
    const [sending] = dueAfter(tense(), '12-03 16:38:00', '12-03 17:10');
    expect(pingText(sending as Sending, at('12-03 17:10'), shop, 0).text).toBe(
      '2 Wall shelf: B on, late since 16:42, 28 min ago: rinse, dry, start over',
    );
    const [several] = dueAfter(afternoon(), '24 15:00', '24 20:10');
    const words = pingText(several as Sending, at('24 20:10'), shop, 0);
    expect(words.title).toBe('2 Plant stand: scuff 320 first, closed 18:30, 1 h 40 ago');
    expect(words.body).toMatch(/^3 Beech stool: .* ago\. 4 Side table: .* ago\.$/);
  });

  it('says so where the program was closed', () => {
    const [sending] = dueAfter(afternoon(), '24 15:00', '25 07:10');
    const words = pingText(sending as Sending, at('25 07:10'), shop, at('25 07:10'));
    expect(words.title).toBe('While recoat was closed');
    expect(words.text).toMatch(
      /^While recoat was closed, worst: 2 Plant stand: scuff 320 first, closed Tue 18:30, 12 h ago\. /,
    );
    const [one] = dueAfter(tense(), '12-03 16:38:00', '12-03 17:10');
    expect(pingText(one as Sending, at('12-03 17:10'), shop, at('12-03 17:09')).text).toBe(
      'While recoat was closed: 2 Wall shelf: B on, late since 16:42, 28 min ago: rinse, dry, start over.',
    );
  });

  it('says so too where only some of it fell due while it was closed, and the rest in a sleep since', () => {
    const [sending] = dueAfter(afternoon(), '24 15:00', '24 20:10');
    // The stool could be tried from 15:10 on; the program was opened at 16:00, and slept.
    const words = pingText(
      sending as Sending,
      at('24 20:10'),
      shop,
      at('24 16:00'),
      at('24 16:01'),
    );
    expect(words.title).toBe('While recoat was closed');
  });

  it('says how long something has been open, not how long ago its last ping was due', () => {
    const [sending] = dueAfter(afternoon(), '24 19:00', '24 22:50');
    expect(pingText(sending as Sending, at('24 22:50'), shop, 0, at('24 19:00')).body).toBe(
      '3 Beech stool: try it, till 23:00, 10 min left, opened 7 h 40 ago.',
    );
  });

  it('counts hours up to two days', () => {
    const [sending] = dueAfter(afternoon(), '24 15:00', '26 00:40');
    expect(pingText(sending as Sending, at('26 00:40'), shop, 0).text).toContain(
      'closed Tue 18:30, 30 h ago',
    );
  });

  it('says since when something is to be kept off', () => {
    const [sending] = dueAfter(afternoon(), '24 09:00', '24 10:40');
    expect(pingText(sending as Sending, at('24 10:40'), shop, at('24 10:39')).text).toBe(
      'While recoat was closed: 5 Garden bench: keep off till Wed 08:55, began 60 min ago.',
    );
  });

  it('asks late what a hold was to ask, and counts in days', () => {
    const [hold] = dueAfter(afternoon(), '25 23:00', '28 09:00');
    expect(pingText(hold as Sending, at('28 09:00'), shop, 0, at('25 23:00')).body).toBe(
      '8 Hat rack: ask about hinge plates.',
    );
    const [old] = dueAfter(afternoon(), '24 15:00', '27 18:40');
    expect(pingText(old as Sending, at('27 18:40'), shop, 0, at('25 23:00')).body).toContain(
      'closed Tue 18:30, 3 days ago',
    );
  });

  it('does not run on for ever', () => {
    const many = new Facts();
    for (let number = 1; number <= 12; number++)
      many
        .piece('24 09:00', number, `Chair ${number}`, [
          step('coat', 'coat', { windows: [recoat(60 * minute, null)] }),
          step('next', 'next', { needs: ['recoat'] }),
        ])
        .done('24 10:00', number, 'coat');
    const [sending] = dueAfter(many, '24 10:30', '24 11:30');
    const { body } = pingText(sending as Sending, at('24 11:30'), shop, 0, at('24 10:30'));
    expect(body).toMatch(/^Worst: 1 Chair 1: /);
    expect(body).toMatch(/And 5 more on the bench\.$/);
  });
});

describe('pings of every window that the program brings', async () => {
  const { products } = await readScheduleFolders({
    built: null,
    templates: 'templates',
    own: null,
  });
  const begun = at('24 08:00');
  const windows = Object.values(products).flatMap(({ id, windows: any, byWood }) =>
    [...any, ...(byWood?.soft ?? []), ...(byWood?.hard ?? [])].map((rule) => {
      const stamps = [null, 'A', 'B'].flatMap((agent) =>
        stampEvents.map((event) => ({ event, agent, at: begun, fact: 'f' })),
      );
      const subject = { pieceId: 'p1', stepId: 's', partId: null, pass: 1, section: null };
      const happenings = { stamps, checks: [], assumedStart: null };
      return {
        id,
        window: workOutWindow({ key: `${id}/${rule.id}`, rule, subject }, happenings, sense),
      };
    }),
  );
  const piece = [
    ...new Facts().piece('24 08:00', 12, 'Chest of drawers', []).bench().pieces.values(),
  ][0];
  if (piece === undefined) throw new Error('no piece');
  const texts = windows.flatMap(({ id, window }) =>
    (window === null ? [] : pingsOf(window)).map((each) => {
      const ping = { ...each, about: 'window' as const, piece, timer: null, pot: null };
      const sending = { pings: [ping], settles: [], loud: each.loud, lateBy: 0 };
      return { id: `${id}, ${each.key}`, words: pingText(sending, each.at, shop, 0) };
    }),
  );

  it('there are many', () => {
    expect(texts.length).toBeGreaterThan(200);
  });

  it('show number and verb at first glance and keep the first sentence short', () => {
    for (const { id, words } of texts) {
      expect(words.title, id).toMatch(/^12 Chest[ a-z]*: \S/);
      expect(words.title.indexOf(': '), id).toBeLessThan(24);
      expect(words.title.length, id).toBeLessThan(70);
      expect(words.text.split(/(?<=\.) /)[0]?.replace(/\.$/, ''), id).toBe(words.title);
    }
  });

  it('never call anything ready or safe, and leave nothing unsaid', () => {
    for (const { id, words } of texts) {
      expect(words.text, id).not.toMatch(/\b(ready|safe|undefined|null|NaN)\b/i);
      expect(words.text, id).not.toMatch(/[.,:;]{2}| [.,]|: *$/);
    }
  });
});
