import { hour, minute, type Milliseconds } from '../../../src/tracker/time/index.ts';
import type {
  Edge,
  Milestone,
  Span,
  StampChoice,
  StampEvent,
  Stretch,
  WindowRule,
} from '../../../src/tracker/windows/index.ts';

/** Small windows of every kind that the bench knows. All times: common practice, no source. */

export const first = (...events: StampEvent[]): StampChoice => ({ events, which: 'first' });
export const last = (...events: StampEvent[]): StampChoice => ({ events, which: 'last' });
export const of = (agent: string, choice: StampChoice): StampChoice => ({ ...choice, agent });
export const assumed = (choice: StampChoice): StampChoice => ({ ...choice, assume: true });

export const grows = (ms: Milliseconds): Span => ({ ms, may: 'grow' });
export const shrinks = (ms: Milliseconds): Span => ({ ms, may: 'shrink' });
export const after = (stamp: StampChoice, plus: Span): Edge => ({ kind: 'stamp', stamp, plus });
export const latestOf = (...of: Edge[]): Edge => ({ kind: 'latest', of });
export const earliestOf = (...of: Edge[]): Edge => ({ kind: 'earliest', of });
export const foundReady: Edge = { kind: 'check', finding: 'ready' };
export const foundNotYet = (adds: Milliseconds): Edge => ({
  kind: 'check',
  finding: 'not yet',
  plus: { ms: adds },
});

export const wait: Stretch = { meaning: 'wait', loss: 'costs nothing' };
export const go = (from: Edge): Stretch => ({ from, meaning: 'go', loss: 'costs nothing' });
export const scuffFirst = (from: Edge): Stretch => ({
  from,
  meaning: 'go after work',
  loss: 'costs work',
  says: 'scuff 320 first',
});
export const spoils = (from: Edge, says: string): Stretch => ({
  from,
  meaning: 'late',
  loss: 'spoils',
  says,
});
export const keepOff = (from: Edge): Stretch => ({
  from,
  meaning: 'keep off',
  loss: 'costs work',
  says: 'recoating now lifts it',
});

const strokeOn = first('first-stroke');
const strokeOff = last('last-stroke');

/** B goes on while A is wet: from 10 min after A's first stroke, not after 20. */
export const bleachB: WindowRule = {
  id: 'b-on',
  kind: 'chemical',
  verb: 'B on',
  scope: 'step',
  begins: of('A', strokeOn),
  stretches: [
    wait,
    go(after(of('A', strokeOn), grows(10 * minute))),
    spoils(after(of('A', strokeOn), shrinks(20 * minute)), 'A dry: rinse, dry, start over'),
  ],
  closedBy: { by: 'stamp', stamp: of('B', strokeOn) },
  gear: 'gloves, goggles',
};

/** Dry twelve hours after the last of B. */
export const bleachDry: WindowRule = {
  id: 'dry',
  kind: 'coat',
  verb: 'rinse',
  milestone: 'dry',
  scope: 'step',
  begins: assumed(of('B', strokeOn)),
  stretches: [wait, go(latestOf(after(strokeOff, grows(12 * hour)), foundNotYet(hour)))],
  closedBy: { by: 'needing step' },
  notYetAdds: hour,
};

/** A coat's milestone: opens so long after the last stroke, closes so long after the first. */
export function milestone(
  name: Milestone,
  opens: Milliseconds,
  more: {
    readonly closes?: Milliseconds;
    readonly adds?: Milliseconds;
    readonly touch?: boolean;
  } = {},
): WindowRule {
  const label = after(strokeOff, grows(opens));
  const tried = more.touch === true ? earliestOf(label, foundReady) : label;
  const opening = more.adds === undefined ? tried : latestOf(tried, foundNotYet(more.adds));
  return {
    id: name.replaceAll(' ', '-'),
    kind: name === 'light use' || name === 'full cure' ? 'cure' : 'coat',
    verb: name === 'recoat' ? 'next coat' : name,
    milestone: name,
    scope: 'pass',
    begins: assumed(strokeOn),
    stretches: [
      wait,
      go(opening),
      ...(more.closes === undefined
        ? []
        : [scuffFirst(after(assumed(strokeOn), shrinks(more.closes)))]),
    ],
    closedBy: {
      by:
        name === 'dust-free' || name === 'light use' || name === 'full cure'
          ? 'nothing'
          : 'needing step',
    },
    ...(more.adds === undefined ? {} : { notYetAdds: more.adds }),
  };
}

/** A waterborne clear coat with its milestones. */
export const clearCoat: readonly WindowRule[] = [
  milestone('dust-free', 30 * minute),
  milestone('scuff', 2 * hour, { adds: 30 * minute, touch: true }),
  milestone('recoat', 2 * hour, { closes: 24 * hour, adds: 30 * minute, touch: true }),
  milestone('turn over', 8 * hour, { adds: hour }),
  milestone('light use', 24 * hour),
  milestone('full cure', 21 * 24 * hour),
];

