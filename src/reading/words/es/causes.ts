import type { LanguageWords } from '../language-words.ts';

export const causes: LanguageWords['causes'] = {
  heat: 'calor caliente',
  frost: 'helada helado hielo congelado congelada',
  mud: 'lodo mojado mojada lluvia lloviendo zoquete',
  other: `llanta llantas ponchada ponchado eje banda motor frenos manguera transmision bateria radiador carretera camino
    zanja atascado atorado`,
};
