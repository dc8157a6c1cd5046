import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { holderNow, lockDirectory, lockFileOf } from '../../src/store/directory-lock.ts';
import type { Holder } from '../../src/store/directory-lock.ts';
import { startChild } from '../support/child.ts';
import { temporaryDirectory } from '../support/temporary.ts';

const RACER = new URL('lock-racer.ts', import.meta.url);

describe('directory lock', () => {
  let directory: string;
  beforeEach(() => {
    directory = temporaryDirectory();
  });
  const leaveLock = (holder: Holder) => {
    writeFileSync(join(directory, lockFileOf(holder)), '');
  };
  const expectTakenOver = () => {
    const unlock = lockDirectory(directory);
    expect(readdirSync(directory)).toEqual([lockFileOf(holderNow(process.pid))]);
    unlock();
    expect(readdirSync(directory)).toEqual([]);
  };

  test('a live process keeps its directory, and the refusal says who holds what and what to do', async () => {
    const holder = startChild(RACER, directory);
    expect(await holder.linesAtLeast(1)).toEqual(['held']);
    const message = new RegExp(`Process ${holder.pid} on ".*" holds ${directory}, .* Stop that process`);
    expect(() => lockDirectory(directory)).toThrow(message);
    await holder.kill();
    expectTakenOver();
  });

  test('of several processes that come at once at most one is let in, also over a stale lock', async () => {
    leaveLock({ ...holderNow(process.ppid), started: 'earlier boot-1' });
    const racers = Array.from({ length: 4 }, () => startChild(RACER, directory));
    const outcomes = await Promise.all(racers.map((racer) => racer.linesAtLeast(1)));
    expect(outcomes.flat().filter((line) => line === 'held').length).toBeLessThanOrEqual(1);
    await Promise.all(racers.map((racer) => racer.kill()));
    expectTakenOver();
  });

  test('the lock of an ended process is taken over', async () => {
    const ended = startChild(RACER, directory);
    await ended.linesAtLeast(1);
    await ended.kill();
    expect(readdirSync(directory)).toHaveLength(1);
    expectTakenOver();
  });

  // Without /proc the start of a process is not known, and a live pid counts as the holder.
  test.skipIf(!existsSync('/proc/self/stat'))('a pid used again is not the holder', () => {
    leaveLock({ ...holderNow(process.ppid), started: `${holderNow(process.ppid).started}0` });
    expectTakenOver();
  });

  test('the own pid in a lock is an earlier life of it: in a container the bot always has the same pid', () => {
    leaveLock({ ...holderNow(process.pid), started: 'earlier boot-1' });
    expectTakenOver();
  });

  test('a process on another machine cannot be checked: refused, with the file to delete', () => {
    leaveLock({ host: 'barn, north', pid: 7, started: '' });
    const file = join(directory, 'in-use,barn%2C%20north,7,');
    expect(() => lockDirectory(directory)).toThrow(
      `Process 7 on "barn, north" holds ${directory}, and whether`,
    );
    expect(() => lockDirectory(directory)).toThrow(`from "${hostname()}". If it is gone, delete ${file} and`);
    expect(readdirSync(directory)).toEqual(['in-use,barn%2C%20north,7,']);
  });

  test('one process opens a directory once', () => {
    const unlock = lockDirectory(directory);
    expect(() => lockDirectory(directory)).toThrow('open in this process already');
    unlock();
    expectTakenOver();
  });
});
