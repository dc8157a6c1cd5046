import type { LanguageWords } from '../language-words.ts';

export const emergency: LanguageWords['emergency'] = {
  harmless: [
    /cables? (para |pa )?(pasar )?corriente(?! (caid|tirad))|cables? (de|del) (la |el )?(cargador|bateria|telefono|celular|radio|tele)(?! (caid|tirad))/,
    /(no hay|sin|ni|ningun|nada de) (ningun |mas )?(fuego|incendio|lumbre|heridos?|accidentes?|lastimados?)/,
    /(nadie|ninguno) (esta |se |salio |resulto |quedo )?(herido|lastimado|lastimo|hirio)/,
    /no (estoy|esta|estan|se|me|salio) (herido|herida|heridos|lastimado|lastimo|lastime)/,
  ],
  danger: [
    /herid[oa]s?|lastimad[oa]s?|lastimo|lastime|sangrando|sangre|inconsciente|desmay(o|ado|ada)|infarto|no respira/,
    /fuego|incendio|incendiando|lumbre|llamas (en|del|de la)|quemando|se quema|exploto/,
    /volc(o|ado|ada|adura|amos|aron|ando)|volteo|volteada|volteado|choque|choco|chocaron|chocamos/,
    /cables?|lineas? electricas?|electrocut(o|ado|ada)|poste caido|se corto (la|el|un|una) (mano|dedo|brazo|pie|pierna)/,
    /ambulancia|emergencia|auxilio|socorro|ayud(ame|enme|enos|anos)|accidente/,
    /atrapad[oa]s?|atropell(o|ado|ada|aron)|aplastad[oa]|aplasto|prensad[oa]|prenso|lo agarro la (maquina|banda|cadena)/,
  ],
  need: 'necesito|necesitamos',
  help: 'ayuda',
  known: `herida herido lastimado lastimada fuego incendio lumbre quemando volco volcado volcada volteo cable ambulancia
    emergencia auxilio socorro accidente ayudame ayudenme atrapado`,
};
