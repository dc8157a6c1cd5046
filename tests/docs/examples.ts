/** Examples that a document gives: words for the chat, pieces of an operation file, lines of a recorded day. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse, stringify } from 'yaml';
import { columnOf, spansIn, textOf } from './markdown.ts';
import type { Document } from './markdown.ts';
import {
  SAMPLE_OPERATION,
  isZone,
  loadSettings,
  parseReplayLine,
  personById,
  hearWords,
  learnedRankers,
  zoneClock,
} from './program.ts';
import type { Roster } from './program.ts';

export const sampleOperation = (): Roster => {
  const loaded = loadSettings({}, isZone);
  if ('faults' in loaded) throw new Error(loaded.faults.join('\n'));
  return loaded.settings.roster;
};

/** Columns of tables that give what to write, each phrase in code. */
const PHRASES = /^(?:write|escriba|english|español)$/i;

/** A morning of the harvest. */
const SENT_MS = Date.parse('2026-10-20T16:42:00Z');

const rankers = learnedRankers();

/** What is found in the words of a driver, to the bot alone or in the crew's room. */
const foundIn = (phrase: string, addressed: boolean, roster: Roster): string => {
  const speaker = personById(roster, 'ana') ?? null;
  return hearWords(phrase, {
    roster,
    speaker,
    zone: roster.zone,
    sentMs: SENT_MS,
    clock: zoneClock,
    addressed,
    ear: { ...rankers, state: 'none' },
  }).found;
};

export const phrasesIn = (document: Document): string[] => columnOf(document, PHRASES).flatMap(spansIn);

export const phraseFaults = (document: Document): string[] => {
  const roster = sampleOperation();
  return phrasesIn(document).flatMap((phrase) => {
    const found = [true, false].map((addressed) => foundIn(phrase, addressed, roster));
    return found.every((one) => one === 'intents') ? [] : [`"${phrase}" is ${found.join(', in the room ')}`];
  });
};

/** The sample operation with the example in the place of its own lists. */
const faultsWith = (example: string): string[] => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldbell-docs-'));
  const path = join(folder, 'operation.yaml');
  const sample = parse(textOf(SAMPLE_OPERATION)) as Record<string, unknown>;
  const changed = parse(example) as Record<string, unknown>;
  try {
    writeFileSync(path, stringify({ ...sample, ...changed }));
    const loaded = loadSettings({ FIELDBELL_OPERATION: path }, isZone);
    return 'faults' in loaded ? loaded.faults : [];
  } finally {
    rmSync(folder, { recursive: true });
  }
};

export const operationFaults = ({ blocks }: Document): string[] =>
  blocks.filter(({ language }) => language === 'yaml').flatMap(({ code }) => faultsWith(code));

export const replayFaults = ({ blocks }: Document): string[] =>
  blocks
    .filter(({ language }) => language === 'ndjson')
    .flatMap(({ code }) => code.trim().split('\n'))
    .flatMap((line) => {
      const parsed = parseReplayLine(line);
      return 'fault' in parsed ? [`${line}: ${parsed.fault}`] : [];
    });
