/** The documents of the repository, taken apart as far as they can be held against the program. */
import { globSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** A path from the root of the repository, as the file system has it. */
export const fromRoot = (path: string): string => `${ROOT}${path}`;
export const textOf = (path: string): string => readFileSync(fromRoot(path), 'utf8');

/** Paths from the root; nothing that is installed or made by running. */
export const filesOfRepository = (pattern: string): string[] =>
  globSync(pattern, { cwd: ROOT, exclude: ['**/node_modules/**', '.git/**', '.fieldbell/**'] });

export interface Table {
  header: readonly string[];
  rows: readonly (readonly string[])[];
}

export interface Document {
  /** From the root of the repository. */
  path: string;
  text: string;
  /** Fenced code, by its language. */
  blocks: readonly { language: string; code: string }[];
  /** What is set in code within the text. */
  spans: readonly string[];
  links: readonly string[];
  tables: readonly Table[];
  /** Of the headings, as links name them. */
  anchors: readonly string[];
}

const FENCE = /^ *```(\w*)\n([\s\S]*?)^ *```$/gm;

export const spansIn = (text: string): string[] =>
  [...text.matchAll(/`([^`]+)`/g)].map(([, code = '']) => code);

const cellsOf = (line: string): string[] =>
  line
    .trim()
    .slice(1, -1)
    .split('|')
    .map((cell) => cell.trim());

const tablesIn = (text: string): Table[] =>
  [...text.matchAll(/(?:^ *\|.*\|$\n?)+/gm)].map(([table]) => {
    const [header = [], , ...rows] = table.trimEnd().split('\n').map(cellsOf);
    return { header, rows };
  });

const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]/gu, '')
    .replaceAll(' ', '-');

export const documentOf = (path: string, text: string): Document => {
  const prose = text.replaceAll(FENCE, '');
  return {
    path,
    text,
    blocks: [...text.matchAll(FENCE)].map(([, language = '', code = '']) => ({ language, code })),
    spans: spansIn(prose),
    links: [...prose.matchAll(/\]\(([^)\s]+)\)/g)].map(([, link = '']) => link),
    tables: tablesIn(prose),
    anchors: [...prose.matchAll(/^#+ (.+)$/gm)].map(([, heading = '']) => anchorOf(heading)),
  };
};

export const documentAt = (path: string): Document => documentOf(path, textOf(path));

/** The column of that name in every table that has one. */
export const columnOf = ({ tables }: Document, name: RegExp): string[] =>
  tables.flatMap(({ header, rows }) => {
    const at = header.findIndex((cell) => name.test(cell));
    return at < 0 ? [] : rows.map((row) => row[at] ?? '');
  });
