import type { line as english } from '../en/line.ts';

export const line: Record<keyof typeof english, string> = {
  'wait.now': 'Fila en {station}: unos {median} min ({low} a {high}).',
  'wait.later':
    'Si sale {when}, llega a {station} como a las {arrive}: espera unos {median} min ({low} a {high}).',
  'wait.leave-now': 'ahora',
  'wait.leave-in': 'a las {time}',
  'wait.none':
    'Todavía no sé nada de la fila en {station}. Ayuda más si alguien que está ahí cuenta: "en la fila, 14 adelante".',
  'wait.usual':
    'Todavía no sé nada de la fila en {station}. Lo normal a esta hora: unos {median} min ({low} a {high}).',
  'wait.evidence-serial': 'boleta {serial} a las {time}',
  'wait.evidence-ahead':
    '{count, plural, =0 {creo que no hay nadie} one {como # troca} other {como # trocas}} adelante',
  'wait.evidence-rate': '{rate} por hora',
  'wait.evidence-age': '{age, plural, =0 {última noticia ahora mismo} other {última noticia hace # min}}',
  'hold.closed':
    '{truck} mejor espere cargada en el campo: la estación está cerrada hasta las {time}. En la fila nada más guardaría su lugar.',
  'hold.say':
    '{truck} mejor espere cargada en el campo: {why}. Cada 10 min de espera la carga llega unos {cost} min más tarde.',
  'hold.standstill': 'la fila no avanza',
  'hold.short-line': 'la fila va a estar más corta',
  'hold.field-stops': 'se para de sacar antes de que pueda cargar otra vez',
  'station.closed': '{station} está cerrada{until}.',
  'station.closed-since': '{station} está cerrada desde las {time}, y nadie ha dicho hasta cuándo.',
  'station.least': ': por lo menos {least} min',
  'station.open': '{station} está abierta.',
  'station.some-run':
    '{station}: {running, plural, one {trabaja} other {trabajan}} {running} de {of} apiladoras.',
  'station.all-run': '{station}: todas las apiladoras trabajan.',
  'station.all-down': '{station}: todas las apiladoras están paradas.',
  'station.all-down-since': 'En {station} todas las apiladoras están paradas desde las {time}.',
  'station.turned-away': '{station} no está recibiendo cargas{why}.',
  'station.turned-away-at': '{station} no recibió cargas a las {time}{why}.',
  'station.why': ': {words}',
  'station.said': 'Lo dijo {person}{truck} a las {time}.',
  'station.of-truck': ' ({truck})',
  'station.wait-at-field': 'Trocas que siguen en el campo: esperen ahí, cargadas.',
  'line.limit': 'Fila en {station}: unos {median} min ({low} a {high}), más que su límite de {limit} min.',
  'line.stopped':
    'Parece que la fila en {station} no avanza: ninguna troca nuestra ha pesado en {silent} min. Esperan: {trucks}. Quien esté ahí puede decir "apiladora descompuesta" o "segunda apiladora abierta".',
  'receipt.asks-count': '¿Cuántas trocas tiene adelante? Toque, o diga "12 adelante".',

  'fleet.needed':
    'Con {needed, plural, one {# troca} other {# trocas}} la sacadora no espera; ahora {trucks, plural, one {anda #} other {andan #}}.',
  'fleet.round':
    'Una vuelta tarda unos {round} min: {load} para cargar, {wait} en la fila de la báscula{guessed}.',
  'fleet.guessed': ' (lo usual, sin noticia fresca de la fila)',
  'fleet.hours': 'En las próximas {hours} horas, según como vaya la fila:',
  'fleet.course':
    'Con {trucks, plural, one {# troca} other {# trocas}}: la sacadora espera {idle} % del tiempo (a lo peor {bound} %), cada troca {wait} min por vuelta junto a ella.',
};
