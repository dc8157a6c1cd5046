/** Files, links and settings that a document names. */
import { existsSync } from 'node:fs';
import { basename, dirname, join, normalize } from 'node:path';
import { documentOf, filesOfRepository, fromRoot, textOf } from './markdown.ts';
import type { Document } from './markdown.ts';
import { OTHER_VARIABLES, isZone, loadSettings } from './program.ts';

/** Files that the reader makes, and places that stand for any such. */
const INVENTED = new Set([
  'answers.ndjson',
  'day.ndjson',
  'forecasts.ndjson',
  'homeserver.yaml',
  'my-farm.yaml',
  'operation.local.yaml',
  'adapters/X',
  'adapters/X/',
  'DAY.ndjson',
]);

const FILE = /^(?:[\w.-]+\/)*[\w.-]+\.(?:ts|mjs|cjs|md|yaml|json|service|ndjson|sql)$/;
const FOLDER = /^(?:src|adapters|tests|deploy|migrations|\.config|\.ci)(?:\/[\w-]+)*\/?$/;

const VARIABLE = /\b[A-Z]+(?:_[A-Z]+)+\b/g;

const bareNames = new Set(filesOfRepository('**/*').map((path) => basename(path)));

const isThere = (name: string, folder: string): boolean =>
  existsSync(fromRoot(name)) ||
  existsSync(fromRoot(join(folder, name))) ||
  (!name.includes('/') && bareNames.has(name));

/** Names within commands too; `/opt/fieldbell` is where deploy/README.md installs it. */
export const fileFaults = ({ path, spans, blocks }: Document): string[] =>
  [...spans, ...blocks.filter(({ language }) => language === 'sh').map(({ code }) => code)]
    .flatMap((code) => code.split(/[\s,]+/))
    .map((word) => word.replace('/opt/fieldbell/', ''))
    .filter((name) => (FILE.test(name) || FOLDER.test(name)) && !INVENTED.has(name))
    .filter((name) => !isThere(name, dirname(path)))
    .map((name) => `there is no ${name}`);

export const linkFaults = ({ path, links, anchors }: Document): string[] =>
  links
    .filter((link) => !/^https?:/.test(link))
    .flatMap((link) => {
      const [file = '', anchor = ''] = link.split('#');
      const target = normalize(join(dirname(path), file));
      if (file !== '' && !existsSync(fromRoot(target))) return [`${link}: there is no ${target}`];
      if (anchor === '') return [];
      const known = file === '' ? anchors : documentOf(target, textOf(target)).anchors;
      return known.includes(anchor) ? [] : [`${link}: there is no such heading`];
    });

/** Every setting of the environment: a name that is none is refused with a list of those that it may have meant. */
export const settingNames = (): string[] => {
  const wrong = ['FIELDBELL_NO', 'FIELDBELL_SLACK_NO', 'FIELDBELL_MATRIX_NO'];
  const loaded = loadSettings(Object.fromEntries(wrong.map((name) => [name, 'x'])), isZone);
  const faults = 'faults' in loaded ? loaded.faults : [];
  const meant = faults.flatMap((fault) => fault.match(/FIELDBELL_[A-Z_]+/g) ?? []);
  return [...new Set(meant)].filter((name) => !wrong.includes(name));
};

const isSetting = (name: string): boolean => {
  if (name.startsWith('FIELDBELL_')) return settingNames().includes(name);
  // Those that are named by others are known by being checked.
  return 'faults' in loadSettings({ [name]: '?' }, isZone);
};

const isReadElsewhere = (name: string): boolean =>
  OTHER_VARIABLES.some(
    (path) => textOf(path).includes(`env['${name}']`) || textOf(path).includes(`{${name}:`),
  );

const variablesIn = ({ spans, blocks }: Document): Set<string> =>
  new Set([...spans, ...blocks.map(({ code }) => code)].flatMap((code) => code.match(VARIABLE) ?? []));

export const settingFaults = (document: Document): string[] =>
  [...variablesIn(document)]
    .filter((name) => !isSetting(name) && !isReadElsewhere(name))
    .map((name) => `${name} is no setting`);
