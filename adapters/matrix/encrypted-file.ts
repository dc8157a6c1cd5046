import { createCipheriv, createHash, randomBytes } from 'node:crypto';

/** How to decrypt a file that was uploaded encrypted: https://spec.matrix.org/latest/client-server-api/#sending-encrypted-attachments */
interface EncryptedFile {
  v: 'v2';
  key: { kty: 'oct'; key_ops: string[]; alg: 'A256CTR'; k: string; ext: true };
  iv: string;
  hashes: { sha256: string };
}

/** Without padding, as the specification requires. */
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64').replace(/=+$/, '');

/** Encrypts with a new key, which must be sent only in an encrypted event. */
export const encryptedFile = (bytes: Uint8Array): { locked: Buffer; file: EncryptedFile } => {
  const key = randomBytes(32);
  // The lower half counts blocks from 0, so that it can't overflow.
  const iv = Buffer.concat([randomBytes(8), Buffer.alloc(8)]);
  const cipher = createCipheriv('aes-256-ctr', key, iv);
  const locked = Buffer.concat([cipher.update(bytes), cipher.final()]);
  return {
    locked,
    file: {
      v: 'v2',
      key: {
        kty: 'oct',
        key_ops: ['encrypt', 'decrypt'],
        alg: 'A256CTR',
        k: key.toString('base64url'),
        ext: true,
      },
      iv: base64(iv),
      hashes: { sha256: base64(createHash('sha256').update(locked).digest()) },
    },
  };
};
