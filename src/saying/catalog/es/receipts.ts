import type { receipts as english } from '../en/receipts.ts';

export const receipts: Record<keyof typeof english, string> = {
  'step.at-field': '{truck}: en {field}, {time}.',
  'step.loading': '{truck}: cargando en {field}, {time}.',
  'step.left-field': '{truck}: cargada, sale de {field}, {time}.',
  'step.left-somewhere': '{truck}: cargada y en camino, {time}.',
  'step.joined-line': '{truck}: en la fila de la báscula, {time}.',
  'step.first-weighed': '{truck}: pesada de entrada, {time}.',
  'step.first-weighed-lb': '{truck}: pesada de entrada con {weight}, {time}.',
  'step.dumped': '{truck}: descargada, {time}.',
  'step.returning': '{truck}: vacía, va de regreso, {time}.',
  'step.parked': '{truck}: estacionada, {time}.',
  'step.down': '{truck}: descompuesta, {time}. Ya se avisó al mayordomo y al dueño.',
  'step.up': '{truck}: ya está lista, {time}.',
  'place.field': 'el campo',
  'receipt.ticket': 'Boleta {serial}: {truck}, {tons} netas{weights}, {field}, {time}.',
  'receipt.ticket-no-serial': '{truck}: {tons} netas{weights}, {field}, {time}. Sin número de boleta.',
  'receipt.weights': ' ({gross} - {tare})',
  'receipt.line-seen':
    '{count, plural, =0 {No hay fila} one {# troca adelante} other {# trocas adelante}} en {station}, {time}.',
  'receipt.pilers-open':
    '{station}: {count, plural, one {# apiladora abierta} other {# apiladoras abiertas}}, {time}.',
  'receipt.pilers-down':
    '{station}: {count, plural, =0 {todas las apiladoras trabajan} one {# apiladora parada} other {# apiladoras paradas}}, {time}.',
  'receipt.station-open': '{station}: abierta, {time}.',
  'receipt.station-closed': '{station}: cerrada{until}, {time}.',
  'receipt.turned-away': '{station}: no reciben cargas{why}, {time}. Ya se avisa al mayordomo y al dueño.',
  'receipt.truck-turned-away':
    '{truck}: no se la recibieron en {station}{why}, {time}. Ya se avisa al mayordomo y al dueño.',
  'receipt.until': ' hasta las {time}',
  'warning.root-stops': 'Arriba del límite de {limit} para {station}: se para de sacar ahora.',
  'warning.root-stopped': 'Arriba del límite de {limit} para {station}: la cosecha sigue parada.',
  'warning.root-cost':
    'Amontonada así pierde unas {lb} lb más de azúcar por tonelada y día que a {limit} (estimado).',
  'warning.root-cost-metric':
    'Amontonada así pierde unos {kg} kg más de azúcar por tonelada y día que a {limit} (estimado).',
  'receipt.root': 'Temperatura de la raíz {temperature} en {place}, {time}.',
  'receipt.crown-sound': 'Coronas sanas en {field}, {time}.',
  'receipt.crown-frosted': 'Coronas heladas en {field}, {time}.',
  'receipt.field-dug': 'Se saca en {field} desde las {time}.',
  'receipt.truck-taken': '{person} trae la {truck}.',
  'receipt.off-shift': 'Fuera de turno: sin avisos directos por diez horas, o hasta su siguiente carga.',
  'receipt.on-shift': 'En turno: los avisos también le llegan directo.',
  'receipt.notices-when-off': 'Los avisos le llegarán también fuera de turno.',
  'receipt.no-notices-when-off': 'Fuera de turno no le llegarán avisos directos.',
  'receipt.taken-back': 'Borrado: {what}',
  'receipt.correction': 'la corrección.',
  'receipt.corrected': 'Corregido: {what}',
  'receipt.edit-stands': 'No entendí el cambio; queda el primer mensaje: {what}',

  'warning.not-multiple': 'Revise {weight}: {lb} no es múltiplo de {division}.',
  'warning.unusual': 'Revise {weight}: {lb} está fuera de lo normal, de {min} a {max}.',
  'warning.over-limit': 'Pasa el límite de esta troca: {gross} de {limit}. Manda la ley de pesos local.',
  'weight.first': 'el primer peso',
  'weight.second': 'el segundo peso',
  'weight.net': 'el neto',
};
