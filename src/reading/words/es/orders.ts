import type { LanguageWords } from '../language-words.ts';

const DIG = 'sacar|sacando|escarbar|escarbando|cosechar|cosechando|escarben|saquen|cosechen';

export const orders: LanguageWords['orders'] = {
  withdraw: `
    deshacer|deshaz|deshazlo|desaser (eso)
    borralo|borrala|quitalo|cancelalo`,
  correct: `
    <truck> (,) no <truck>|<n>
    (eso|esa) era|fue <truck>|<field>|<clock> (,) no <truck>|<n>|<field>
    (eso|esa) era|fue
    quise decir
    <ticket> era|fue
    corrige|cambia|corregir|cambiar <ticket> (a)
    correccion`,
  correctReversed: `no era|fue <truck> (,) (era|fue) <truck>`,
  acknowledge: `
    enterado|enterada|enterados
    recibido
    entendido|entendida
    copiado
    ya vi|lei`,
  stop: `
    paren|para|paramos|pare (de) ${DIG}
    dejen|deja|dejar de ${DIG}
    ya no ${DIG}
    no saquen|escarben|cosechen (mas)
    paren|parenle
    paren maquina|sacadora|cosechadora`,
  resume: `
    (ya) pueden|puedes ${DIG} (otra) (vez)
    empiecen|empieza|sigan|siguan|sigue|arranquen (a|de) (${DIG}) (otra) (vez)
    vuelvan|vuelve a ${DIG}
    le pueden dar
    todo despejado`,
  drill: `
    simulacro
    simulacro (,) paren|para (de) (${DIG})
    hacer|hagan|empieza|empiecen simulacro`,
  drillEnds: `
    fin|termina|termino|terminen simulacro
    se acabo simulacro
    simulacro terminado`,
  offShift: `
    fuera de turno
    salgo|sali de turno
    termino|termine turno`,
  onShift: `
    entro|entre|empiezo turno
    en|de turno`,
  notices: `avisos fuera de turno`,
  noNotices: `no|sin avisos fuera de turno`,
  dig: `
    (ahora) sacando|escarbando|cosechando (en) (<field>)
    (ahora) sacamos|escarbamos (en) <field>
    estamos|vamos|andamos|empezamos (sacando|escarbando) (en|con) <field>
    maquina|sacadora|cosechadora (esta|anda) (en) <field>`,
  takeTruck: `
    traigo|tengo|manejo|llevo|agarro|agarre <truck>
    ando|estoy|voy en <truck>
    <person> trae|tiene|maneja|lleva|agarro|anda (en) <truck>
    manejando <truck>`,
};
