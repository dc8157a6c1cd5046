/** Which number of a message is the temperature of a root: "stuck it in one, reads 53 and a half". */
import type { Amount } from './amounts.ts';
import { ROOT_SAID_F } from './assumptions.ts';
import type { Element } from './sign.ts';

const meets = (amount: Amount, { start, end }: Element): boolean => amount.start < end && start < amount.end;

/** The elements with one number that can be a root's; as they are where none can. */
export const withDegrees = (elements: readonly Element[], amounts: readonly Amount[]): readonly Element[] => {
  const isClock = (amount: Amount): boolean =>
    elements.some(
      (element) => element.is === 'slot' && element.slot.slot === 'clock' && meets(amount, element),
    );
  const degrees = amounts.find(
    ({ value, unit, ...amount }) =>
      unit === null &&
      value >= ROOT_SAID_F.min &&
      value <= ROOT_SAID_F.max &&
      !isClock({ value, unit, ...amount }),
  );
  if (degrees === undefined) return elements;
  const at = elements.findIndex((element) => element.is === 'slot' && meets(degrees, element));
  const found = elements[at];
  if (found?.is !== 'slot') return elements;
  const unit =
    elements.flatMap((element) =>
      element.is === 'slot' && element.slot.slot === 'degrees' && meets(degrees, element)
        ? [element.slot.unit]
        : [],
    )[0] ?? null;
  const said = String(degrees.value);
  const isOther = (element: Element): boolean =>
    element.is === 'slot' &&
    (element.slot.slot === 'number' || element.slot.slot === 'degrees' || meets(degrees, element));
  return elements.flatMap((element, i): Element[] => {
    if (i === at) return [{ ...found, slot: { slot: 'degrees', text: said, unit, said } }];
    return isOther(element) ? [] : [element];
  });
};
