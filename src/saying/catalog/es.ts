import type { Key } from './en.ts';
import { esNotices } from './es-notices.ts';
import { weatherEs } from './weather.ts';

/** Spanish as crews from Mexico and the American West speak it: betabel, troca, báscula, fila. Numbers as in Mexico (25.26). */
export const es: Record<Key, string> = {
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
  'receipt.until': ' hasta las {time}',
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

  'refused.no-truck': '¿Cuál troca? Diga el número: "troca 3 cargada".',
  'refused.no-field': '¿Cuál campo? Diga el nombre: "salgo de {example} lleno".',
  'refused.no-station': 'No hay estación en la lista. Dueño o mayordomo: "add station North".',
  'refused.time-ahead':
    'Las {time} todavía no llegan; no anoté nada. Diga a qué hora pasó, o nada si es ahora.',
  'refused.not-allowed.stop-dig':
    'Solo el dueño y el mayordomo pueden parar la cosecha. Avíseles, y avise a la estación si el betabel va caliente.',
  'refused.not-allowed.resume-dig': 'Solo el dueño y el mayordomo pueden empezar otra vez.',
  'refused.not-allowed.correct-others':
    'Eso lo anotó otra persona. Lo puede cambiar ella, el mayordomo o el dueño.',
  'refused.not-allowed.change-lists': 'Solo el dueño y el mayordomo pueden cambiar las listas.',
  'refused.not-allowed.drill': 'Solo el dueño y el mayordomo pueden hacer un simulacro.',
  'refused.second-not-below-first':
    'No anotada: el segundo peso {tare} debe ser menor que el primero {gross}. ¿Al revés? Mande los dos otra vez, primero el primero.',
  'refused.net-impossible':
    'No anotada: un neto de {net} no puede ser una carga ({min} a {max}). Revise la boleta y mándela otra vez.',
  'refused.weights-disagree':
    'No anotada: primero menos segundo da {computed}, y el neto que mandó es {net}. Revise la boleta y mándela otra vez.',
  'example.ticket':
    'boleta 48213 {units, select, metric {bruto 36220 tara 13300} other {bruto 79840 tara 29320}}',
  'example.net': 'boleta 48213 {units, select, metric {22.92} other {25.26}} toneladas',
  'refused.weight-missing': 'No anotada: faltan los dos pesos o el neto, como "{ticket}" o "{net}".',
  'refused.serial-known':
    'La boleta {serial} ya está anotada: {truck}, {tons}, por {person} a las {time}. No cambié nada.',
  'refused.nothing-to-undo': 'No hay nada suyo que borrar.',
  'refused.nothing-to-correct': 'No encuentro nada suyo que corregir.',
  'refused.nothing-to-see': 'No hay aviso nuevo que confirmar.',
  'refused.dig-stopped-already': 'La cosecha ya está parada; no se avisa otra vez.',
  'refused.order-overtaken':
    'Eso se mandó antes de la última orden: nada cambia y a nadie se le avisa. Si todavía vale, dígalo otra vez.',
  'refused.crowns-not-checked':
    'Paro por helada: primero corten coronas y luego diga "coronas bien en {example}". Para sacar sin eso, diga por qué: "sigan sacando: la estación está de acuerdo".',
  'refused.drill-on-already': 'Ya hay un simulacro. "Fin del simulacro" lo termina.',
  'refused.no-drill': 'No hay simulacro que terminar.',
  'refused.dig-not-stopped': 'La cosecha no está parada.',
  'refused.no-such-entry': '"{name}" no está en esa lista.',
  'refused.last-manager': 'Alguien tiene que quedar de dueño o mayordomo; no cambié nada.',
  'refused.no-room-here': 'Dígalo en la sala que quiere.',
  'refused.room-used-already': 'Esta ya es sala del equipo.',
  'refused.room-not-used': 'Esta no es sala del equipo.',
  'refused.too-many': 'Es mucho para un mensaje: anoté las primeras {taken} cosas. Mande el resto otra vez.',
  'refused.room-of-file': 'Esta sala está en el archivo de la operación; solo ahí se puede quitar.',

  'question.not-understood':
    'No entendí. Pruebe "cargado", "en la fila, 14 adelante", "{net}", "¿cuántas toneladas van?" o "ayuda".',
  'question.unknown-truck': 'No conozco la troca "{said}". Hay: {known}.',
  'question.unknown-field': 'No conozco el campo "{said}". Hay: {known}.',
  'question.unknown-station': 'No conozco la estación "{said}". Hay: {known}.',
  'question.unknown-person': 'No conozco a "{said}". Hay: {known}.',
  'question.which-time': '¿Qué hora es "{said}"? Dígala como 10:15.',
  'question.which-amount': '¿Cuáles pesos? Diga "{ticket}" o "{net}".',

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
    '{count, plural, =0 {quizá ninguna troca} one {como # troca} other {como # trocas}} adelante',
  'wait.evidence-rate': '{rate} por hora',
  'wait.evidence-age': '{age, plural, =0 {última noticia ahora mismo} other {última noticia hace # min}}',
  'hold.say':
    '{truck} mejor espere cargada en el campo: {why}. Cada 10 min de espera la carga llega unos {cost} min más tarde.',
  'hold.standstill': 'la fila no avanza',
  'hold.short-line': 'la fila va a estar más corta',
  'hold.field-stops': 'se para de sacar antes de que pueda cargar otra vez',
  'line.limit': 'Fila en {station}: unos {median} min ({low} a {high}), más que su límite de {limit} min.',
  'line.stopped':
    'Parece que la fila en {station} no avanza: ninguna troca nuestra ha pesado en {silent} min. Esperan: {trucks}. Quien esté ahí puede decir "piler descompuesta" o "segunda piler abierta".',
  'receipt.asks-count': '¿Cuántas trocas tiene adelante? Toque, o diga "12 adelante".',

  // Trocas y máquina
  'fleet.needed':
    'Con {needed, plural, one {# troca} other {# trocas}} la máquina no espera; ahora {trucks, plural, one {anda #} other {andan #}}.',
  'fleet.round':
    'Una vuelta tarda unos {round} min: {load} para cargar, {wait} en la fila de la báscula{guessed}.',
  'fleet.guessed': ' (lo usual, sin noticia fresca de la fila)',
  'fleet.hours': 'En las próximas {hours} horas, según como vaya la fila:',
  'fleet.course':
    'Con {trucks, plural, one {# troca} other {# trocas}}: la máquina espera {idle} % del tiempo (a lo peor {bound} %), cada troca {wait} min por vuelta junto a la máquina.',

  'tally.tons': '{span}{who}: {tons} en {loads, plural, one {# carga} other {# cargas}}.',
  'tally.loads': '{span}{who}: {loads, plural, one {# carga} other {# cargas}}, {tons}.',
  'tally.who': ', {name}',
  'tally.today': 'Hoy van',
  'tally.yesterday': 'Ayer',
  'tally.season': 'En la temporada van',
  'tally.field': '{field}: {tons}, {loads, plural, one {# carga} other {# cargas}}',
  'tally.truck': '{truck}: {tons}, {loads, plural, one {# carga} other {# cargas}}',
  'tally.no-field': 'sin campo',
  'tally.without-ticket':
    '{count, plural, one {# carga no tiene} other {# cargas no tienen}} boleta todavía y no cuentan en las toneladas.',
  'tally.net': 'Toneladas netas de las boletas; el laboratorio descuenta su tara después.',

  'left.field':
    '{field}: faltan unas {tons}, {acres} acres, {loads, plural, one {# carga} other {# cargas}}.',
  'left.field-hours':
    '{field}: faltan unas {tons}, {acres} acres, {loads, plural, one {# carga} other {# cargas}}, {hours} h de sacar.',
  'left.by-yield': 'Según el rendimiento esperado de cada campo, menos lo que dicen las boletas.',
  'left.none': 'No sé: ningún campo tiene acres y rendimiento esperado en el archivo.',

  'board.title': 'Trocas a las {time}',
  'board.row': '{truck}: {phase}{place}{since}, {loads, plural, one {# carga} other {# cargas}}{note}',
  'board.unheard': '{truck}: sin noticias todavía',
  'board.since': ' desde las {time}',
  'board.at': ' en {place}',
  'board.from': ' de {place}',
  'board.inferred': ' (deducido, no avisado)',
  'board.head.truck': 'Troca',
  'board.head.phase': 'Dónde',
  'board.head.since': 'Desde',
  'board.head.loads': 'Cargas',
  'board.moved': 'Las trocas: vea la lista más nueva, abajo.',
  'board.mark': '* deducido de un mensaje posterior, no avisado',
  'phase.at-field': 'en el campo',
  'phase.loading': 'cargando',
  'phase.hauling': 'en camino',
  'phase.in-line': 'en la fila',
  'phase.on-piler': 'en la apiladora',
  'phase.returning': 'de regreso',
  'phase.parked': 'estacionada',
  'phase.down': 'descompuesta',

  ...esNotices,

  'emergency.answer':
    'Call 911: llame al 911 ahora. Diga dónde está. Ya se avisa al mayordomo y al dueño. Lejos de cables y de máquinas en marcha.',
  'emergency.alert':
    'Call 911: llame al 911 si nadie ha llamado. {name}{truck} escribió a las {time}: "{words}"',
  'emergency.truck': ' (troca {truck})',

  'stranger.answer': 'Todavía no lo conozco. Ya le avisé al mayordomo, que lo puede poner en la lista.',
  'stranger.alert':
    '{name} ({platform}) me escribió y no está en la lista. Para ponerlo: "add driver NOMBRE truck 3".',
  'truck-down': '{truck} está descompuesta desde las {time}, {person}: {words}',
  'truck-down.no-words': 'sin decir por qué',
  'language.set': 'Desde ahora en español.',
  'list.people': 'Gente: {names}',
  'list.person': '{name} ({roles}{truck})',
  'list.person-truck': ', troca {truck}',
  'list.trucks': 'Trocas: {names}',
  'list.truck-limit': '{name} (límite {limit})',
  'list.fields': 'Campos: {names}',
  'list.field-acres': '{name} ({acres} acres)',
  'list.stations': 'Estaciones: {names}',
  'list.station': '{name} (límite del aire {air}, de la raíz {root})',
  'list.limits': 'Avisar cuando la fila pase de: {line}.',
  'list.line-limit': '{min} min',
  'list.no-limit': 'sin límite',
  'list.put': 'En la lista: {entry}',
  'list.removed': 'Fuera de la lista: {name}',
  'room.used':
    'Esta ya es sala del equipo: leo lo que se dice aquí, y aquí llegan también los avisos de paro. Para terminar: "deja esta sala".',
  'room.left': 'Esta ya no es sala del equipo. Aquí no anoto nada; si piden auxilio, sí lo oigo.',
  'role.grower': 'dueño',
  'role.foreman': 'mayordomo',
  'role.driver': 'chofer',
  'role.digger-operator': 'operador de la sacadora',
  'role.topper-operator': 'operador de la deshojadora',

  'ticket.form': 'Ya parado, la boleta en una línea: {ticket} troca {truck}',
  'tickets.none': 'Hoy no hay boletas.',
  'tickets.title': 'Boletas de hoy: {count}.',
  'tickets.row': '{serial} {truck} {tons} {time}',
  'tickets.no-serial': 'sin número',

  help: 'Escriba solo estacionado. Diga lo que hizo: "cargado", "en la fila, 14 adelante", "descargué", "{ticket}", "troca 4 descompuesta, llanta". Pregunte: "¿cómo está la fila?", "¿si salgo ahorita?", "¿cuántas trocas necesito?", "¿cuántas toneladas van?", "¿dónde están todos?", "¿se puede sacar?". ¿Mal? "borra eso", o "era la 4 no la 3". ¿Vio el aviso? "enterado". ¿Ya se va? "fuera de turno". English: "english".',
  'help.manager':
    'También puede: "paren de sacar, lodo", "ya pueden sacar", "sigan sacando: la estación está de acuerdo", "coronas bien en north 40", "simulacro", "¿quién no ha visto?", "add driver Luis truck 4 spanish", "add field West 20 38 acres", "truck 3 limit 86000", "line limit 45 min", "usa esta sala", "borra boleta 48213".',
  trouble: 'Algo falló de mi lado. Su mensaje está guardado. Diga este número al mayordomo: {reference}.',

  ...weatherEs,

  'button.loaded': 'Cargado',
  'button.in-line': 'En la fila',
  'button.dumped': 'Descargué',
  'button.empty': 'Vacío, de regreso',
  'button.at-field': 'En el campo',
  'button.ticket': 'Boleta',
  'button.got-it': 'ENTERADO',
  'button.line': '¿Cómo está la fila?',
  'button.ahead': '{count} adelante',
  'words.loaded': 'troca {truck} cargada',
  'words.in-line': 'troca {truck} en la fila',
  'words.dumped': 'troca {truck} descargue',
  'words.empty': 'troca {truck} vacía, de regreso',
  'words.at-field': 'troca {truck} en el campo',
  'words.ticket': 'boleta',
  'words.got-it': 'enterado',
  'words.line': 'cómo está la fila',
  'words.ahead': '{count} adelante',

  'unit.tons': '{tons} toneladas cortas',
  'unit.tonnes': '{tonnes} toneladas métricas',
  'unit.lb': '{lb} lb',
  'unit.kg': '{kg} kg',
  'unit.in': '{in} pulg.',
  'unit.mm': '{mm} mm',
};
