import type { View } from '../screen.ts';

/** Whether a keeper pings once the program is closed: one that stands by already, or one that closing starts. */
export const keeperPings = ({ snapshot: { settings, keeper } }: Pick<View, 'snapshot'>): boolean =>
  keeper === 'there' || (settings.keeper === 'yes' && keeper !== 'cannot');

/** Who pings once the program is closed. */
export const whoPings = (view: Pick<View, 'snapshot'>): string =>
  keeperPings(view)
    ? 'the keeper pings these while recoat is closed'
    : 'none of these pings while recoat is closed';
