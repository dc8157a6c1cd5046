import type { CapAlert, CapInfo } from './cap.ts';

/** An element: its name, and its text or its own elements. Null is left out. */
type Element = readonly [name: string, content: string | null | readonly Element[]];

const ESCAPES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };

/** Characters that XML 1.0 does not know at all are dropped; people do paste them. */
const escaped = (text: string): string =>
  text
    .replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F]/g, '')
    .replace(/[&<>]/g, (sign) => ESCAPES[sign] ?? sign);

const xml = ([name, content]: Element, indent: string): string => {
  if (content === null) return '';
  if (typeof content === 'string') return `${indent}<${name}>${escaped(content)}</${name}>\n`;
  const inner = content.map((child) => xml(child, `${indent}  `)).join('');
  return `${indent}<${name}>\n${inner}${indent}</${name}>\n`;
};

const infoElement = (info: CapInfo): Element => [
  'info',
  [
    ['language', info.language],
    ['category', info.category],
    ['event', info.event],
    ['responseType', info.responseType],
    ['urgency', info.urgency],
    ['severity', info.severity],
    ['certainty', info.certainty],
    ['onset', info.onset],
    ['expires', info.expires],
    ['senderName', info.senderName],
    ['headline', info.headline],
    ['description', info.description],
    ['instruction', info.instruction],
    ...info.parameters.map(([valueName, value]): Element => [
      'parameter',
      [
        ['valueName', valueName],
        ['value', value],
      ],
    ]),
    ['area', [['areaDesc', info.areaDesc]]],
  ],
];

/** The message as XML, its elements in the order of the standard's schema. */
export const capXml = (alert: CapAlert): string => {
  const elements: Element[] = [
    ['identifier', alert.identifier],
    ['sender', alert.sender],
    ['sent', alert.sent],
    ['status', alert.status],
    ['msgType', alert.msgType],
    ['scope', alert.scope],
    ['addresses', alert.addresses],
    ['note', alert.note],
    ['references', alert.references.length > 0 ? alert.references.join(' ') : null],
    ['incidents', alert.incidents],
    ...alert.infos.map(infoElement),
  ];
  const body = elements.map((element) => xml(element, '  ')).join('');
  return `<?xml version="1.0" encoding="UTF-8"?>\n<alert xmlns="urn:oasis:names:tc:emergency:cap:1.2">\n${body}</alert>\n`;
};
