import type { CheckRow, JobCard, JobCardRow, StepRow } from '../../tracker/bench/index.ts';
import { minute } from '../../tracker/time/index.ts';
import type { Zone } from '../../views/format/zone.ts';
import type {
  CardCheckJson,
  CardStepJson,
  JobCardJson,
  JobCardRowJson,
} from '../json-shapes/index.ts';
import type { Look } from '../line/look.ts';
import { iso, isoOrNull } from './iso.ts';
import { airJson } from './names.ts';
import { stepsJson } from './steps-json.ts';

/** All that was done to a piece and put on it, with what is known of it. */
export function jobCardJson(card: JobCard, look: Look): JobCardJson {
  const { piece, rows, curing, minutes, sessions } = card;
  const { zone } = look.shop;
  return {
    ...stepsJson(piece, look),
    added: iso(piece.addedAt, zone),
    left: isoOrNull(piece.leftAt, zone),
    rows: rows.map((row) => rowJson(row, zone)),
    curing: curing.map(({ milestone, at }) => ({ milestone, at: iso(at, zone) })),
    minutes,
    sessions,
  };
}

function rowJson(row: JobCardRow, zone: Zone): JobCardRowJson {
  const at = iso(row.at, zone);
  switch (row.row) {
    case 'step':
      return stepRowJson(row, zone);
    case 'check':
      return checkRowJson(row, zone);
    case 'moisture': {
      const { step, part, spot, percent } = row;
      return { row: 'moisture', at, step, part, spot, percent, air: airJson(row.air, zone) };
    }
    case 'note':
      return { row: 'note', at, step: row.step, text: row.text };
    case 'hold': {
      const { reason, askAgain, liftedAt } = row;
      return { row: 'hold', at, reason, askAgain, lifted: isoOrNull(liftedAt, zone) };
    }
    case 'plan':
      return { row: 'plan', at, change: row.change, step: row.name };
    case 'timer': {
      const { label, ms, closedAt } = row.timer;
      return {
        row: 'timer',
        at,
        label,
        minutes: ms / minute,
        closed: isoOrNull(closedAt, zone),
      };
    }
  }
}

const stepRowJson = (row: StepRow, zone: Zone): CardStepJson => ({
  row: 'step',
  at: iso(row.at, zone),
  id: row.step,
  name: row.name,
  minutes: row.minutes,
  sessions: row.sessions,
  done: row.done,
  product: row.product,
  stamps: row.stamps.map(({ event, agent, pass, section, part, at, movedFrom }) => ({
    event,
    agent,
    pass,
    section,
    part,
    at: iso(at, zone),
    movedFrom: isoOrNull(movedFrom, zone),
  })),
  coat: row.weights,
  air: airJson(row.air, zone),
  outcomes: row.outcomes.map(({ verb, milestone, part, outcome, after, loss, says }) => ({
    verb,
    milestone,
    part,
    outcome,
    afterMinutes: after / minute,
    loss,
    says,
  })),
  corrections: row.corrections.map(({ session, change, start, was, minutes }) => ({
    session,
    change,
    start: iso(start, zone),
    was,
    minutes,
  })),
});

const checkRowJson = (row: CheckRow, zone: Zone): CardCheckJson => ({
  row: 'check',
  at: iso(row.at, zone),
  step: row.step,
  part: row.part,
  finding: row.finding,
  shown: row.shown,
  why: row.why,
  air: airJson(row.air, zone),
  minutesAfterStroke: row.afterStroke === null ? null : row.afterStroke / minute,
  movedFrom: isoOrNull(row.movedFrom, zone),
});
