import { harmlessLine } from './harmless-text.ts';

/**
 * A program that keeps the machine awake for as long as its standard input stays open, and answers every line it reads
 * there with the same line: an answer proves that the hold was taken.
 */
export type AwakeCommand = {
  readonly file: string;
  readonly args: (reason: string) => readonly string[];
  /** Milliseconds in which it has to answer. */
  readonly answersWithin: number;
  /** What still puts the machine to sleep, beside its lid and battery; may be empty. */
  readonly limits: string;
};

/**
 * `idle` and `sleep`, not `handle-lid-switch`: who closes the lid means it, and a laptop running hot in a bag is worse
 * than a missed ping; `portable.ts` has that said. logind lets every local session block sleep; over SSH it allows only `idle`, tried second.
 */
function logindHold(file: string, what: string, limits: string): AwakeCommand {
  return {
    file,
    args: (reason) => [`--what=${what}`, '--who=recoat', `--why=${reason}`, '--mode=block', 'cat'],
    answersWithin: 5000,
    limits,
  };
}

const logindHolds = ['systemd-inhibit', 'elogind-inhibit'].flatMap((file) => [
  logindHold(file, 'idle:sleep', ''),
  logindHold(file, 'idle', 'Only idling was ruled out: a desktop may still send it to sleep.'),
]);

/** `-i`: no sleep from idling while the named utility runs. */
const caffeinate: AwakeCommand = {
  file: 'caffeinate',
  args: () => ['-i', 'cat'],
  answersWithin: 5000,
  limits: '',
};

const continuousAndSystemRequired = 0x8000_0001;

const powerShellScript = [
  'Add-Type -Namespace Recoat -Name Power -MemberDefinition ' +
    "('[DllImport(' + [char]34 + 'kernel32.dll' + [char]34 + ')] public static extern uint SetThreadExecutionState(uint flags);')",
  `if ([Recoat.Power]::SetThreadExecutionState(${continuousAndSystemRequired}) -eq 0) { exit 1 }`,
  'while ($null -ne ($line = [Console]::In.ReadLine())) { [Console]::Out.WriteLine($line) }',
].join('; ');

/** The request belongs to the thread that made it and ends with it. Compiling the call can take seconds. */
const powerShell: AwakeCommand = {
  file: 'powershell.exe',
  args: () => ['-NoLogo', '-NoProfile', '-NonInteractive', '-Command', powerShellScript],
  answersWithin: 20_000,
  limits: '',
};

/** What can be tried on this machine, best first. Linux inside Windows asks Windows, which is what falls asleep. */
export function awakeCommands(
  platform: NodeJS.Platform,
  env: NodeJS.ProcessEnv,
): readonly AwakeCommand[] {
  if (platform === 'darwin') return [caffeinate];
  if (platform === 'win32' || (platform === 'linux' && env.WSL_DISTRO_NAME)) return [powerShell];
  return platform === 'linux' ? logindHolds : [];
}

/** A reason as it may stand in another program's list. */
export const awakeReason = (reason: string): string => harmlessLine(reason, 120);
