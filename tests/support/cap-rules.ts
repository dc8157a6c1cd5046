/**
 * The rules of the CAP 1.2 schema (OASIS Standard, 1 July 2010, appendix A and the element list of section 3.2):
 * elements in their order, how often each may stand, and what it may hold. Written from the standard's list, apart from
 * the code that makes messages.
 */
export interface XmlElement {
  name: string;
  text: string;
  children: XmlElement[];
}

interface Rule {
  least: number;
  most: number;
  holds: RegExp | Set<string> | Record<string, Rule>;
}

const ANY = /^[\s\S]+$/;
/** The standard's pattern, without the comma that its character class lets in by mistake. */
const TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[-+]\d\d:\d\d$/;
const TOKEN = /^[^\s,<&]+$/;

type Holds = Rule['holds'];
const oneOf = (...values: readonly string[]): Set<string> => new Set(values);
const once = (holds: Holds): Rule => ({ least: 1, most: 1, holds });
const maybe = (holds: Holds): Rule => ({ least: 0, most: 1, holds });
const any = (holds: Holds): Rule => ({ least: 0, most: Infinity, holds });
const some = (holds: Holds): Rule => ({ least: 1, most: Infinity, holds });

const NAMED_VALUE = { valueName: once(ANY), value: once(ANY) };

const INFO: Record<string, Rule> = {
  language: maybe(/^[a-z]{2}(-[A-Z]{2})?$/),
  category: some(
    oneOf(
      'Geo',
      'Met',
      'Safety',
      'Security',
      'Rescue',
      'Fire',
      'Health',
      'Env',
      'Transport',
      'Infra',
      'CBRNE',
      'Other',
    ),
  ),
  event: once(ANY),
  responseType: any(
    oneOf('Shelter', 'Evacuate', 'Prepare', 'Execute', 'Avoid', 'Monitor', 'Assess', 'AllClear', 'None'),
  ),
  urgency: once(oneOf('Immediate', 'Expected', 'Future', 'Past', 'Unknown')),
  severity: once(oneOf('Extreme', 'Severe', 'Moderate', 'Minor', 'Unknown')),
  certainty: once(oneOf('Observed', 'Likely', 'Possible', 'Unlikely', 'Unknown')),
  audience: maybe(ANY),
  eventCode: any(NAMED_VALUE),
  effective: maybe(TIME),
  onset: maybe(TIME),
  expires: maybe(TIME),
  senderName: maybe(ANY),
  headline: maybe(ANY),
  description: maybe(ANY),
  instruction: maybe(ANY),
  web: maybe(ANY),
  contact: maybe(ANY),
  parameter: any(NAMED_VALUE),
  resource: any({ resourceDesc: once(ANY), mimeType: once(ANY) }),
  area: any({ areaDesc: once(ANY), polygon: any(ANY), circle: any(ANY), geocode: any(NAMED_VALUE) }),
};

const ALERT: Record<string, Rule> = {
  identifier: once(TOKEN),
  sender: once(TOKEN),
  sent: once(TIME),
  status: once(oneOf('Actual', 'Exercise', 'System', 'Test', 'Draft')),
  msgType: once(oneOf('Alert', 'Update', 'Cancel', 'Ack', 'Error')),
  source: maybe(ANY),
  scope: once(oneOf('Public', 'Restricted', 'Private')),
  restriction: maybe(ANY),
  addresses: maybe(ANY),
  code: any(ANY),
  note: maybe(ANY),
  references: maybe(/^[^\s,<&]+,[^\s,<&]+,\S+( [^\s,<&]+,[^\s,<&]+,\S+)*$/),
  incidents: maybe(ANY),
  info: any(INFO),
};

const ENTITIES: Record<string, string> = { '&amp;': '&', '&lt;': '<', '&gt;': '>' };
const unescaped = (text: string): string => {
  const left = text.replace(/&(amp|lt|gt);/g, '');
  if (/[&<>]/.test(left)) throw new Error(`a sign is not escaped in "${text}"`);
  return text.replace(/&\w+;/g, (entity) => ENTITIES[entity] ?? entity);
};

/** Elements without attributes, as CAP has them below its root. Throws on anything that does not nest. */
const parseElements = (xml: string): XmlElement[] => {
  const root: XmlElement = { name: '', text: '', children: [] };
  const open = [root];
  for (const [, close, name = '', text = ''] of xml.matchAll(/<(\/?)([\w]+)[^>]*>([^<]*)/g)) {
    const top = open.at(-1) ?? root;
    if (close) {
      if (top.name !== name) throw new Error(`</${name}> closes <${top.name}>`);
      open.pop();
    } else {
      const element = { name, text: unescaped(text), children: [] };
      top.children.push(element);
      open.push(element);
    }
  }
  if (open.length !== 1) throw new Error('an element is not closed');
  return root.children;
};

const faultsOf = (path: string, { text, children }: XmlElement, holds: Holds): string[] => {
  if (holds instanceof RegExp) return holds.test(text) ? [] : [`${path}: "${text}"`];
  if (holds instanceof Set) return holds.has(text) ? [] : [`${path}: "${text}" is no value of the list`];
  const rules = Object.entries(holds);
  const places = children.map((child) => rules.findIndex(([name]) => name === child.name));
  const unordered = places.some((place, i) => place < (places[i - 1] ?? 0));
  return [
    ...children.flatMap((child, i) => {
      const rule = rules[places[i] ?? -1]?.[1];
      return rule
        ? faultsOf(`${path}/${child.name}`, child, rule.holds)
        : [`${path}/${child.name} is not known`];
    }),
    ...(unordered ? [`${path}: elements are out of order`] : []),
    ...rules.flatMap(([name, { least, most }]) => {
      const count = children.filter((child) => child.name === name).length;
      return count < least || count > most ? [`${path}/${name} stands ${count} times`] : [];
    }),
  ];
};

/** The message as a tree, and what the schema has against it. */
export const checkCap = (xml: string): { alert: XmlElement | undefined; faults: string[] } => {
  const [alert, ...more] = parseElements(xml.replace(/^<\?xml version="1.0" encoding="UTF-8"\?>\n/, ''));
  if (!alert || more.length > 0) return { alert, faults: ['not one root element'] };
  const isNamed = xml.includes('<alert xmlns="urn:oasis:names:tc:emergency:cap:1.2">');
  return {
    alert,
    faults: [...(isNamed ? [] : ['the namespace is missing']), ...faultsOf('alert', alert, ALERT)],
  };
};

/** Texts of the elements at a path below the alert. */
export const textsAt = (alert: XmlElement | undefined, ...path: readonly string[]): string[] => {
  const [name, ...rest] = path;
  const found = alert?.children.filter((child) => child.name === name) ?? [];
  return rest.length === 0
    ? found.map((child) => child.text)
    : found.flatMap((child) => textsAt(child, ...rest));
};
