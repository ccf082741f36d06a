import { readNightLow } from './night-low.ts';
import { readPingHook } from './ping-hook.ts';
import { quietHoursText, readQuietHours } from './quiet-hours.ts';
import { readShopHours } from './shop-hours.ts';

/** A setting whose value is typed, and has more forms than a list could offer. */
type TypedSetting = {
  /** The value as it is kept; null where the text is none. */
  readonly keeps: (text: string) => string | null;
  /** What is expected, to go on from "Write " or "expected ". */
  readonly forms: string;
};

export const typedSettings = {
  'night low': {
    keeps: (text) => (readNightLow(text) === null ? null : text.trim().toLowerCase()),
    forms: '12C, 54F, none or auto',
  },
  'quiet hours': {
    keeps: (text) => {
      const hours = readQuietHours(text);
      return hours === null || hours === 'none' ? hours : quietHoursText(hours);
    },
    forms: 'two clock times, such as 22:00-7:00, or none',
  },
  'shop hours': {
    keeps: (text) => {
      const hours = readShopHours(text);
      return hours === null ? null : quietHoursText(hours);
    },
    forms: 'two clock times, such as 8:00-18:00',
  },
  'ping hook': {
    keeps: (text) => {
      const hook = readPingHook(text);
      return hook === null || hook === 'none' ? hook : JSON.stringify(hook);
    },
    forms: 'the path of a program, a list such as ["/home/me/to-phone","--short"], or none',
  },
} satisfies Readonly<Record<string, TypedSetting>>;

export type TypedKind = keyof typeof typedSettings;

/** Whether a setting's choices are a kind that is typed, not a list. */
export const isTyped = (choices: unknown): choices is TypedKind =>
  typeof choices === 'string' && Object.hasOwn(typedSettings, choices);
