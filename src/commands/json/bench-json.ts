import {
  bringBackName,
  nextAct,
  standingOf,
  standingsAt,
  takeBackName,
  type Piece,
  type Standing,
} from '../../tracker/bench/index.ts';
import { ragsFrom } from '../../tracker/overnight/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { dewPointC } from '../../tracker/trade/index.ts';
import {
  closesAt,
  dryingPaceAt,
  opensAt,
  stateAt,
  type Window,
} from '../../tracker/windows/index.ts';
import type { Zone } from '../../views/format/zone.ts';
import type { BenchJson, BenchRowJson, WindowJson } from '../json-shapes/index.ts';
import type { Look } from '../line/look.ts';
import { iso, isoOrNull } from './iso.ts';
import { potJson } from './pot-json.ts';
import { holdJson, partName, pieceName, readingJson, stepName } from './names.ts';

export function benchJson(look: Look): BenchJson {
  const { bench, now, sense, readings, shop } = look;
  const reading = readings.at(-1);
  const standings = standingsAt(bench, now, sense);
  return {
    at: iso(now, shop.zone),
    air:
      reading === undefined
        ? null
        : {
            ...readingJson(reading, shop.zone),
            dewPointC: Math.round(dewPointC(reading) * 10) / 10,
            coatsTake: dryingPaceAt(
              standings.flatMap(({ windows }) => windows),
              now,
              sense,
            ),
          },
    rows: standings.map((standing) => rowJson(look, standing)),
    takeBack: takeBackName(bench),
    bringBack: bringBackName(bench),
    keeper: look.keeper === 'there',
    rags: ragsFrom(bench).map(pieceName),
  };
}

/** How one piece stands; null where it isn't on the bench. */
export function pieceRowJson(look: Look, id: string | null): BenchRowJson | null {
  const { bench, now, sense } = look;
  const piece = id === null ? undefined : bench.pieces.get(id);
  if (piece?.place !== 'bench') return null;
  return rowJson(look, standingOf(bench, piece, now, sense));
}

function rowJson({ bench, now, sense, shop: { zone } }: Look, standing: Standing): BenchRowJson {
  const { piece, timer, pot, rank, part, step, session, window, windows } = standing;
  return {
    piece: piece === null ? null : pieceName(piece),
    timer: timer === null ? null : { id: timer.id, label: timer.label },
    pot: pot === null ? null : potJson(pot, zone),
    rank,
    part: partName(piece, part),
    step: stepName(piece, step?.id ?? null),
    next: piece === null ? null : nextAct(bench, piece, part, { now, sense }).says,
    inHandSince: isoOrNull(session?.start ?? null, zone),
    window: window === null ? null : windowJson(window, piece, now, zone),
    windows: windows.map((each) => windowJson(each, piece, now, zone)),
    hold: holdJson(piece?.hold ?? null, zone),
    promised: piece?.promised ?? null,
  };
}

export function windowJson(
  window: Window,
  piece: Piece | null,
  now: Instant,
  zone: Zone,
): WindowJson {
  const { rule, subject } = window;
  return {
    key: window.key,
    kind: rule.kind,
    verb: rule.verb,
    milestone: rule.milestone ?? null,
    step: stepName(piece, subject.stepId),
    part: partName(piece, subject.partId),
    pass: subject.pass,
    section: subject.section,
    state: stateAt(window, now),
    begun: iso(window.begunAt, zone),
    opens: isoOrNull(opensAt(window), zone),
    closes: isoOrNull(closesAt(window, now)?.at ?? null, zone),
    assumed: window.assumed,
    foundReady: isoOrNull(window.foundReadyAt, zone),
    stretches: window.stretches.map(({ meaning, loss, says, begins, ends }) => ({
      meaning,
      loss,
      says: says ?? null,
      begins: iso(begins, zone),
      ends: isoOrNull(ends, zone),
    })),
  };
}
