import { claimedPings } from '../shell/shown-pings.ts';
import { clock, day, whenInWords } from '../views/format/index.ts';
import type { ShownPing } from '../views/port.ts';
import { iso, isoOrNull } from './json/iso.ts';
import type { PingsJson } from './json-shapes/index.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { tellOfLostKeeper } from './line/lost-keeper.ts';
import { lookAt, openToRead, type Look } from './line/look.ts';
import { pingsToCome, toComeJson, toComeLine } from './text/pings-to-come.ts';

export const pings: CommandFile = {
  options: [['--all', 'all pings that went out, not only the last twenty']],
  help: 'Nothing goes out while neither a screen nor a keeper is there; what fell due then is told when one opens.',
  run: async (room, given) => {
    const opened = await openToRead(room);
    if (isFailure(opened)) return opened;
    tellOfLostKeeper(room);
    const shop = lookAt(room, opened);
    const { zone } = shop.shop;
    const sent = given.has('all') ? shop.pings : shop.pings.slice(-lastFew);
    const toCome = pingsToCome(shop, claimedPings(opened.pings));
    return {
      lines: () => [
        sent.length === 0 ? 'No ping went out yet.' : 'went out',
        ...sent.map((ping) => sentLine(ping, shop)),
        toCome.length === 0 ? 'None is to come.' : 'to come',
        ...toCome.map((ping) => toComeLine(ping, shop)),
      ],
      json: (): PingsJson => ({
        sent: sent.map(({ claim, at, seenAt, ways, text, loud, piece, failures }) => ({
          id: claim,
          at: iso(at, zone),
          text,
          loud,
          piece,
          seen: isoOrNull(seenAt, zone),
          ways,
          failures,
        })),
        toCome: toCome.map((ping) => toComeJson(ping, shop)),
      }),
    };
  },
};

const lastFew = 20;

/** More is told behind it. */
const unended = (sentence: string): string => sentence.replace(/\.$/, '');

function sentLine({ at, text, seenAt, loud, ways, failures }: ShownPing, { shop }: Look): string {
  const seen = seenAt === null ? (loud ? 'not seen' : '') : `seen ${whenInWords(seenAt, at, shop)}`;
  const how =
    ways === null
      ? 'not known whether it went out'
      : ways.length === 0
        ? 'reached nobody'
        : ways.join(', ');
  const lost = failures.length === 0 ? '' : `; failed: ${failures.map(unended).join(', ')}`;
  return ` ${day(at, shop)} ${clock(at, shop)}  ${text}  (${[how + lost, seen].filter(Boolean).join('; ')})`;
}
