/** Writes to the embedded database in the given directory until it is killed; prints each number that is safe. */
import { openStore } from '../../src/store/open.ts';
import { fact, heard, outgoing } from '../contracts/samples.ts';

const store = await openStore({ embedded: process.argv[2] ?? '' }, ['a']);
let n = await store.book.inOneGo('a', async (page) => (await page.factsAfter(0)).length);
for (;;) {
  n += 1;
  const id = String(n);
  await store.book.inOneGo('a', async (page) => {
    await page.receive(heard(id));
    await page.write([fact(id)]);
    await page.enqueue([outgoing(id, { to: { room: id } })]);
  });
  process.stdout.write(`${id}\n`);
}
