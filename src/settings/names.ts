/** What an entry of a list is called in the operation file. */
export interface NamedEntry {
  id?: string | undefined;
  name?: string | undefined;
  aliases?: readonly string[] | undefined;
}

/** The short name of "Creek Bottom" is `creek-bottom`, that of "José" is `jose`. Empty where no letter or digit is left. */
export const slug = (name: string): string =>
  name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

/** The entry's id: as written, else made of its name. */
export const idOf = (entry: NamedEntry): string => entry.id ?? slug(entry.name ?? '');

const calls = (entry: NamedEntry, said: string): boolean =>
  [idOf(entry), entry.name, ...(entry.aliases ?? [])].some(
    (name) => name?.toLowerCase() === said.toLowerCase(),
  );

/** The entry that goes by that id, name or alias, in capitals or not. */
export const called = <T extends NamedEntry>(entries: readonly T[], said: string): T | undefined =>
  entries.find((entry) => calls(entry, said));
