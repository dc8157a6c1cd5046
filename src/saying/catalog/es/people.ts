import type { people as english } from '../en/people.ts';

export const people: Record<keyof typeof english, string> = {
  'emergency.answer':
    'Call 911: llame al 911 ahora. Diga dónde está. Ya se avisa al mayordomo y al dueño. Lejos de cables y de máquinas en marcha.',
  'emergency.alert':
    'Call 911: llame al 911 si nadie ha llamado. {name}{truck} escribió a las {time}: "{words}"',
  'emergency.unclear':
    '¿Hay alguien herido? {name}{truck} escribió a las {time}: "{words}", y no ha contestado. Llámele ya; si hay duda, llame al 911.',
  'emergency.truck': ' (troca {truck})',

  'stranger.answer': 'Todavía no lo conozco. Ya le avisé al mayordomo, que lo puede poner en la lista.',
  'stranger.alert':
    '{name} ({platform}) me escribió y no está en la lista. Para ponerlo: "agrega chofer NOMBRE troca 3".',
  'truck-down': '{truck} está descompuesta desde las {time}, {person}: {words}',
  'truck-down.no-words': 'sin decir por qué',
  'words.to-all': '{person} a todos: "{words}"',
  'words.to-some': '{person}: "{words}"',
  'words.passed':
    'Pasé el recado a {count, plural, one {# persona} other {# personas}}{room}: "{words}". Con "¿quién no ha visto?" sabe quién ya lo vio.',
  'words.and-room': ' y a la sala',
  'words.no-order':
    'Va como recado y no para nada: para dar la orden, escriba solo "paren de sacar" o "ya pueden sacar".',
  'machine.down.digger': 'Sacadora parada desde las {time}{until}, {person}: {words}',
  'machine.down.topper': 'Deshojadora parada desde las {time}{until}, {person}: {words}',
  'machine.runs.digger': 'La sacadora ya trabaja desde las {time}, {person}.',
  'machine.runs.topper': 'La deshojadora ya trabaja desde las {time}, {person}.',
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
  'list.limits': 'Aviso de la fila: {line}.',
  'list.line-limit': 'cuando pase de {min} min',
  'list.no-limit': 'sin límite',
  'list.put': 'Listo. {entry}',
  'list.removed': 'Fuera de la lista: {name}',
  'room.used':
    'Esta ya es sala del equipo: leo lo que se dice aquí, y aquí llegan también los avisos de paro. Para terminar: "deje esta sala".',
  'room.left': 'Esta ya no es sala del equipo. Aquí no anoto nada; si piden auxilio, sí lo oigo.',
  'role.grower': 'dueño',
  'role.foreman': 'mayordomo',
  'role.driver': 'chofer',
  'role.digger-operator': 'operador de la sacadora',
  'role.topper-operator': 'operador de la deshojadora',

  help: 'Escriba solo estacionado. Diga lo que hizo: "cargado", "en la fila, 14 adelante", "descargué", "{ticket}", "troca 4 descompuesta, llanta". Pregunte: "¿cómo está la fila?", "¿si salgo ahorita?", "¿cuántas trocas necesito?", "¿cuántas toneladas van?", "¿dónde están todos?", "¿se puede sacar?". ¿Mal? "borra eso", o "era la 4 no la 3". ¿Vio el aviso? "enterado". ¿Ya se va? "fuera de turno". English: "english".',
  'help.tons':
    '{units, select, metric {Las toneladas son métricas.} other {Las toneladas son cortas, de 2000 lb.}}',
  'help.manager':
    'También puede: "paren de sacar, lodo", "ya pueden sacar", "sigan sacando: la estación está de acuerdo", "coronas bien en north 40", "simulacro", "¿quién no ha visto?", "agrega chofer Luis troca 4 español", "agrega campo West 20 38 acres", "troca 3 límite 86000", "límite de la fila 45 min", "use esta sala", "borra boleta 48213", "diles a todos que empezamos a las 5".',
  trouble: 'Algo falló de mi lado. Su mensaje está guardado. Diga este número al mayordomo: {reference}.',
};
