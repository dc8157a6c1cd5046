/** The bot, or another command of it, as a process of its own: `node src/main.ts` with arguments, settings and typed lines. It does not outlive the test. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { COMPILED } from './compiled.ts';

const MAIN = fileURLToPath(new URL('../../src/main.ts', import.meta.url));

interface Ended {
  code: number | null;
  out: string;
  err: string;
}

export interface Fieldbell {
  /** Types lines. */
  type: (...lines: readonly string[]) => void;
  /** Resolves with the standard output so far when the piece has come in it; rejects if the process ends before. */
  shows: (piece: string) => Promise<string>;
  /** No more is typed: resolves when the process has ended by itself. */
  end: () => Promise<Ended>;
  /** Ends it without a chance to tidy up. */
  kill: () => Promise<Ended>;
}

/** Settings of whoever runs the tests do not count. */
const bareEnvironment = (): NodeJS.ProcessEnv =>
  Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith('FIELDBELL_')));

export const startFieldbell = (
  args: readonly string[],
  settings: Readonly<Record<string, string>> = {},
  main = MAIN,
): Fieldbell => {
  const child = spawn(process.execPath, [main, ...args], {
    env: { ...bareEnvironment(), ...COMPILED, ...settings },
  });
  const text = { out: '', err: '' };
  let changed = Promise.withResolvers<undefined>();
  for (const [stream, name] of [[child.stdout, 'out'] as const, [child.stderr, 'err'] as const])
    stream.setEncoding('utf8').on('data', (piece: string) => {
      text[name] += piece;
      changed.resolve(undefined);
      changed = Promise.withResolvers();
    });
  // A process that ends at once takes no more lines.
  child.stdin.on('error', () => undefined);
  const closed = once(child, 'close');
  const ended = async (): Promise<Ended> => {
    await closed;
    return { code: child.exitCode, ...text };
  };
  const kill = () => {
    child.kill('SIGKILL');
    return ended();
  };
  onTestFinished(async () => {
    await kill();
  });
  return {
    type: (...lines) => child.stdin.write([...lines, ''].join('\n')),
    shows: async (piece) => {
      while (!text.out.includes(piece)) {
        if (child.exitCode !== null) throw new Error(`It ended with ${child.exitCode}: ${text.err}`);
        await Promise.race([changed.promise, closed]);
      }
      return text.out;
    },
    end: () => {
      child.stdin.end();
      return ended();
    },
    kill,
  };
};
