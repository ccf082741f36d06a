import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import { onTestFinished } from 'vitest';
import { messageBytes, readMessage, type DbusMessage } from './dbus-wire.ts';

/** What a notification service was asked to show. */
export type Notification = {
  readonly appName: string;
  readonly title: string;
  readonly message: string;
  readonly urgency: number;
  readonly senderPid: number;
  readonly expireMs: number;
};

const service = 'org.freedesktop.Notifications';
const theBus = {
  path: '/org/freedesktop/DBus',
  interface: 'org.freedesktop.DBus',
  destination: 'org.freedesktop.DBus',
} as const;

/** `susssasa{sv}i`: name, id replaced, icon, summary, body, actions, hints, time until it expires. */
type NotifyArguments = readonly [
  string,
  number,
  string,
  string,
  string,
  string[],
  Record<string, number>,
  number,
];

/**
 * A notification service on the bus behind that socket, until the test ends (Desktop Notifications Specification 1.2).
 * Answers the list to which it adds what it is asked to show; a silent one never says that it did.
 */
export async function notificationService(
  socketPath: string,
  { silent = false } = {},
): Promise<readonly Notification[]> {
  const shown: Notification[] = [];
  const socket = connect(socketPath);
  onTestFinished(() => void socket.destroy());
  await introduceOurselves(socket);
  let serial = 0;
  const send = (message: Omit<DbusMessage, 'serial'>): number => {
    serial++;
    socket.write(messageBytes({ ...message, serial }));
    return serial;
  };
  const answer = (call: DbusMessage, signature: string, body: readonly unknown[]): void => {
    const to = call.sender === undefined ? {} : { destination: call.sender };
    send({ type: 'return', replyTo: call.serial, ...to, signature, body });
  };
  const serve = (call: DbusMessage): void => {
    switch (call.member) {
      case 'Notify': {
        const [appName, , , title, message, , hints, expireMs] =
          call.body as unknown as NotifyArguments;
        const { urgency = Number.NaN, 'sender-pid': senderPid = Number.NaN } = hints;
        shown.push({ appName, title, message, urgency, senderPid, expireMs });
        if (!silent) answer(call, 'u', [shown.length]);
        break;
      }
      case 'GetServerInformation':
        answer(call, 'ssss', ['trial', 'trial', '1', '1.2']);
        break;
      case 'GetCapabilities':
        answer(call, 'as', [['body']]);
        break;
      default:
        throw new Error(`${call.member} is not served here`);
    }
  };

  send({ type: 'call', ...theBus, member: 'Hello', body: [] });
  const asked = send({
    type: 'call',
    ...theBus,
    member: 'RequestName',
    signature: 'su',
    body: [service, 0],
  });
  await new Promise<void>((resolve, reject) => {
    let waiting = Buffer.alloc(0);
    socket.on('data', (chunk) => {
      waiting = Buffer.concat([waiting, chunk]);
      for (let next = readMessage(waiting); next !== null; next = readMessage(waiting)) {
        waiting = waiting.subarray(next.length);
        const { message } = next;
        if (message.type === 'error')
          reject(new Error(`the bus refused: ${message.body.join(' ')}`));
        if (message.type === 'return' && message.replyTo === asked) resolve();
        if (message.type === 'call') serve(message);
      }
    });
  });
  return shown;
}

/** D-Bus Specification, "Authentication Protocol", by the user's number. */
async function introduceOurselves(socket: Socket): Promise<void> {
  const user = Buffer.from(String(process.getuid?.() ?? 0)).toString('hex');
  socket.write(`\0AUTH EXTERNAL ${user}\r\n`);
  const [reply] = (await once(socket, 'data')) as [Buffer];
  if (!reply.toString().startsWith('OK ')) throw new Error(`the bus refused: ${reply.toString()}`);
  socket.write('BEGIN\r\n');
}
