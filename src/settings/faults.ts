import type { z } from 'zod';

/** A fault in a file or in the environment: where it is, and a text with what is wrong and what to do. */
export interface Fault {
  path: readonly (string | number)[];
  says: string;
}

const isText = (part: PropertyKey): part is string | number => typeof part !== 'symbol';

const MISSHAPEN: Partial<Record<string, string>> = {
  array: 'must be a list: write each entry on a line of its own that begins with "- "',
  object: 'must hold settings of the form "name: value", indented below it',
  string: 'must be one plain value; put it in quotes if it has a colon in it',
};

/** zod's issues in the words of the operation file. A schema's own messages take precedence. */
export const wording: z.core.$ZodErrorMap = (issue) => {
  if (issue.code === 'invalid_type') {
    return issue.input === undefined ? 'is missing: add it' : MISSHAPEN[issue.expected];
  }
  if (issue.code === 'invalid_value') {
    return `is ${JSON.stringify(issue.input)}: write one of ${issue.values.join(', ')}`;
  }
  if (issue.code === 'too_small') return 'is empty: it needs at least one entry';
  return undefined;
};

/** One fault for each issue; several unknown keys in one place are several faults, each at its own key. */
export const faultsOf = (error: z.ZodError): Fault[] =>
  error.issues.flatMap((issue) => {
    const path = issue.path.filter(isText);
    if (issue.code !== 'unrecognized_keys') return [{ path, says: issue.message }];
    return issue.keys.map((key) => ({ path: [...path, key], says: issue.message }));
  });
