import type { notices as english } from '../en/notices.ts';

export const notices: Record<keyof typeof english, string> = {
  'where-to.field': 'La sacadora está en {field}, según lo último que dijo el equipo. Decide el mayordomo.',
  'where-to.field-station':
    'La sacadora está en {field}, según lo último que dijo el equipo; sus cargas van a {station}. Decide el mayordomo.',
  'where-to.unknown': 'Nadie me ha dicho en cuál campo se saca: pregunte al mayordomo.',
  'may-dig.yes': 'Pueden sacar: no hay paro. Lo que diga la estación va primero.',
  'may-dig.no-forecast':
    'Nadie la ha parado, pero no tengo pronóstico{place}{since}: deciden el mayordomo y el dueño. Lo que diga la estación va primero.',
  'may-dig.unforecast': 'Sin pronóstico{place}{since}: deciden el mayordomo y el dueño.',
  'may-dig.for': ' para {station}',
  'may-dig.since': ' desde las {time}',
  'may-dig.until': 'Sí, hasta las {time}. {notice}',
  'may-dig.no': 'No. {notice}',
  'may-dig.partly': 'No en todas partes. {notice}',
  'may-dig.free': 'Para {station} pueden sacar: no hay paro.',
  'may-dig.nowhere': 'No: no hay a dónde llevar.',
  'may-dig.closed': '{station} está cerrada{until}, dijo {person} a las {time}.',
  'may-dig.overridden': 'Se sigue sacando: lo ordenó {person} a las {time}, {words}.',

  'notice.title.heat': 'PARO POR CALOR',
  'notice.title.frost': 'PARO POR HELADA',
  'notice.title.mud': 'PARO POR LODO',
  'notice.title.other': 'COSECHA PARADA',
  'notice.title.drill': 'SIMULACRO',
  'notice.title-for': '{title} para {place}',
  'notice.name.heat': 'paro por calor',
  'notice.name.frost': 'paro por helada',
  'notice.name.mud': 'paro por lodo',
  'notice.name.other': 'paro',
  'notice.drill':
    'SIMULACRO, es solo práctica: sigan trabajando. Uno de verdad diría: paren de deshojar {topping}, paren de sacar {digging}.',
  'notice.drill-over': 'FIN DEL SIMULACRO. Gracias, sigan trabajando.',
  'notice.stop': '{title}: paren de deshojar {topping}, paren de sacar {digging}.',
  'notice.since': '{title}: parados desde las {time}.',
  'notice.update': '{title}, HORA NUEVA: paren de deshojar {topping}, paren de sacar {digging}.',
  'notice.watch': '{title} PROBABLE{place}: puede que paremos de sacar {digging}.',
  'notice.watch-frost':
    'HELADA PROBABLE{place}: no deshojen por adelantado. Saquen todo lo deshojado antes de las {time}.',
  'notice.watch-heat':
    'Sigan sacando, y deshojen solo lo necesario por delante. Aviso otra vez cuando sea seguro.',
  'notice.watch-off': 'YA SE PUEDE{place}: se cancela el {what} que era probable a las {time}.',
  'notice.chance': 'Probabilidad: {chance}.',
  'notice.now': 'AHORA',
  'notice.at': 'a las {time}',
  'notice.was': 'Antes era a las {time}.',
  'notice.why-forecast':
    'Por qué: pronóstico de {peak} a las {time}, límite {limit}. El betabel caliente se echa a perder en el montón.',
  'notice.why-frost':
    'Por qué: pronóstico de mínima de {peak} a las {time}. El betabel que se heló y se deshiela se pudre en el montón.',
  'notice.why-alert': 'Por qué: el servicio del clima avisa de helada.',
  'notice.why-root':
    'Por qué: raíz medida a {peak} a las {time}, límite {limit}. El betabel caliente se echa a perder en el montón.',
  'notice.why-air':
    'Por qué: aire medido a {peak} a las {time}, límite {limit}. El betabel caliente se echa a perder en el montón.',
  'notice.forecast-of': 'Pronóstico de las {time}.',
  'notice.forecast-old': 'Pronóstico viejo, de las {time}: tiene {hours} h.',
  'notice.measured-and-forecast': 'Medido {measured} a las {at}, pronóstico de las {time}.',
  'notice.rain': 'Lluvia según el pronóstico: {before} en las últimas 24 h, {next} en las próximas 24 h.',
  'notice.why-person': 'Lo ordenó {person}.',
  'notice.why-words': 'Por qué: {words}.',
  'reason.mud': 'lodo',
  'reason.rain': 'lluvia',
  'reason.heat': 'demasiado calor',
  'reason.frost': 'helada',
  'reason.agreed': 'la estación está de acuerdo',
  'notice.loaded':
    'Trocas cargadas: sigan a la estación y pesen. Si la estación no los recibe, estaciónense en lugar seguro y avisen al mayordomo.',
  'notice.resume': 'Quizá se saca otra vez {time}. Esperen el aviso.',
  'notice.resume-late': 'El aviso que se esperaba a las {time} no llegó: deciden el mayordomo y el dueño.',
  'notice.resume-unknown': 'Todavía no hay hora para empezar. Esperen el aviso.',
  'notice.resume-frost':
    'Saquen otra vez solo cuando el mayordomo o el dueño haya cortado coronas y diga "coronas bien en {field}".',
  'notice.resume-frost-anywhere':
    'Saquen otra vez solo cuando el mayordomo o el dueño haya cortado coronas y diga "coronas bien".',
  'notice.all-clear':
    'YA SE PUEDE{place}: se acabó el {what}; saquen otra vez desde las {time}. Lo que diga la estación va primero.',
  'notice.called-off': 'YA SE PUEDE{place}: se cancela el {what} de las {time}.',
  'notice.all-clear-now':
    'YA SE PUEDE{place}: se acabó el {what}; saquen otra vez ahora. Lo que diga la estación va primero.',
  'notice.over-but-held': '{title}: ya se acabó, pero TODAVÍA NO SAQUEN.',
  'notice.still': 'Sigue: {notice}',
  'notice.reply': 'Lean y contesten solo estacionados: "ENTERADO".',
  'notice.advice': 'Por ahora no hay nada que confirmar: la orden llega una hora antes de parar de deshojar.',
  'notice.reminder': 'Todavía no ha confirmado este aviso.',
  'notice.seen-by': 'Enterados {seen} de {all}: {names}.',
  'notice.seen': 'Gracias, anotado que ya lo vio.',
  'decide.no-forecast': 'DECIDA USTED: no tengo pronóstico que sirva{since}.',
  'decide.promised': 'El aviso de sacar otra vez{place}, que se esperaba a las {time}, no va a llegar solo.',
  'decide.no-time': 'El aviso de sacar otra vez{place} no va a llegar solo.',
  'decide.how':
    'Antes midan la raíz y pregunten en la estación; diga "ya pueden sacar" cuando se pueda, o déjela parada.',
  'undelivered.head': 'NO ENTREGADO: {title}.',
  'undelivered.room': 'No puedo escribir en {room}: {why}. Sigo intentando.',
  'undelivered.person': 'No puedo escribirle a {person}: {why}. Llámele, sigo intentando.',
  'undelivered.no-address': '{person} no tiene dirección donde yo le pueda escribir.',
  'unseen.undelivered': 'No les llegó a: {names}.',
  'unseen.none': 'No ha salido ningún aviso.',
  'unseen.all': 'Todos lo han visto.',
  'unseen.some': '{title}, faltan de confirmar: {names}. Confirmaron {seen} de {all}.',
};
