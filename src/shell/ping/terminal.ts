import { harmlessLine } from './harmless-text.ts';
import type { PingSettings } from './ping-settings.ts';

/** What a terminal is asked to show. `id` tells one ping from another; the same id again replaces it. */
export type TerminalPing = {
  readonly id: string;
  readonly title: string;
  readonly body: string;
  readonly loud: boolean;
};

const escape = '\u001b';
const terminator = `${escape}\\`;
const titleLimit = 120;
const bodyLimit = 400;

/** BEL: what it does (sound, mark, nothing) is the terminal's own setting. */
export const bell = '\u0007';

const title = (ping: TerminalPing): string => harmlessLine(ping.title, titleLimit);
const body = (ping: TerminalPing): string => harmlessLine(ping.body, bodyLimit);

/** OSC 9: one text. Digits and a semicolon in front would be a progress report (`9;4;...`) to some terminals. */
export function osc9(ping: TerminalPing): string {
  const text = [title(ping), body(ping)].filter((part) => part !== '').join(': ');
  return `${escape}]9;${text.replace(/^(\s*\d+\s*);/, '$1,')}${bell}`;
}

/** OSC 777: title and body, set apart by semicolons, of which they may therefore have none. */
export function osc777(ping: TerminalPing): string {
  const fields = [title(ping), body(ping)].map((field) => field.replaceAll(';', ','));
  return `${escape}]777;notify;${fields.join(';')}${bell}`;
}

/** OSC 99: title and body in two chunks under one id; the second one (`d=1`) shows it. `u=2` is critical. */
export function osc99(ping: TerminalPing): string {
  const id = ping.id.replace(/[^A-Za-z0-9_.+-]/g, '') || 'recoat';
  const urgency = ping.loud ? 2 : 1;
  return (
    `${escape}]99;i=${id}:u=${urgency}:d=0:p=title;${title(ping)}${terminator}` +
    `${escape}]99;i=${id}:u=${urgency}:d=1:p=body;${body(ping)}${terminator}`
  );
}

/** Hands sequences through tmux to the terminal around it; tmux does so only where its `allow-passthrough` is on. */
export const throughTmux = (sequences: string): string =>
  `${escape}Ptmux;${sequences.replaceAll(escape, escape + escape)}${terminator}`;

const forms = { osc9, osc777, osc99 } as const;

/** The bytes for a terminal of that form; none for `off`. */
export function terminalPing(
  form: PingSettings['terminal'],
  ping: TerminalPing,
  env: NodeJS.ProcessEnv,
): string {
  if (form === 'off') return '';
  const sequences = forms[form](ping);
  return env.TMUX ? throughTmux(sequences) : sequences;
}
