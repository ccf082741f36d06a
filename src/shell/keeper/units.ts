/** What starts a keeper under a supervisor of the system's own. */
export const supervisors = ['systemd', 'launchd', 'windows'] as const;
export type Supervisor = (typeof supervisors)[number];

export type UnitInput = {
  /** Full path of the Node that is to run it. */
  readonly node: string;
  /** Full path of the program's entry. */
  readonly entry: string;
  /** Full path of the store. */
  readonly folder: string;
  /** Who is to be logged in, as Windows names them; null where that isn't known. */
  readonly user: string | null;
};

/** The text of a unit and, in its first comment, where it goes and what starts it. Nothing is installed by it. */
export function unitText(supervisor: Supervisor, input: UnitInput): string {
  switch (supervisor) {
    case 'systemd':
      return systemdUnit(input);
    case 'launchd':
      return launchdPlist(input);
    case 'windows':
      return windowsTask(input);
  }
}

/** A word of a command line after systemd.service(5): quoted, `%` and `$` doubled. */
const systemdWord = (word: string): string =>
  `"${word.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('%', '%%').replaceAll('$', '$$$$')}"`;

/**
 * systemd takes no quote or backslash in the name of a program, and doubles no `$` there: such a Node is started by a shell,
 * which gets all names as words of its own and reads none of them as its language.
 */
const systemdCommand = (words: readonly [string, ...string[]]): readonly string[] =>
  /["'\\$]/.test(words[0]) ? ['/bin/sh', '-c', 'exec "$0" "$@"', ...words] : words;

const systemdUnit = ({ node, entry, folder }: UnitInput): string =>
  `# Keep as ~/.config/systemd/user/recoat-keeper.service, then:
#   systemctl --user daemon-reload
#   systemctl --user enable --now recoat-keeper
# It pings while you are logged in; loginctl enable-linger keeps it after that.
[Unit]
Description=recoat keeper: pings while no screen is open
After=graphical-session.target

[Service]
ExecStart=${systemdCommand([node, entry, 'keep', '--stay', '--folder', folder])
    .map(systemdWord)
    .join(' ')}
Restart=on-failure
RestartSec=30

[Install]
WantedBy=default.target
`;

const xml = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

const launchdPlist = ({ node, entry, folder }: UnitInput): string =>
  `<?xml version="1.0" encoding="UTF-8"?>
<!-- Keep as ~/Library/LaunchAgents/recoat.keeper.plist, then: launchctl load that file. -->
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0">
<dict>
  <key>Label</key>
  <string>recoat.keeper</string>
  <key>ProgramArguments</key>
  <array>
${[node, entry, 'keep', '--stay', '--folder', folder].map((word) => `    <string>${xml(word)}</string>`).join('\n')}
  </array>
  <key>RunAtLoad</key>
  <true/>
  <key>KeepAlive</key>
  <dict>
    <key>SuccessfulExit</key>
    <false/>
  </dict>
</dict>
</plist>
`;

/** After the rules by which Windows programs take their words apart, from memory. */
const windowsWord = (word: string): string =>
  `"${word.replace(/(\\*)"/g, '$1$1\\"').replace(/(\\+)$/, '$1$1')}"`;

/** Without a user the task begins whoever logs on (Task Scheduler reference, LogonTrigger.UserId). */
const windowsUser = (user: string | null): string =>
  user === null ? '' : `\n      <UserId>${xml(user)}</UserId>`;

const windowsTask = ({ node, entry, folder, user }: UnitInput): string =>
  `<?xml version="1.0" encoding="UTF-8"?>
<!-- Keep as recoat-keeper.xml, then: schtasks /create /tn "recoat keeper" /xml recoat-keeper.xml -->
<Task version="1.2" xmlns="http://schemas.microsoft.com/windows/2004/02/mit/task">
  <Triggers>
    <LogonTrigger>
      <Enabled>true</Enabled>${windowsUser(user)}
    </LogonTrigger>
  </Triggers>
  <Settings>
    <MultipleInstancesPolicy>IgnoreNew</MultipleInstancesPolicy>
    <DisallowStartIfOnBatteries>false</DisallowStartIfOnBatteries>
    <StopIfGoingOnBatteries>false</StopIfGoingOnBatteries>
    <ExecutionTimeLimit>PT0S</ExecutionTimeLimit>
    <RestartOnFailure>
      <Interval>PT1M</Interval>
      <Count>10</Count>
    </RestartOnFailure>
  </Settings>
  <Actions>
    <Exec>
      <Command>${xml(node)}</Command>
      <Arguments>${xml([entry, 'keep', '--stay', '--folder', folder].map(windowsWord).join(' '))}</Arguments>
    </Exec>
  </Actions>
</Task>
`;
