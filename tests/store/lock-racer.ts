/** Tries to lock the given directory, prints how that went, and keeps the lock until its standard input ends. */
import { lockDirectory } from '../../src/store/directory-lock.ts';

try {
  lockDirectory(process.argv[2] ?? '');
  process.stdout.write('held\n');
} catch (error) {
  process.stdout.write(`${String(error)}\n`);
}
process.stdin.resume();
