import type { LanguageWords } from '../language-words.ts';
import { causes } from './causes.ts';
import { clock } from './clock.ts';
import { concepts } from './concepts.ts';
import { emergency } from './emergency.ts';
import { haul } from './haul.ts';
import { kinds } from './kinds.ts';
import { lists } from './lists.ts';
import { names } from './names.ts';
import { numbers } from './numbers.ts';
import { orders } from './orders.ts';
import { ordinary } from './ordinary.ts';
import { passOn } from './pass-on.ts';
import { questions } from './questions.ts';
import { rooms } from './rooms.ts';
import { station } from './station.ts';
import { talk } from './talk.ts';
import { teaching } from './teaching.ts';
import { tickets } from './tickets.ts';
import { trouble } from './trouble.ts';

export const en: LanguageWords = {
  calledBy: 'english ingles',
  causes,
  clock,
  concepts,
  emergency,
  haul,
  kinds,
  lists,
  names,
  numbers,
  orders,
  ordinary,
  passOn,
  questions,
  rooms,
  station,
  talk,
  teaching,
  tickets,
  trouble,
};
