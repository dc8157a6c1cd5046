import { phrases } from './phrases.ts';
import type { Phrase } from './phrases.ts';
import { step, weakStep } from './steps.ts';

/** Out of the round trip and back into it: parked, broken down, fixed. Here the phrase is itself the cause. */
const trouble = (lines: string): Phrase[] =>
  phrases({ topic: 'haul', step: 'down', tells: true, needs: null, place: false }, lines);

const parked = [
  ...step(
    'parked',
    `parked (for) (day|night|<span>)
     done|finished for day|night|<span>|shift
     calling it day|night
     shutting|shut down for day|night
     estacionado|estacionada|estacione
     parqueado|parqueada|parquee
     termine|acabe|terminado|acabamos|terminamos por|de hoy|dia|<span>|turno
     termine|acabe turno`,
  ),
  ...weakStep(
    'parked',
    'name',
    `going|heading|headed home
     voy|vamos casa`,
  ),
];

const down = [
  ...step(
    'down',
    `broke|broken down
     breaking down
     <truck> down
     <truck> broke|broken|breakdown (down)
     breakdown
     truck down
     descompuso|descompuesta|descompuesto
     quebro|quebrada|quebrado
     no jala|camina|anda`,
  ),
  ...trouble(
    `flat tire|tires
     (got|have|has|blew|blown) flat (tire)
     blew|blown tire
     stuck (in mud|ditch|field)
     overheated|overheating
     wont|doesnt start|move
     (se) (me) poncho|revento (llanta)
     llanta ponchada|reventada
     ponchado|ponchada
     atascado|atascada|atorado|atorada|atasco|atoro|atasque|atore
     no prende|arranca
     se calento`,
  ),
];

const up = step(
  'up',
  `back up (and|,) (running|rolling|going)
   fixed (up)
   repaired
   back|up running|rolling (again)
   running|rolling again
   back in service
   unstuck
   (back|up) going again
   up and|, running
   quedo (arreglado|arreglada|lista|listo)
   arreglado|arreglada|arreglamos|arregle|arreglaron
   reparado|reparada
   ya jala|camina|anda|prendio|arranco`,
);

export const troublePhrases: readonly Phrase[] = [...parked, ...down, ...up];
