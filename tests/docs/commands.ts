/** Commands that a document names: npm scripts, the program's own commands and options, files that are run. */
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { fromRoot, textOf } from './markdown.ts';
import type { Document } from './markdown.ts';
import { MAIN } from './program.ts';

const run = promisify(execFile);

const LONG_OPTION = /--[a-z][a-z-]*/g;

const helpOf = async (...words: string[]): Promise<string> =>
  (await run(process.execPath, [fromRoot(MAIN), ...words, '--help'])).stdout;

/** What can be typed. The program's own options are what its help says. */
export interface Program {
  scripts: ReadonlyMap<string, string>;
  /** By command. */
  options: ReadonlyMap<string, readonly string[]>;
}

/** A command that a line without one stands for. */
const DEFAULT_COMMAND = 'run';

export const readProgram = async (): Promise<Program> => {
  const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> };
  const [, list = ''] = (await helpOf()).split('Commands:');
  const commands = [...list.matchAll(/^ {2}([a-z-]+)/gm)].map(([, name = '']) => name);
  const options = commands
    .filter((command) => command !== 'help')
    .map(async (command) => [command, (await helpOf(command)).match(LONG_OPTION) ?? []] as const);
  return { scripts: new Map(Object.entries(scripts)), options: new Map(await Promise.all(options)) };
};

const ASSIGNMENT = /^[A-Z_]+=/;
const isOurs = (span: string): boolean => /^(?:[A-Z_]+=\S+ )*(?:npm|node|fieldbell) /.test(span);

const withoutComments = (code: string): string => code.replaceAll('\\\n', ' ').replaceAll(/(^|\s)#.*$/gm, '');
const withoutRedirection = (command: string): string => command.replace(/[<>] *\S+$/, '').trim();

/** In words, without the settings in front of it. */
const wordsOf = (command: string): string[] => {
  const words = withoutRedirection(command).split(/\s+/);
  const first = words.findIndex((word) => !ASSIGNMENT.test(word));
  return words.slice(Math.max(0, first));
};

/** Each simple command of a document. */
export const commandsIn = ({ blocks, spans }: Document): string[][] =>
  [...blocks.filter(({ language }) => language === 'sh').map(({ code }) => code), ...spans.filter(isOurs)]
    .flatMap((code) => withoutComments(code).split(/\n|&&|;|\|/))
    .map(wordsOf);

interface Started {
  file: string;
  args: readonly string[];
}

/** What a script starts in the end, if that is a program of ours. */
const startedBy = (script: string, args: readonly string[]): Started | null => {
  const words = (script.split('&&').at(-1) ?? '').trim().split(' ');
  // Options before the file are Node's own.
  const [tool, file = '', ...own] = words.filter((word, at) => !(word.startsWith('--') && at === 1));
  return tool === 'node' ? { file, args: [...own, ...args] } : null;
};

const ownFaults = ({ options }: Program, { file, args }: Started): string[] => {
  const [first = ''] = args;
  const isMain = file === MAIN;
  if (isMain && /^[a-z]/.test(first) && !options.has(first)) return [`${file}: no command ${first}`];
  const command = isMain && options.has(first) ? first : DEFAULT_COMMAND;
  const isKnown = (option: string): boolean =>
    isMain ? (options.get(command)?.includes(option) ?? false) : namesOption(file, option);
  return args
    .filter((arg) => arg.startsWith('--') && arg !== '--')
    .flatMap((option) => (isKnown(option) ? [] : [`${file} ${isMain ? command : ''}: no option ${option}`]));
};

/** Of a program that reads its options with `parseArgs`. */
const namesOption = (file: string, option: string): boolean =>
  new RegExp(`^ +'?${option.slice(2)}'?: \\{ type: '`, 'm').test(textOf(file));

const npmFaults = (program: Program, [verb = '', ...rest]: readonly string[]): string[] => {
  if (verb === 'ci' || verb === 'exec') return [];
  const words = verb === 'run' ? rest.filter((word) => word !== '-s') : [verb, ...rest];
  const [name = '', ...args] = words;
  const script = program.scripts.get(name);
  if (script === undefined) return [`npm: no script ${name}`];
  const started = startedBy(
    script,
    args.filter((arg) => arg !== '--'),
  );
  return started === null ? [] : ownFaults(program, started);
};

const faultsOf = (program: Program, [tool, ...args]: readonly string[]): string[] => {
  if (tool === 'npm') return npmFaults(program, args);
  if (tool === 'fieldbell') return ownFaults(program, { file: MAIN, args });
  const [file = '', ...rest] = args;
  return tool === 'node' && file.endsWith('.ts') ? ownFaults(program, { file, args: rest }) : [];
};

/** An option that is named by itself, in code, must be one of some program of ours. */
const loneOptionFaults = (program: Program, { spans }: Document): string[] => {
  const started = [...program.scripts.values()].flatMap((script) => startedBy(script, [])?.file ?? []);
  const isKnown = (option: string): boolean =>
    [...program.options.values()].some((options) => options.includes(option)) ||
    started.some((file) => file.endsWith('.ts') && namesOption(file, option));
  return spans
    .filter((span) => span.startsWith('--'))
    .flatMap((span) => span.match(LONG_OPTION) ?? [])
    .flatMap((option) => (isKnown(option) ? [] : [`no program has the option ${option}`]));
};

export const commandFaults = (document: Document, program: Program): string[] => [
  ...commandsIn(document).flatMap((words) => faultsOf(program, words)),
  ...loneOptionFaults(program, document),
];
