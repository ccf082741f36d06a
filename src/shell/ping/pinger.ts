import {
  createDesktop,
  type Desktop,
  type DesktopOutcome,
  type DesktopPing,
  type SendDesktop,
} from './desktop.ts';
import { readPingHook } from '../../tracker/settings/index.ts';
import { createHook, type SendToHook } from './hook.ts';
import { harmlessLine } from './harmless-text.ts';
import type { PingSettings } from './ping-settings.ts';
import { bell, terminalPing, type TerminalPing } from './terminal.ts';

/** A ping to be sent now. `repeat` marks a loud one that was sent before: it only rings again. */
export type Ping = TerminalPing & { readonly repeat?: boolean };

export type PingWay = 'bell' | 'terminal' | 'desktop' | 'hook';

/** By which ways it left the program, and a sentence for each way that failed. */
export type PingReport = {
  readonly ways: readonly PingWay[];
  readonly failures: readonly string[];
};

export type Pinger = {
  readonly send: (ping: Ping) => Promise<PingReport>;
  /** Loads what the first ping needs; for an idle moment after the first frame. */
  readonly warmUp: () => Promise<void>;
};

export type PingerOptions = {
  readonly settings: () => PingSettings;
  /** Writes to the terminal, whole and between frames; null where there is none. */
  readonly write: ((bytes: string) => void) | null;
  readonly platform: NodeJS.Platform;
  readonly env: NodeJS.ProcessEnv;
  readonly sendDesktop?: SendDesktop;
  readonly sendToHook?: SendToHook;
  /** Told once for each of them, when a desktop notification or the hook first fails. */
  readonly onNotice?: (text: string) => void;
};

/** Carries pings out. Never throws; bell and terminal go at once, the desktop's answer takes 5 seconds at most. */
export function createPinger({
  settings,
  write,
  platform,
  env,
  sendDesktop,
  sendToHook = createHook({ env }),
  onNotice,
}: PingerOptions): Pinger {
  const desktop: Desktop = sendDesktop
    ? { send: sendDesktop, warmUp: async () => {} }
    : createDesktop({ platform });
  let hasNoticed = false;
  let hasNoticedHook = false;

  const writeTo = (
    terminal: (bytes: string) => void,
    ping: Ping,
    chosen: PingSettings,
  ): PingReport => {
    const rings = chosen.bell === 'every' || (chosen.bell === 'loud' && ping.loud);
    const sequences = ping.repeat ? '' : terminalPing(chosen.terminal, ping, env);
    const ways: PingWay[] = [];
    if (rings) ways.push('bell');
    if (sequences !== '') ways.push('terminal');
    if (ways.length === 0) return { ways, failures: [] };
    try {
      terminal((rings ? bell : '') + sequences);
      return { ways, failures: [] };
    } catch (error) {
      return {
        ways: [],
        failures: ways.map(
          (way) => `${way}: the terminal takes no more output (${nameOf(error)}).`,
        ),
      };
    }
  };

  const show = async (ping: DesktopPing): Promise<DesktopOutcome> => {
    try {
      return await desktop.send(ping);
    } catch (error) {
      return { ok: false, why: `the notifier broke (${nameOf(error)}).` };
    }
  };

  const notice = (why: string, chosen: PingSettings): void => {
    if (hasNoticed) return;
    hasNoticed = true;
    onNotice?.(`No desktop ping: ${why} ${otherWays(chosen, write !== null)}`);
  };

  const nothing: PingReport = { ways: [], failures: [] };

  const byDesktop = async (ping: Ping, chosen: PingSettings): Promise<PingReport> => {
    // A loud one rings again; where no terminal is there to ring it comes up again.
    if (!chosen.desktop || (ping.repeat && write !== null)) return nothing;
    const outcome = await show({ title: ping.title, message: ping.body, loud: ping.loud });
    if (outcome.ok) return { ways: ['desktop'], failures: [] };
    notice(outcome.why, chosen);
    return { ways: [], failures: [`desktop: ${outcome.why}`] };
  };

  const byHook = async (ping: Ping, chosen: PingSettings): Promise<PingReport> => {
    const hook = readPingHook(chosen.hook);
    if (hook === null || hook === 'none' || ping.repeat) return nothing;
    const outcome = await sendToHook(hook, ping);
    if (outcome.ok) return { ways: ['hook'], failures: [] };
    if (!hasNoticedHook) onNotice?.(`No ping by the hook: ${outcome.why} u: settings.`);
    hasNoticedHook = true;
    return { ways: [], failures: [`hook: ${outcome.why}`] };
  };

  return {
    warmUp: async () => {
      if (settings().desktop) await desktop.warmUp();
    },
    send: async (ping) => {
      const chosen = settings();
      const reports = [
        write ? writeTo(write, ping, chosen) : nothing,
        ...(await Promise.all([byDesktop(ping, chosen), byHook(ping, chosen)])),
      ];
      return {
        ways: reports.flatMap(({ ways }) => ways),
        failures: reports.flatMap(({ failures }) => failures),
      };
    },
  };
}

function otherWays(chosen: PingSettings, hasTerminal: boolean): string {
  if (!hasTerminal) return 'Nothing else here can ping.';
  const sounds = { every: 'ring the bell', loud: 'ring the bell when loud', never: null }[
    chosen.bell
  ];
  const sequence =
    chosen.terminal === 'off' ? null : `go out through the terminal (${chosen.terminal})`;
  const acts = ['show on this screen', sounds, sequence].filter((act) => act !== null);
  return `Pings still ${acts.length > 1 ? `${acts.slice(0, -1).join(', ')} and ${acts.at(-1)}` : acts[0]}.`;
}

function nameOf(error: unknown): string {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string')
    return error.code;
  return harmlessLine(error instanceof Error ? error.message : String(error), 80);
}
