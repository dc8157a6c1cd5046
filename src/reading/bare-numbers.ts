/** Numbers that stand alone, by what is done: a place in the line, or a truck. */
import { wordSet } from './every-language.ts';
import type { Act } from './acts.ts';
import type { Hearing } from './hearing.ts';
import type { Element } from './sign.ts';
import { trucksNumbered } from './truck-numbers.ts';

const self = wordSet(({ names }) => names.self);
const ahead = wordSet(({ names }) => names.counted);

const asNumber = (element: Element, number: number): Element => ({
  is: 'slot',
  slot: { slot: 'number', text: String(number), lead: null, said: String(number) },
  start: element.start,
  end: element.end,
});

/** The place that "I am number 4", "soy el tercero" tell; null = another number. */
const placeAt = (elements: readonly Element[], at: number): number | null => {
  const element = elements[at];
  if (element?.is !== 'slot') return null;
  const { slot } = element;
  const before = elements.slice(Math.max(0, at - 2), at);
  const isOwn = before.some((word) => word.is === 'word' && self.has(word.text));
  const next = elements[at + 1];
  const isCount = next?.is === 'word' && ahead.has(next.text);
  if (slot.slot === 'ordinal') return isCount ? null : Number(slot.text);
  const said = slot.slot === 'truck' ? /^\D*(\d+)$/.exec(slot.said)?.[1] : undefined;
  return said !== undefined && isOwn ? Number(said) : null;
};

const countingMyself = wordSet(({ names }) => names.countingMyself);

const isNumber = (element: Element): boolean => element.is === 'slot' && element.slot.slot === 'number';

/** Of several numbers the one that trucks ahead are counted by: "there were 10, now 6 ahead of me". */
const onlyCounted = (elements: readonly Element[]): readonly Element[] => {
  const isCounted = (element: Element): boolean => {
    const next = elements[elements.indexOf(element) + 1];
    return isNumber(element) && next?.is === 'word' && ahead.has(next.text);
  };
  const found = elements.find(isCounted);
  return found === undefined ? elements : elements.filter((one) => !isNumber(one) || one === found);
};

/** Who is fourth has three ahead of him, and so have four "counting me". */
export const asPlaceInLine = (said: readonly Element[]): Element[] => {
  const elements = onlyCounted(said);
  const isWithMe = elements.some((element) => element.is === 'word' && countingMyself.has(element.text));
  return elements.map((element, at) => {
    const count =
      isWithMe && element.is === 'slot' && element.slot.slot === 'number' ? Number(element.slot.text) : null;
    const place = placeAt(elements, at) ?? count;
    return place === null || place < 1 ? element : asNumber(element, place - 1);
  });
};

const withoutTruck = (elements: readonly Element[]): boolean =>
  !elements.some((element) => element.is === 'slot' && element.slot.slot === 'truck');

/** "2 is under the boom", from one who drives none; "I drive 5 from now on": the number of a truck on the list. */
export const asTruck = (
  acts: readonly Act[],
  elements: readonly Element[],
  { roster, speaker }: Hearing,
): readonly Element[] => {
  const isOfOthers = speaker !== null && !speaker.roles.includes('driver');
  const isAsked = acts.includes('take_truck') || acts.includes('ask_where');
  if (!(isOfOthers || isAsked) || !withoutTruck(elements)) return elements;
  const at = elements.findIndex(
    (element) =>
      element.is === 'slot' &&
      element.slot.slot === 'number' &&
      trucksNumbered(element.slot.text, roster).length === 1,
  );
  const found = elements[at];
  if (found?.is !== 'slot' || found.slot.slot !== 'number') return elements;
  const { text, said } = found.slot;
  const truck: Element = {
    ...found,
    slot: { slot: 'truck', trucks: [{ ids: trucksNumbered(text, roster), said }], said },
  };
  return elements.with(at, truck);
};
