/** Child processes that run a TypeScript file and tell by lines how far they are. They do not outlive the test. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { onTestFinished } from 'vitest';
import { COMPILED } from './compiled.ts';

export interface Child {
  pid: number;
  /** Resolves when so many lines have been printed; rejects if the process ends before. */
  linesAtLeast: (count: number) => Promise<readonly string[]>;
  /** Ends it without a chance to tidy up, and gives everything that it had printed. */
  kill: () => Promise<readonly string[]>;
}

export const startChild = (script: URL, ...args: readonly string[]): Child => {
  const child = spawn(process.execPath, [script.pathname, ...args], {
    stdio: ['pipe', 'pipe', 'inherit'],
    env: { ...process.env, ...COMPILED },
  });
  const lines: string[] = [];
  const output = createInterface({ input: child.stdout });
  output.on('line', (line) => lines.push(line));
  const closed = once(child, 'close');
  const kill = async () => {
    child.kill('SIGKILL');
    await closed;
    return lines;
  };
  onTestFinished(async () => {
    await kill();
  });
  return {
    pid: child.pid ?? 0,
    linesAtLeast: async (count) => {
      while (lines.length < count) {
        if (child.exitCode !== null) throw new Error(`${script.pathname} ended with ${child.exitCode}`);
        await Promise.race([once(output, 'line'), closed]);
      }
      return lines;
    },
    kill,
  };
};
