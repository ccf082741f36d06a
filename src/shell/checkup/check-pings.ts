import { spawn } from 'node:child_process';
import { findingsAbout, type Finding } from '../../persist/checkup/index.ts';
import { readPingHook, type Settings } from '../../tracker/settings/index.ts';
import { awakeCommands } from '../ping/awake-commands.ts';
import { createAwake } from '../ping/awake.ts';
import { createDesktop, type SendDesktop } from '../ping/desktop.ts';
import { closingWords, readPortable } from '../ping/portable.ts';
import { createHook, type SendToHook } from '../ping/hook.ts';
import type { World } from '../world.ts';
import { findProgram } from './find-program.ts';

export type PingCheck = {
  readonly world: Pick<World, 'env' | 'platform'>;
  readonly settings: Settings;
  /** Whether one is really sent; else its program is only looked for. */
  readonly sends: boolean;
  readonly sendDesktop?: SendDesktop;
  readonly sendToHook?: SendToHook;
};

const ping = {
  id: 'checkup',
  title: 'recoat: checkup',
  message: 'This is how a ping looks.',
  body: 'This is how a ping looks.',
  loud: false,
};

/** Whether desktop notifications can be shown, where the setting wants them. */
export async function checkNotifier(check: PingCheck): Promise<Finding> {
  const { fine, note, wrong } = findingsAbout('notifier');
  const { world, settings, sends, sendDesktop } = check;
  if (!settings.desktop)
    return note('Desktop notifications are switched off.', 'recoat settings desktop yes');
  if (sends) {
    const send = sendDesktop ?? createDesktop({ ...world, holdsProcess: true }).send;
    const sent = await send(ping);
    return sent.ok
      ? fine('A desktop notification went out. If you saw none, look at "do not disturb".')
      : wrong(`No desktop notification: ${sent.why}`, 'Or do without: recoat settings desktop no');
  }
  // On other systems the program comes along.
  if (world.platform !== 'linux')
    return fine('The notifier comes along. Try it: recoat checkup --ping');
  const found = findProgram('notify-send', world.env);
  return found === null
    ? wrong(
        'No desktop notification: the command notify-send is missing.',
        'Install the package libnotify-bin (Debian, Ubuntu), libnotify-tools (openSUSE) or libnotify (most others), or do without: recoat settings desktop no',
      )
    : fine(`Desktop notifications go by ${found}. Try it: recoat checkup --ping`);
}

/** Whether the program that pings are handed to is there. */
export async function checkHook(check: PingCheck): Promise<readonly Finding[]> {
  const { fine, wrong } = findingsAbout('hook');
  const { world, settings, sends, sendToHook } = check;
  const hook = readPingHook(settings.hook);
  if (hook === 'none') return [];
  if (hook === null)
    return [wrong(`The ping hook ${settings.hook} is none.`, 'recoat settings ping-hook none')];
  if (sends) {
    const sent = await (sendToHook ?? createHook({ env: world.env }))(hook, ping);
    return [
      sent.ok
        ? fine(`The ping hook ${hook[0]} took a ping.`)
        : wrong(`No ping by the hook: ${sent.why}`, 'recoat settings ping-hook'),
    ];
  }
  const found = findProgram(hook[0], world.env);
  return [
    found === null
      ? wrong(
          `The ping hook ${hook[0]} is not there, or may not be started.`,
          'Put it there, or do without: recoat settings ping-hook none',
        )
      : fine(`The ping hook is ${found}.`),
  ];
}

export type AwakeCheck = {
  readonly world: Pick<World, 'env' | 'platform'>;
  readonly settings: Settings;
  readonly wait: (milliseconds: number) => Promise<void>;
};

const lookEvery = 50;

/** Holds the machine awake for a moment, as it would be while something spoils. */
export async function checkAwake({ world, settings, wait }: AwakeCheck): Promise<Finding> {
  const { fine, note, wrong } = findingsAbout('awake');
  const { env, platform } = world;
  if (!settings.awake)
    return note(
      'Nothing keeps this machine awake: that is switched off.',
      'recoat settings awake yes',
    );
  const commands = awakeCommands(platform, env);
  const patience = commands.reduce((all, { answersWithin }) => all + answersWithin, 500);
  const awake = createAwake({ platform, env, spawn });
  awake.want('a checkup');
  for (let waited = 0; waited < patience; waited += lookEvery) {
    const { kept, why } = awake.state();
    if (kept || !why.endsWith('just asked to stay awake.')) break;
    await wait(lookEvery);
  }
  const { kept, why } = awake.state();
  awake.want(null);
  const closing = closingWords(readPortable(platform));
  return kept
    ? fine(
        ['This machine can be kept awake.', why.replace(/^[^.]*\. ?/, ''), closing ?? '']
          .filter((says) => says !== '')
          .join(' '),
      )
    : wrong(
        why.replace(
          /^This machine may sleep: no ping then\./,
          'This machine may sleep, and a sleeping machine pings nothing.',
        ),
        'Set its energy settings so that it stays awake, and say so: recoat settings awake no',
      );
}
