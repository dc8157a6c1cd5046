/** The server's side of a WebSocket, as far as Socket Mode needs it (RFC 6455: text, ping, pong, close). */
import { createHash } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';

const OPCODE = { text: 1, close: 8, ping: 9, pong: 10 } as const;

export interface ServerSocket {
  send: (text: string) => void;
  ping: () => void;
  /** Says goodbye properly. */
  close: () => void;
  /** Breaks the link, as a lost network does. */
  cut: () => void;
}

/** RFC 6455 §5.2; the server does not mask. */
const frame = (opcode: number, payload: Buffer): Buffer => {
  const { length } = payload;
  if (length < 126) return Buffer.concat([Buffer.from([0x80 | opcode, length]), payload]);
  const head = Buffer.alloc(length < 65_536 ? 4 : 10);
  head.writeUInt8(0x80 | opcode, 0);
  head.writeUInt8(length < 65_536 ? 126 : 127, 1);
  if (length < 65_536) head.writeUInt16BE(length, 2);
  else head.writeBigUInt64BE(BigInt(length), 2);
  return Buffer.concat([head, payload]);
};

interface Frame {
  opcode: number;
  payload: Buffer;
  size: number;
}

/** The first whole frame in `bytes`; null = more is to come. Clients send unfragmented and masked. */
const firstFrame = (bytes: Buffer): Frame | null => {
  if (bytes.length < 2) return null;
  const short = bytes.readUInt8(1) & 0x7f;
  const lengthBytes = short === 126 ? 2 : short === 127 ? 8 : 0;
  const maskAt = 2 + lengthBytes;
  if (bytes.length < maskAt + 4) return null;
  const length =
    lengthBytes === 0 ? short : lengthBytes === 2 ? bytes.readUInt16BE(2) : Number(bytes.readBigUInt64BE(2));
  const size = maskAt + 4 + length;
  if (bytes.length < size) return null;
  const mask = bytes.subarray(maskAt, maskAt + 4);
  const payload = Buffer.from(bytes.subarray(maskAt + 4, size)).map((byte, at) => byte ^ (mask[at % 4] ?? 0));
  return { opcode: bytes.readUInt8(0) & 0x0f, payload: Buffer.from(payload), size };
};

export const acceptWebSocket = (
  request: IncomingMessage,
  stream: Duplex,
  on: { text: (text: string) => void; end: () => void },
): ServerSocket => {
  // RFC 6455 §4.2.2
  const accept = createHash('sha1')
    .update(`${String(request.headers['sec-websocket-key'])}258EAFA5-E914-47DA-95CA-C5AB0DC85B11`)
    .digest('base64');
  stream.write(
    `HTTP/1.1 101 Switching Protocols\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Accept: ${accept}\r\n\r\n`,
  );
  const write = (opcode: number, payload: Buffer): void => {
    if (stream.writable) stream.write(frame(opcode, payload));
  };
  const receive = ({ opcode, payload }: Frame): void => {
    if (opcode === OPCODE.text) on.text(payload.toString());
    if (opcode === OPCODE.ping) write(OPCODE.pong, payload);
    if (opcode !== OPCODE.close) return;
    write(OPCODE.close, payload);
    stream.end();
  };
  let waiting = Buffer.alloc(0);
  stream.on('data', (chunk: Buffer) => {
    waiting = Buffer.concat([waiting, chunk]);
    for (let next = firstFrame(waiting); next !== null; next = firstFrame(waiting)) {
      waiting = waiting.subarray(next.size);
      receive(next);
    }
  });
  stream.on('error', () => undefined);
  stream.on('close', on.end);
  return {
    send: (text) => {
      write(OPCODE.text, Buffer.from(text));
    },
    ping: () => {
      write(OPCODE.ping, Buffer.from('ping'));
    },
    close: () => {
      write(OPCODE.close, Buffer.from([0x03, 0xe8]));
    },
    cut: () => stream.destroy(),
  };
};