/** Stain: each section is wiped off between 5 and 15 minutes after it went on. */
export const wipeOff: WindowRule = {
  id: 'wipe-off',
  kind: 'chemical',
  verb: 'wipe off',
  scope: 'section',
  begins: first('section-on'),
  stretches: [
    wait,
    go(after(first('section-on'), grows(5 * minute))),
    spoils(
      after(first('section-on'), shrinks(15 * minute)),
      'it has grabbed: wet it again, wipe at once',
    ),
  ],
  closedBy: { by: 'stamp', stamp: first('section-off') },
};

/** Aerosol: the next pass within the hour or after two days, not between. */
export const nextPass: WindowRule = {
  id: 'next-pass',
  kind: 'coat',
  verb: 'next pass',
  scope: 'pass',
  begins: strokeOn,
  stretches: [
    wait,
    go(after(strokeOff, grows(5 * minute))),
    keepOff(after(strokeOn, shrinks(hour))),
    go(after(strokeOff, grows(48 * hour))),
  ],
  closedBy: { by: 'next pass' },
};

/** The same gap before the next coat. */
export const aerosolRecoat: WindowRule = {
  ...nextPass,
  id: 'recoat',
  verb: 'next coat',
  milestone: 'recoat',
  begins: assumed(strokeOn),
  stretches: [
    wait,
    go(after(strokeOff, grows(5 * minute))),
    keepOff(after(assumed(strokeOn), shrinks(hour))),
    go(after(strokeOff, grows(48 * hour))),
  ],
  closedBy: { by: 'needing step' },
};

/** Glue skins over after five minutes. */
export const assemble: WindowRule = {
  id: 'assemble',
  kind: 'glue',
  verb: 'in clamps',
  scope: 'step',
  begins: strokeOn,
  stretches: [
    { meaning: 'go', loss: 'costs nothing' },
    spoils(after(strokeOn, shrinks(5 * minute)), 'skinned over: wipe off, glue again'),
  ],
  closedBy: { by: 'stamp', stamp: first('in-clamps') },
};

/** Clamps may come off half an hour after they went on; nothing is lost by leaving them till morning. */
export const clampsOff: WindowRule = {
  id: 'clamps-off',
  kind: 'glue',
  verb: 'clamps off',
  milestone: 'clamps off',
  scope: 'step',
  begins: first('in-clamps', 'last-stroke'),
  stretches: [wait, go(after(first('in-clamps', 'last-stroke'), grows(30 * minute)))],
  closedBy: { by: 'stamp', stamp: first('clamps-off') },
};

/** Stripper: scrape between 15 and 30 minutes after it was last put on, topped up or covered. */
export const scrape: WindowRule = {
  id: 'scrape',
  kind: 'chemical',
  verb: 'scrape',
  scope: 'step',
  begins: last('first-stroke', 'topped-up', 'covered'),
  stretches: [
    wait,
    go(
      latestOf(
        earliestOf(
          after(last('first-stroke', 'topped-up', 'covered'), grows(15 * minute)),
          foundReady,
        ),
        foundNotYet(10 * minute),
      ),
    ),
    spoils(
      after(last('first-stroke', 'topped-up', 'covered'), shrinks(30 * minute)),
      'dry: top up, cover, wait again',
    ),
  ],
  closedBy: { by: 'stamp', stamp: strokeOff },
  notYetAdds: 10 * minute,
};

/** A mixed pot: used up within four hours, and washed out. */
export const potLife: WindowRule = {
  id: 'pot',
  kind: 'pot',
  verb: 'wash out',
  scope: 'step',
  begins: first('mixed'),
  stretches: [
    { meaning: 'go', loss: 'costs nothing' },
    spoils(after(first('mixed'), shrinks(4 * hour)), 'gelled: new pot, cut the gun out'),
  ],
  closedBy: { by: 'stamp', stamp: first('washed-out') },
};

/** Two-part: the next coat while it is green, 3 to 8 hours; after that only over a sanded film. */
export const greenStage: WindowRule = {
  id: 'green',
  kind: 'coat',
  verb: 'next coat',
  milestone: 'recoat',
  scope: 'pass',
  begins: assumed(strokeOn),
  stretches: [
    wait,
    go(latestOf(after(strokeOff, grows(3 * hour)), foundNotYet(30 * minute))),
    {
      from: after(assumed(strokeOn), shrinks(8 * hour)),
      meaning: 'go after work',
      loss: 'costs work',
      says: 'wash, sand 100, or a tie coat',
    },
  ],
  closedBy: { by: 'needing step' },
  notYetAdds: 30 * minute,
};

/** A trial is judged half an hour after its last stroke, until it is found ready. */
export const judge: WindowRule = {
  id: 'trial',
  kind: 'coat',
  verb: 'judge the trial',
  scope: 'step',
  begins: { events: ['last-stroke'], which: 'last' },
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    {
      from: {
        kind: 'latest',
        of: [
          {
            kind: 'stamp',
            stamp: { events: ['last-stroke'], which: 'last' },
            plus: { ms: 30 * minute },
          },
          { kind: 'check', finding: 'not yet', plus: { ms: 10 * minute } },
        ],
      },
      meaning: 'go',
      loss: 'costs nothing',
    },
  ],
  closedBy: { by: 'ready' },
  notYetAdds: 10 * minute,
};
