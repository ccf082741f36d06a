/**
 * As much of the D-Bus wire format as a notification service needs: D-Bus Specification, "Type System", "Marshaling"
 * and "Message Protocol" (protocol version 1, unchanged since 2006). Sent little-endian, read in either order.
 */

export type DbusMessage = {
  readonly type: 'call' | 'return' | 'error' | 'signal';
  readonly serial: number;
  readonly replyTo?: number;
  readonly path?: string;
  readonly interface?: string;
  readonly member?: string;
  readonly destination?: string;
  readonly sender?: string;
  /** Signature of the body. */
  readonly signature?: string;
  readonly body: readonly unknown[];
};

const types = ['call', 'return', 'error', 'signal'] as const;
const fieldCodes = {
  path: 1,
  interface: 2,
  member: 3,
  replyTo: 5,
  destination: 6,
  sender: 7,
  signature: 8,
} as const;
const fieldTypes = {
  path: 'o',
  interface: 's',
  member: 's',
  replyTo: 'u',
  destination: 's',
  sender: 's',
  signature: 'g',
} as const;
type FieldName = keyof typeof fieldCodes;
const fieldNames = Object.keys(fieldCodes) as FieldName[];

const fixedSizes: Readonly<Record<string, number>> = {
  y: 1,
  n: 2,
  q: 2,
  b: 4,
  i: 4,
  u: 4,
  x: 8,
  t: 8,
  d: 8,
};
const alignments: Readonly<Record<string, number>> = {
  ...fixedSizes,
  s: 4,
  o: 4,
  a: 4,
  '(': 8,
  '{': 8,
};
const alignmentOf = (type: string): number => alignments[type[0] ?? ''] ?? 1;
const padded = (length: number, alignment: number): number =>
  Math.ceil(length / alignment) * alignment;

/** `sa{sv}i` as `s`, `a{sv}`, `i`. */
export function completeTypes(signature: string): readonly string[] {
  const found: string[] = [];
  for (let from = 0; from < signature.length;) {
    let end = from;
    while (signature[end] === 'a') end++;
    for (let depth = 0; ;) {
      const mark = signature[end++];
      if (mark === undefined) throw new Error(`"${signature}" ends within a type`);
      if (mark === '(' || mark === '{') depth++;
      if (mark === ')' || mark === '}') depth--;
      if (depth === 0) break;
    }
    found.push(signature.slice(from, end));
    from = end;
  }
  return found;
}

function reader(bytes: Buffer, little: boolean, start: number) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  let at = start;
  const take = (length: number): number => {
    at += length;
    return at - length;
  };
  const text = (length: number): string => {
    const from = take(length + 1);
    return bytes.toString('utf8', from, from + length);
  };
  const read = (type: string): unknown => {
    at = padded(at, alignmentOf(type));
    switch (type[0]) {
      case 'y':
        return view.getUint8(take(1));
      case 'n':
        return view.getInt16(take(2), little);
      case 'q':
        return view.getUint16(take(2), little);
      case 'b':
      case 'u':
        return view.getUint32(take(4), little);
      case 'i':
        return view.getInt32(take(4), little);
      case 'x':
        return Number(view.getBigInt64(take(8), little));
      case 't':
        return Number(view.getBigUint64(take(8), little));
      case 'd':
        return view.getFloat64(take(8), little);
      case 's':
      case 'o':
        return text(view.getUint32(take(4), little));
      case 'g':
        return text(view.getUint8(take(1)));
      case 'v':
        return read(String(read('g')));
      case 'a': {
        const length = view.getUint32(take(4), little);
        const element = type.slice(1);
        at = padded(at, alignmentOf(element));
        const end = at + length;
        const values: unknown[] = [];
        while (at < end) values.push(read(element));
        return element.startsWith('{') ? Object.fromEntries(values as [string, unknown][]) : values;
      }
      case '(':
      case '{':
        return completeTypes(type.slice(1, -1)).map(read);
      default:
        throw new Error(`type ${type} is not known here`);
    }
  };
  return { read, at: () => at };
}

/** The first message in the bytes and how many of them it took; null while it is not whole yet. */
export function readMessage(
  bytes: Buffer,
): { readonly message: DbusMessage; readonly length: number } | null {
  if (bytes.length < 16) return null;
  const little = bytes[0] === 'l'.charCodeAt(0);
  const number = (at: number): number => (little ? bytes.readUInt32LE(at) : bytes.readUInt32BE(at));
  const headLength = padded(16 + number(12), 8);
  const length = headLength + number(4);
  if (bytes.length < length) return null;
  const fields = new Map(reader(bytes, little, 12).read('a(yv)') as [number, unknown][]);
  const named = Object.fromEntries(
    fieldNames.flatMap((name) =>
      fields.has(fieldCodes[name]) ? [[name, fields.get(fieldCodes[name])]] : [],
    ),
  );
  const body = reader(bytes.subarray(headLength, length), little, 0);
  const signature = typeof named['signature'] === 'string' ? named['signature'] : '';
  const type = types[(bytes[1] ?? 0) - 1] ?? 'signal';
  return {
    message: { ...named, type, serial: number(8), body: completeTypes(signature).map(body.read) },
    length,
  };
}

/** Strings, numbers and lists of strings: all that is sent here. */
function write(signature: string, values: readonly unknown[]): Buffer {
  let bytes = Buffer.alloc(0);
  const add = (more: Buffer, alignment: number): void => {
    bytes = Buffer.concat([
      bytes,
      Buffer.alloc(padded(bytes.length, alignment) - bytes.length),
      more,
    ]);
  };
  const unsigned = (value: number): Buffer => {
    const word = Buffer.alloc(4);
    word.writeUInt32LE(value);
    return word;
  };
  const put = (type: string, value: unknown): void => {
    const text = Buffer.from(`${String(value)}\0`);
    if (type === 'u') add(unsigned(Number(value)), 4);
    else if (type === 's' || type === 'o') add(Buffer.concat([unsigned(text.length - 1), text]), 4);
    else if (type === 'g') add(Buffer.concat([Buffer.of(text.length - 1), text]), 1);
    else if (type === 'as') {
      const list = write('s'.repeat((value as string[]).length), value as string[]);
      add(Buffer.concat([unsigned(list.length), list]), 4);
    } else throw new Error(`type ${type} is not sent here`);
  };
  for (const [index, type] of completeTypes(signature).entries()) put(type, values[index]);
  return bytes;
}

export function messageBytes(message: DbusMessage): Buffer {
  const body = write(message.signature ?? '', message.body);
  let fields = Buffer.alloc(0);
  for (const name of fieldNames) {
    const value = message[name];
    if (value === undefined) continue;
    const type = fieldTypes[name];
    // A struct of a byte and a variant begins at 8; code, signature length, signature and its end fill 4.
    const padding = Buffer.alloc(padded(fields.length, 8) - fields.length);
    fields = Buffer.concat([
      fields,
      padding,
      Buffer.of(fieldCodes[name], 1, type.charCodeAt(0), 0),
      write(type, [value]),
    ]);
  }
  const head = Buffer.alloc(16);
  head.write('l');
  head[1] = types.indexOf(message.type) + 1;
  head[3] = 1;
  head.writeUInt32LE(body.length, 4);
  head.writeUInt32LE(message.serial, 8);
  head.writeUInt32LE(fields.length, 12);
  return Buffer.concat([
    head,
    fields,
    Buffer.alloc(padded(fields.length, 8) - fields.length),
    body,
  ]);
}
