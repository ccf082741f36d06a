import { homedir } from 'node:os';
import { harmlessLine } from './harmless-text.ts';

const noCommand = /not found|must be installed|ENOENT/i;
const noService =
  /d-?bus|StartServiceByName|ServiceUnknown|org\.freedesktop\.Notifications|could not connect|connection refused/i;

/** The sentence for a notification that got no answer in time. */
export const noAnswer = (seconds: number): string =>
  `the desktop's notification service gave no answer within ${seconds} s.`;

/** The sentence for a ping that was not tried because earlier ones still hang. */
export const stillHanging = (count: number): string =>
  `${count} earlier notifications still have no answer from the desktop.`;

/**
 * What went wrong with a desktop notification and what can be done about it, as the rest of a sentence that
 * began "No desktop ping: ".
 */
export function explainDesktopFailure(error: unknown, platform: NodeJS.Platform): string {
  const text = error instanceof Error ? error.message : String(error);
  if (platform === 'darwin') {
    return `the notifier that comes along does not run here (${firstFinding(text)}). Allow it under System Settings, Notifications.`;
  }
  if (platform === 'win32') {
    return `Windows shows none (${firstFinding(text)}). Turn notifications on under Settings, System, Notifications.`;
  }
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 127 || code === 'ENOENT' || noCommand.test(lastLine(text))) {
    return (
      'the command notify-send is missing. ' +
      'Install the package libnotify-bin (Debian, Ubuntu), libnotify-tools (openSUSE) or libnotify (most others).'
    );
  }
  if (noService.test(text)) {
    return 'no notification service answers on this desktop. Start one, or run this program inside the desktop session.';
  }
  return `notify-send gave up (${firstFinding(text)}).`;
}

const lastLine = (text: string): string => text.trim().split('\n').at(-1) ?? '';

/** The first line that tells more than the failed command's own text, without the user's folder. */
function firstFinding(text: string): string {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  const telling = lines.find((line) => !line.startsWith('Command failed')) ?? 'no reason given';
  return harmlessLine(telling.replaceAll(homedir(), '~'), 120);
}
