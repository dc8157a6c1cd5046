/** What the words beside a name, time or number make of it. */
import { atStart, either, wordSet } from './every-language.ts';
import type { Element } from './sign.ts';

const denials = wordSet(({ talk }) => talk.denials);
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

const unitMin = (element: Element | undefined): number | null => {
  if (element?.is !== 'word') return null;
  if (MINUTE.test(element.text)) return 1;
  return HOUR.test(element.text) ? 60 : null;
};

/** "25 minutos formado", "been here 20 min": since when, and never a count of trucks. */
export const durations = (elements: readonly Element[]): Element[] =>
  elements.map((element, at) => {
    if (element.is !== 'slot' || element.slot.slot !== 'number') return element;
    const unit = unitMin(elements[at + 1]);
    const count = Number(element.slot.text);
    if (unit === null || !Number.isFinite(count)) return element;
    const clock = { fromNowMin: -count * unit };
    return { ...element, slot: { slot: 'clock', clock, lead: null, said: element.slot.said } };
  });
