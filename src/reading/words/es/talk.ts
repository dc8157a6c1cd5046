import type { LanguageWords } from '../language-words.ts';

export const talk: LanguageWords['talk'] = {
  little: `
    el la los las un una unos unas de del en al a mi yo me se lo le les ya ahora ahorita orita aqui aca con por para pa
    pues bueno jefe patron compa wey guey amigo gracias favor porfavor si oye hola es soy esta estan estoy toy ando voy
    son hay como mas o ay que muy troca troka camion bien todo todos nos perdon disculpa`,
  blockers: `
    no cuando antes despues casi aun todavia nunca nadie ni sin quiero quiere necesito creo quien porque donde manana
    luego tu usted ustedes ellos ella dile digo dice`,
  joining: 'y e tambien pero',
  greetings: `
    buenos buenas dias tardes noches hola gracias muchas de nada si no adios saludos bien perfecto vale orale sale`,
  spellings: {
    aorita: 'ahorita',
    horita: 'ahorita',
    voi: 'voy',
    bacio: 'vacio',
    troke: 'troca',
    troque: 'troca',
    q: 'que',
    k: 'que',
    ke: 'que',
    xq: 'porque',
  },
  asks: 'quien alguien',
  beside: 'de del tras atras detras delante despues que con',
  units:
    'kmh km millas milla porciento % pesos dolares varos baros lana centavos anos dias semanas galones metros pies pulgadas cafes veces',
  behind: 'atras detras',
  ifs: 'si',
  neighbours: 'vecino vecinos vecina',
  self: 'yo mi mis llevo hice traigo he tengo me',
  ahead: 'adelante delante enfrente fila linea cola trocas camiones',
  root: 'raiz raices sonda temperatura temp termometro',
  topping: '(?:deshoj|desfoli|topea|topa|descoron)(?:mos|do|da|dos|das|ndo|amos|ado|ada|ados|adas|ando)',
  besideMachine: 'bajo abajo debajo junto cerca con tras atras detras en hasta',
  denials: 'no vez',
  conditions: 'si cuando antes despues',
  no: 'no',
};
