import { isMap, LineCounter, parseDocument, type Document } from 'yaml';
import { reasonOf } from '../core/reason.ts';
import type { Roster } from '../core/roster.ts';
import { crossChecks } from './cross-checks.ts';
import { faultsOf, wording, type Fault } from './faults.ts';
import { operationSchema } from './operation-schema.ts';
import { rosterOf } from './roster.ts';

/** The file as written, to find the line and the name of a fault. */
interface FileSource {
  /** As the person who corrects it knows it. */
  fileName: string;
  document: Document;
  lines: LineCounter;
}

/** Such as "people / Carla / truck": list entries by name, not by number. */
const placeOf = ({ document }: FileSource, path: Fault['path']): string =>
  path
    .flatMap((part, i) => {
      if (typeof part === 'string') return [part];
      const entry = document.getIn(path.slice(0, i + 1));
      if (!isMap(entry)) return [];
      const name = entry.get('name') ?? entry.get('id');
      return [typeof name === 'string' ? name : `entry ${part + 1}`];
    })
    .join(' / ');

/** The line of the value; if it is missing, that of its parent. */
const lineOf = (source: FileSource, path: Fault['path']): number => {
  const node: unknown = source.document.getIn(path, true);
  const range = typeof node === 'object' && node !== null && 'range' in node ? node.range : null;
  if (Array.isArray(range) && typeof range[0] === 'number') return source.lines.linePos(range[0]).line;
  return path.length === 0 ? 1 : lineOf(source, path.slice(0, -1));
};

const sentences = (source: FileSource, faults: readonly Fault[]): string[] =>
  faults
    .map(({ path, says }) => ({ line: lineOf(source, path), place: placeOf(source, path), says }))
    .sort((a, b) => a.line - b.line)
    .map(({ line, place, says }) =>
      [`${source.fileName}, line ${line}`, place, says].filter((part) => part !== '').join(': '),
    )
    .map((sentence) => `${sentence}.`);

/** The file's content, or why it is not YAML. References to unknown anchors are found only on reading. */
const valueOf = ({ document, lines, fileName }: FileSource): { value: unknown } | { faults: string[] } => {
  if (document.errors.length > 0) {
    const faults = document.errors.map((error) => {
      const { line } = lines.linePos(error.pos[0]);
      return `${fileName}, line ${line}: ${error.message}. Look at the indentation, colons and quotes there.`;
    });
    return { faults };
  }
  try {
    return { value: document.toJS() };
  } catch (error) {
    const why = reasonOf(error);
    return { faults: [`${fileName}: ${why}. Write the value out instead.`] };
  }
};

/** The roster, or every fault of the file with its line, its place, what is wrong and what to do. */
export const readOperation = (
  text: string,
  fileName: string,
  isZone: (name: string) => boolean,
): { roster: Roster } | { faults: string[] } => {
  const lines = new LineCounter();
  // Failsafe: every value stays text, as it was written.
  const document = parseDocument(text, { schema: 'failsafe', lineCounter: lines, prettyErrors: false });
  const source = { fileName, document, lines };
  const read = valueOf(source);
  if ('faults' in read) return read;
  const file = operationSchema(isZone).safeParse(read.value ?? {}, { error: wording });
  const faults = [...(file.success ? [] : faultsOf(file.error)), ...crossChecks(read.value)];
  return file.success && faults.length === 0
    ? { roster: rosterOf(file.data) }
    : { faults: sentences(source, faults) };
};
