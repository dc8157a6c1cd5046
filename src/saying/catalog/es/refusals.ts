import type { refusals as english } from '../en/refusals.ts';

export const refusals: Record<keyof typeof english, string> = {
  'refused.no-truck': '¿Cuál troca? Diga el número: "troca 3 cargada".',
  'refused.no-field': '¿Cuál campo? Diga el nombre: "salgo de {example} lleno".',
  'refused.more-than-field': 'No anotado: {field} tiene {has} acres, y {acres} son más que eso.',
  'refused.offer-over': 'Esa pregunta ya pasó. Dígalo otra vez, por favor.',
  'refused.no-station': 'No hay estación en la lista. Dueño o mayordomo: "agrega estación North".',
  'refused.time-ahead':
    'Esa hora, {time}, todavía no llega; no anoté nada. Diga a qué hora pasó, o nada si es ahora.',
  'refused.not-allowed.stop-dig':
    'Solo el dueño y el mayordomo pueden parar la cosecha. Avíseles, y avise a la estación si el betabel va caliente.',
  'refused.not-allowed.resume-dig': 'Solo el dueño y el mayordomo pueden empezar otra vez.',
  'refused.not-allowed.correct-others':
    'Eso lo anotó otra persona. Lo puede cambiar ella, el mayordomo o el dueño.',
  'refused.not-allowed.change-lists': 'Solo el dueño y el mayordomo pueden cambiar las listas.',
  'refused.not-allowed.pass-on':
    'Solo el mayordomo y el dueño mandan recados por aquí. Dígaselo a ellos o en la sala.',
  'refused.not-allowed.teach': 'Solo el dueño y el mayordomo pueden enseñar una palabra.',
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
  'question.which-span.sums':
    'Puedo dar toneladas y cargas de hoy, de ayer, de esta semana y de la temporada, pero no de "{said}".',
  'question.which-span.tickets': 'Solo puedo dar la lista de boletas de hoy, no de "{said}".',
  'question.cannot-teach.word': '"{said}" ya quiere decir algo, o no es palabra que se pueda enseñar.',
  'question.cannot-teach.meaning':
    'Solo aprendo palabras para reportes, preguntas y turnos: enseñe "{said}" con uno de esos, como aprende «rolando» = cargado.',
  'question.which-amount': '¿Cuáles pesos? Diga "{ticket}" o "{net}".',
};
