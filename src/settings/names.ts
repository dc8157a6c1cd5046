/** The names of a list entry in the operation file. */
export interface NamedEntry {
  id?: string | undefined;
  name?: string | undefined;
  aliases?: readonly string[] | undefined;
}

/** Short name: `creek-bottom` for "Creek Bottom", `jose` for "José". Empty if no letter or digit is left. */
export const slug = (name: string): string =>
  name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

/** The entry's id: as written, else made from its name. */
export const idOf = (entry: NamedEntry): string => entry.id ?? slug(entry.name ?? '');

const calls = (entry: NamedEntry, said: string): boolean =>
  [idOf(entry), entry.name, ...(entry.aliases ?? [])].some(
    (name) => name?.toLowerCase() === said.toLowerCase(),
  );

/** The entry with that id, name or alias, ignoring case. */
export const called = <T extends NamedEntry>(entries: readonly T[], said: string): T | undefined =>
  entries.find((entry) => calls(entry, said));
