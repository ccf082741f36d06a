import { describe, expect, it } from 'vitest';
import { completeTypes, messageBytes, readMessage, type DbusMessage } from './support/dbus-wire.ts';

/* What the notification test stands on: the reader must not be the reason that a notification looks right. */

describe('the wire format of D-Bus', () => {
  it('splits a signature into its complete types', () => {
    expect(completeTypes('susssasa{sv}i')).toEqual(['s', 'u', 's', 's', 's', 'as', 'a{sv}', 'i']);
    expect(completeTypes('aa(ya{sv})u')).toEqual(['aa(ya{sv})', 'u']);
    expect(() => completeTypes('a{s')).toThrow('ends within a type');
  });

  it('reads a big-endian call laid out by hand', () => {
    const bytes = Buffer.from(
      [
        '42 01 00 01 00000008 00000007 00000019', // B, call, no flags, version 1; body 8, serial 7, fields 25 bytes
        '01 01 6f 00 00000002 2f61 00 0000000000', // path: object "/a", padded to 8
        '08 01 67 00 03 7961 79 00', // signature: "yay"
        '00000000000000', // head padded to 8
        '05 000000 00000000', // byte 5, padded to 4, an array without elements
      ]
        .join('')
        .replaceAll(' ', ''),
      'hex',
    );
    expect(readMessage(bytes)).toEqual({
      length: 56,
      message: { type: 'call', serial: 7, path: '/a', signature: 'yay', body: [5, []] },
    });
    expect(readMessage(bytes.subarray(0, 55))).toBeNull();
  });

  it('reads back what it writes', () => {
    const message: DbusMessage = {
      type: 'return',
      serial: 9,
      replyTo: 4,
      destination: ':1.7',
      signature: 'usas',
      body: [3, 'Stühle 🪑', ['body', 'x']],
    };
    const bytes = messageBytes(message);
    expect(readMessage(Buffer.concat([bytes, bytes]))).toEqual({ message, length: bytes.length });
  });
});
