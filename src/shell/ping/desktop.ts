import type { ChildProcess } from 'node:child_process';
import type { NodeNotifier } from 'node-notifier';
import { explainDesktopFailure, noAnswer, stillHanging } from './desktop-failure.ts';
import { endChild } from './end-child.ts';
import { harmlessLine } from './harmless-text.ts';
import { letGo } from './let-go.ts';
import { watchChildren } from './started-children.ts';

export type DesktopPing = {
  readonly title: string;
  readonly message: string;
  readonly loud: boolean;
};

/** `why` goes on from "No desktop ping: ". */
export type DesktopOutcome = { readonly ok: true } | { readonly ok: false; readonly why: string };

export type SendDesktop = (ping: DesktopPing) => Promise<DesktopOutcome>;

export type Desktop = {
  readonly send: SendDesktop;
  /** Loads what the first ping needs: for an idle moment, as it takes tens of milliseconds. */
  readonly warmUp: () => Promise<void>;
};

export type DesktopOptions = {
  readonly platform: NodeJS.Platform;
  /** Milliseconds until an attempt without an answer is ended. */
  readonly timeLimit?: number;
  /** Stay running until a ping is answered: for a command that does nothing else. */
  readonly holdsProcess?: boolean;
  readonly load?: () => Promise<NodeNotifier>;
};

type Notify = (options: object, answer: (error: unknown) => void) => unknown;

const mostUnderWay = 2;
const titleLimit = 120;
const messageLimit = 500;
const shownSeconds = 20;

const loadNotifier = async (): Promise<NodeNotifier> => (await import('node-notifier')).default;

/**
 * Desktop notifications through node-notifier, loaded at the first one. Never throws and never waits longer than the
 * time limit; a program that hangs behind it is ended, and at most two may be under way.
 */
export function createDesktop({
  platform,
  timeLimit = 5000,
  holdsProcess = false,
  load = loadNotifier,
}: DesktopOptions): Desktop {
  let notify: Notify | undefined;
  let underWay = 0;
  const ready = async (): Promise<Notify> => (notify ??= notifyOf(await load()));
  const failed = (error: unknown): DesktopOutcome => ({
    ok: false,
    why: explainDesktopFailure(error, platform),
  });

  const attempt = (show: Notify, ping: DesktopPing): Promise<DesktopOutcome> =>
    new Promise((resolve) => {
      const children: ChildProcess[] = [];
      const timer = setTimeout(() => {
        for (const child of children) endChild(child);
        // A Windows toast is answered when the person closes it, so silence there means that it is up.
        resolve(
          platform === 'win32'
            ? { ok: true }
            : { ok: false, why: noAnswer(Math.round(timeLimit / 1000)) },
        );
      }, timeLimit);
      if (!holdsProcess) timer.unref();
      let hasAnswered = false;
      const answer = (error: unknown): void => {
        if (hasAnswered) return;
        hasAnswered = true;
        underWay--;
        clearTimeout(timer);
        // Text on standard error comes as a string; only an Error says that the program failed.
        resolve(error instanceof Error ? failed(error) : { ok: true });
      };
      try {
        watchChildren(
          (child) => {
            children.push(child);
            if (!holdsProcess) child.once('spawn', () => letGo(child));
          },
          () => show(optionsFor(ping, platform), answer),
        );
      } catch (error) {
        answer(error instanceof Error ? error : new Error(String(error)));
      }
    });

  return {
    warmUp: async () => {
      await ready().catch(() => undefined);
    },
    send: async (ping) => {
      if (underWay >= mostUnderWay) return { ok: false, why: stillHanging(underWay) };
      underWay++;
      let show: Notify;
      try {
        show = await ready();
      } catch {
        underWay--;
        return {
          ok: false,
          why: 'the package node-notifier does not load. Install this program again.',
        };
      }
      return attempt(show, ping);
    },
  };
}

/** node-notifier looks for notify-send once and remembers that it was missing; without that look it may be installed later. */
function notifyOf(notifier: NodeNotifier): Notify {
  const looksOnce = notifier instanceof notifier.NotifySend;
  const options: object = { suppressOsdCheck: true };
  const way: NodeNotifier | InstanceType<NodeNotifier['NotifySend']> = looksOnce
    ? new notifier.NotifySend(options)
    : notifier;
  return (ping, answer) => way.notify(ping, answer);
}

function optionsFor({ title, message, loud }: DesktopPing, platform: NodeJS.Platform): object {
  const head = harmless(title, titleLimit);
  const body = harmless(message, messageLimit);
  const text = body === '' ? { title: 'recoat', message: head } : { title: head, message: body };
  if (platform === 'darwin') return { ...text, timeout: false, sound: loud };
  if (platform === 'win32') return { ...text, sound: loud };
  return {
    title: text.title,
    message: withoutMarkup(text.message),
    urgency: loud ? 'critical' : 'normal',
    timeout: loud ? 0 : shownSeconds,
    'app-name': 'recoat',
  };
}

/** A leading hyphen would be read as an option, a backslash as an escape. */
const harmless = (text: string, most: number): string =>
  harmlessLine(text, most).replace(/^-+/, '–').replaceAll('\\', '/');

/** Notification services may read the body as markup (Desktop Notifications Specification, "Markup"), or may not. */
const withoutMarkup = (text: string): string =>
  text
    .replace(/\s*&\s*/g, ' and ')
    .replaceAll('<', '‹')
    .replaceAll('>', '›')
    .trim();
