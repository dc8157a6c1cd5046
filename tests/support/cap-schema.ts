/** The schema of CAP 1.2 as OASIS has published it (tests/fixtures), run by xmllint of Debian's libxml2-utils. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const SCHEMA = fileURLToPath(new URL('../fixtures/CAP-v1.2.xsd', import.meta.url));

/** Why the schema cannot be run here; null = it can. */
export const schemaMissing: string | null =
  spawnSync('xmllint', ['--version']).error === undefined
    ? null
    : 'xmllint is missing: apt-get install libxml2-utils';

/** What the schema finds wrong with these messages; one that keeps to it gives nothing. */
export const schemaFaults = (messages: readonly string[]): string[] => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldbell-cap-'));
  try {
    const files = messages.map((xml, at) => {
      const file = join(folder, `${at}.xml`);
      writeFileSync(file, xml);
      return file;
    });
    const run = spawnSync('xmllint', ['--noout', '--nonet', '--schema', SCHEMA, ...files], {
      encoding: 'utf8',
      maxBuffer: 64_000_000,
    });
    const lines = run.stderr.split('\n').filter((line) => line !== '');
    const valid = lines.filter((line) => line.endsWith(' validates'));
    // A schema that did not compile, or a file that was not read, is a fault too.
    const isWhole = run.status === 0 && valid.length === messages.length;
    const faults = lines.filter((line) => !line.endsWith(' validates'));
    return isWhole || faults.length > 0 ? faults : ['xmllint did not read every message'];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
