import type { LanguageWords } from '../language-words.ts';

export const passOn: LanguageWords['passOn'] = {
  tell: 'dile|digale|diganle|avisale|avisenle|avisa|avisen',
  tellAll: 'diles|digales|diganles|avisales|avisenles',
  everybody: 'a (?:todos|todas|toda la gente|la gente|la raza|los choferes)(?: los choferes)?',
  to: 'a',
  that: 'que',
  known: 'dile diles digale digales avisale avisales todos',
};
