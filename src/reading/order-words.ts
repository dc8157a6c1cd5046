import { phrases } from './phrases.ts';
import type { Phrase } from './phrases.ts';

const ERASE = 'delete|erase|cancel|remove|borra|borrar|borre|cancela|quita|elimina|void';
const withdraw = phrases(
  { topic: 'withdraw' },
  `undo (that|it|last|this)
   scratch that|it|last
   ${ERASE} that|it|last|eso|esa|ese|ultimo|ultima|mensaje
   ${ERASE} <ticket>
   take that|it back
   deshacer|deshaz|deshazlo|desaser (eso)
   borralo|borrala|quitalo|cancelalo`,
);

const correct = phrases(
  { topic: 'correct', reversed: false },
  `that|it|this was|is|should <truck>|<field> (,) not <truck>|<n>|<field>
   that|it|this was|should (be) (at)
   that|it|this is <truck>|<field>|<clock>
   thats <truck>|<field>|<clock>
   should be <truck>|<field>
   meant|mean <truck>|<field>|<clock>|<n>
   make that <truck>|<field>|<clock>|<n>
   <truck> (,) not <truck>|<n>
   <truck> (,) no <truck>|<n>
   (eso|esa) era|fue <truck>|<field>|<clock> (,) no <truck>|<n>|<field>
   (eso|esa) era|fue
   quise decir
   <ticket> was|should|era|fue|is (be)
   <ticket> was|era|fue <truck>|<field> (,) not|no <truck>|<n>|<field>
   that|it was <clock> (,) not <clock>
   correct|fix|change|corrige|cambia|corregir|cambiar <ticket> (to) (a)
   correction|correccion`,
);

const correctReversed = phrases(
  { topic: 'correct', reversed: true },
  `not <truck> (,) <truck>
   that|it was not <truck> (,) (that|it was) <truck>
   no era|fue <truck> (,) (era|fue) <truck>`,
);

const acknowledge = phrases(
  { topic: 'acknowledge' },
  `got it
   seen (it)
   saw it
   copy (that)
   roger (that)
   understood
   read it
   10-4
   message received
   received
   enterado|enterada|enterados
   recibido
   entendido|entendida
   copiado
   ya vi|lei`,
);

const DIG = 'digging|diggin|dig|lifting|harvesting|harvest';
const SACAR = 'sacar|sacando|escarbar|escarbando|cosechar|cosechando|escarben|saquen|cosechen';
const stop = phrases(
  { topic: 'stop' },
  `stop|quit|halt|hold|pause (the|all) ${DIG}|digger|harvest
   no more ${DIG}
   shut|shutting down digger|${DIG}
   (shut) digger down
   paren|para|paramos|pare (de) ${SACAR}
   dejen|deja|dejar de ${SACAR}
   ya no ${SACAR}
   no saquen|escarben|cosechen (mas)
   paren
   paren maquina|sacadora|cosechadora`,
);

const resume = phrases(
  { topic: 'resume' },
  `resume (${DIG})
   dig on
   all clear
   ${DIG} again
   start|restart|begin|continue|keep ${DIG} (again)
   go ahead and|, dig
   go ahead dig
   back to digging
   you can|may dig (again)
   we can dig again
   can dig again
   (ya) pueden|puedes ${SACAR} (otra) (vez)
   empiecen|empieza|sigan|siguan|sigue|arranquen (a|de) (${SACAR}) (otra) (vez)
   vuelvan|vuelve a ${SACAR}
   todo despejado`,
);

const drill = [
  ...phrases(
    { topic: 'drill', ends: false },
    `drill
     (this) is drill
     start|begin|run drill
     practice|practise drill|stop (${DIG})
     drill (,) stop (${DIG})
     simulacro
     simulacro (,) paren|para (de) (${SACAR})
     hacer|hagan|empieza|empiecen simulacro`,
  ),
  ...phrases(
    { topic: 'drill', ends: true },
    `end|stop|finish drill
     drill over|ended|finished|done
     fin|termina|termino|terminen simulacro
     se acabo simulacro
     simulacro terminado`,
  ),
];

const shift = [
  ...phrases(
    { topic: 'shift', off: true, noticesWhenOff: null },
    `(going|go) off shift|duty
     end of shift
     fuera de turno
     salgo|sali de turno
     termino|termine turno`,
  ),
  ...phrases(
    { topic: 'shift', off: false, noticesWhenOff: null },
    `on shift|duty
     back on shift|duty
     start|starting shift
     entro|entre|empiezo turno
     en|de turno`,
  ),
  ...phrases(
    { topic: 'shift', off: null, noticesWhenOff: true },
    `notices when off (shift|duty)
     avisos fuera de turno`,
  ),
  ...phrases(
    { topic: 'shift', off: null, noticesWhenOff: false },
    `no notices when off (shift|duty)
     no|sin avisos fuera de turno`,
  ),
];

const dig = phrases(
  { topic: 'dig' },
  `(now) digging|diggin|lifting|harvesting (in|at|on) <field>
   digger|digging moved|moving|now|started|starting (to|in|at|on) <field>
   digger in|at|on|to <field>
   moved|moving|starting|started|start|switching|switched (digger|digging) (to|on|in) <field>
   we moved|on|in <field>
   (ahora) sacando|escarbando|cosechando (en) (<field>)
   (ahora) sacamos|escarbamos (en) <field>
   estamos|vamos|andamos|empezamos (sacando|escarbando) (en|con) <field>
   maquina|sacadora|cosechadora (esta|anda) (en) <field>`,
);

const takeTruck = phrases(
  { topic: 'take-truck' },
  `have|driving|drive|taking|take|got|running|run <truck>
   i|im|am in|on <truck> (<span>)
   <person> has|got|have|drives|driving|taking|takes|in|on|is <truck>
   <person> (is) driving|in|on <truck>
   traigo|tengo|manejo|llevo|agarro|agarre <truck>
   ando|estoy|voy en <truck>
   <person> trae|tiene|maneja|lleva|agarro|anda (en) <truck>
   manejando <truck>`,
);

const language = [
  ...phrases(
    { topic: 'language', language: 'es' },
    `espanol|spanish
     en|in|habla|speak|hablo|to espanol|spanish`,
  ),
  ...phrases(
    { topic: 'language', language: 'en' },
    `english|ingles
     en|in|habla|speak|hablo|to english|ingles`,
  ),
];

export const ticketPhrases: readonly Phrase[] = phrases(
  { topic: 'ticket' },
  `<ticket>
   weighed|weighs|weight|peso|pesos|pese`,
);

export const orderPhrases: readonly Phrase[] = [
  ...withdraw,
  ...correct,
  ...correctReversed,
  ...acknowledge,
  ...stop,
  ...resume,
  ...drill,
  ...shift,
  ...dig,
  ...takeTruck,
  ...language,
];
