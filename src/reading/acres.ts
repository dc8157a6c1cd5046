/** Acres that are dug or topped. */
import type { FieldMachine } from '../core/book/facts.ts';
import { amountsIn } from './amounts.ts';
import { MOST_ACRES } from './assumptions.ts';
import { atStart, either, kindWords } from './every-language.ts';
import type { Built, Hearing } from './hearing.ts';
import { told } from './hearing.ts';
import { withNumbers } from './numbers.ts';
import type { Resolved } from './resolve.ts';
import { slotsOf } from './sign.ts';
import { tokenize } from './tokens.ts';

const TOPPING = atStart(either(({ talk }) => talk.topping));
const ACRES = kindWords(({ kinds }) => kinds.acres);
const HALF = atStart(either(({ clock }) => clock.andHalf));

/** "Nine and a half", "nueve acres y medio": the number with the half that stands behind it or behind its acres. */
const withHalf = (count: string, text: string): number => {
  const tokens = withNumbers(tokenize(text));
  const amount = amountsIn(tokens).find(({ value }) => Math.floor(value) === Number(count));
  if (amount === undefined || !Number.isInteger(amount.value)) return amount?.value ?? Number(count);
  const after = tokens.filter(({ start }) => start >= amount.end).map((token) => token.text);
  const rest = ACRES.has(after[0] ?? '') ? after.slice(1) : after;
  return HALF.test(rest.join(' ')) ? amount.value + 0.5 : amount.value;
};

const countIn = ({ draft, numbers }: Resolved, text: string): number | null => {
  const named = slotsOf(draft.named, 'number')[0]?.text;
  const said = named ?? (numbers.length === 1 ? numbers[0] : undefined);
  if (said === undefined) return null;
  const acres = withHalf(said, text);
  return acres > 0 && acres <= MOST_ACRES ? acres : null;
};

/** Whose acres: what the words say, else those of the sender's machine, else the digger's. */
const machineOf = (said: FieldMachine | null, text: string, { speaker }: Hearing): FieldMachine => {
  const isTopping = tokenize(text).some((token) => TOPPING.test(token.text));
  if (said !== null || isTopping) return said ?? 'topper';
  return speaker?.roles.includes('topper-operator') === true ? 'topper' : 'digger';
};

export const buildAcres = (
  machine: FieldMachine | null,
  resolved: Resolved,
  text: string,
  hearing: Hearing,
): Built => {
  const acres = countIn(resolved, text);
  if (acres === null) return null;
  const { field } = resolved;
  // A time beside them is when the work began: "14 acres since noon".
  return told({ do: 'report-acres', machine: machineOf(machine, text, hearing), field, acres, atMs: null });
};
