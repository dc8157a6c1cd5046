/** What the words beside a name, time or number make of it. */
import { atStart, either, wordSet } from './every-language.ts';
import { conceptsIn } from './ranker/concepts.ts';
import type { Element } from './sign.ts';

const denials = wordSet(({ talk }) => talk.denials);
const otherUnits = wordSet(({ talk }) => talk.units);
const MINUTE = atStart(either(({ clock }) => clock.minute));
const HOUR = atStart(either(({ clock }) => clock.hour));

/** "Not the river, the schoolhouse", "no era la 3": the names, times and numbers that are said to be wrong. */
export const denied = (elements: readonly Element[]): Element[] => {
  const wrong: Element[] = [];
  let isDenied = false;
  for (const element of elements) {
    if (element.is === 'word') isDenied ||= denials.has(element.text);
    else if (element.is !== 'slot') isDenied = false;
    else if (isDenied) {
      wrong.push(element);
      isDenied = false;
    }
  }
  return wrong;
};

const behind = wordSet(({ talk }) => talk.behind);

const isBehind = (element: Element | undefined): boolean =>
  element?.is === 'word' && behind.has(element.text);

/** "It said north 40 and it was the river": of two places the last is meant. */
export const replaced = (elements: readonly Element[]): Element[] => {
  const places = elements.filter((element) => element.is === 'slot' && element.slot.slot === 'place');
  return places.slice(0, -1);
};

const isUnit = (element: Element | undefined): boolean =>
  element?.is === 'word' &&
  (MINUTE.test(element.text) || HOUR.test(element.text) || otherUnits.has(element.text));

/** "25 minutos formado", "8 mph", "phone at 8%": of something else, and never a count of trucks. */
export const measured = (elements: readonly Element[]): Element[] =>
  elements.filter(
    (element, at) =>
      element.is === 'slot' &&
      element.slot.slot === 'number' &&
      (isUnit(elements[at + 1]) || isBehind(elements[at + 1])),
  );

const beside = wordSet(({ talk }) => talk.beside);

/** "Behind truck 2", "atras de la 2": trucks that are only where the sender's is. */
export const others = (elements: readonly Element[]): Element[] =>
  elements.filter((element, at) => {
    const before = elements[at - 1];
    return (
      element.is === 'slot' &&
      element.slot.slot === 'truck' &&
      before?.is === 'word' &&
      beside.has(before.text)
    );
  });

const CLOCK_WORD = atStart(
  either(
    ({ clock }) => clock.quarter,
    ({ clock }) => clock.leads.till,
    ({ clock }) => clock.pastFirst,
    ({ clock }) => clock.hour,
    ({ clock }) => clock.minute,
    ({ clock }) => clock.agoFirst,
  ),
);

/** Words of a time that was not read: "at quarter past". */
export const clockWordsLeft = (elements: readonly Element[]): boolean =>
  elements.some((element) => element.is === 'word' && CLOCK_WORD.test(element.text));

/** The sender is the next to be weighed. */
export const isNext = (elements: readonly Element[]): boolean =>
  conceptsIn(elements.flatMap((element) => (element.is === 'word' ? [element.text] : []))).includes(
    'frontOfQueue',
  );
