import type { weather as english } from '../en/weather.ts';

export const weather: Record<keyof typeof english, string> = {
  'no-forecast': 'SIN PRONÓSTICO para {station}: no puedo avisar de calor ni de helada ahí.',
  'no-forecast.since':
    'SIN PRONÓSTICO para {station} desde las {time}: no puedo avisar de calor ni de helada ahí.',
  'no-forecast.refused': 'El servicio del clima no nos deja entrar{detail}: revise la configuración del bot.',
  'no-forecast.silent': 'El servicio del clima no contesta bien{detail}; sigo preguntando.',
  'no-forecast.old': 'Lo que manda el servicio del clima es muy viejo{detail}.',
  'no-forecast.settings':
    'No hay servicio del clima para esa estación{detail}: revise la configuración del bot.',
  'no-forecast.decide': 'Esté usted al pendiente del tiempo, y pare la cosecha si hace falta.',
  'forecast-back': 'Ya hay pronóstico otra vez para {station}. Vuelvo a avisar de calor y de helada.',
  'outlook.today': 'Hoy',
  'outlook.tomorrow': 'Mañana',
  'outlook.dig': '{day}, {place}: saquen de {from} a {until}; la deshojadora para a las {topping}.{again}',
  'outlook.again': ' Otra vez como a las {time}.',
  'outlook.no-stop': '{day}, {place}: no se espera paro por calor.',
  'outlook.too-warm': '{day}, {place}: demasiado calor para sacar en la mañana.{again}',
  'outlook.held': '{day}, {place}: HELADA. No saquen hasta cortar coronas y verlas sanas{thaw}.',
  'outlook.thaw': ', desde como las {time}',
  'outlook.high': 'Máxima {peak} a las {time}: {percent} % de probabilidad de pasar de {limit}.',
  'outlook.coolest': 'Lo más fresco para empezar: {low} a las {time}.',
  'outlook.coldest': 'Lo más frío: {low} a las {time}.',
  'outlook.frost-ahead': 'Helada: no deshojen de más esta tarde.',
  'outlook.frost-now': 'Helada: corten coronas antes de sacar.',
  'outlook.roots': 'Raíz como a {canopied} a las {time}{topped} (estimado; mejor midan).',
  'outlook.topped': ', deshojada como a {topped}',
  'outlook.cost':
    'La raíz amontonada en la máxima pierde unas {lb} lb más de azúcar por tonelada y día que a {limit} (estimado).',
  'outlook.cost-metric':
    'La raíz amontonada en la máxima pierde unos {kg} kg más de azúcar por tonelada y día que a {limit} (estimado).',
  'outlook.rain': 'Lluvia: {day} ese día, {days} en tres días.',
  'outlook.source': 'Pronóstico de las {time}. Lo que diga la estación va primero.',
  'outlook.stale':
    'Sin plan para {place}: el último pronóstico es de las {time}, muy viejo. Vea usted el tiempo.',
  'outlook.too-short': 'Sin plan para {place}: el pronóstico de las {time} no alcanza esa tarde.',
  'outlook.none': 'Sin plan para {place}: no tengo pronóstico.',
  'chart.today': 'Hoy {date}',
  'chart.tomorrow': 'Mañana {date}',
  'chart.chance': '{percent} % de probabilidad de pasar de {limit}',
  'chart.frost': 'Helada, {low}: corten coronas antes de sacar',
  'chart.limit': 'Límite {limit}',
  'chart.dig': 'SACAR',
  'chart.alt': 'Imagen: {title}. Temperatura de {low} a {high}, límite {limit}. Para sacar: {dig}.',
  'chart.dig-span': 'de {from} a {until}',
  'chart.dig-from': 'desde las {from}',
  'chart.no-dig': 'nada',
};
