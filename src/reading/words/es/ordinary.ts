/** Words one slip away from a word of ours, from the commonest words of Spanish films' subtitles. A new word of ours needs its neighbours here. */
export const ordinary = `
  abogada abogado abra abran abras abrigo abril abrir acaba acabado acabaron acabas acabemos acabo acaso actos
  adentro adora adoro advierto aerea agarrate agarren agotado aigo alerta algo aliento almas alto altos amamos
  amiga amigos andar andas ante aparte aprende aprendio arabe arana area arena arregla arreglo arrestado
  arrestaron artes asco asiento asientos ataca atacado atacando ataco atajo ataque ataquen ataques atrae
  atrapada atrapados atrapar atraparlo atraparon ayudado ayudar ayudara ayudare ayudarle ayudarme ayudarte
  ayudas ayudaste ayude ayuden ayudo baja baje bajos ballet banana bandas banera bano banos barra barras bases
  basura besos bola bolas boleto boletos bolsa bolsas bonita bonitas borde borracha borracho botas bote boton
  boveda brazos bromeo bruja bruno brutal buscas cabana cabe cabina cabra caca cada cadena caen caes cagar caida
  caido caiga caigo caja cajas cajon calientes callado callar calle callense calles callese calmado calmense
  calzones cambiado cambian cambiara cambiarlo cambiaron cambias cambie cambio camilla caminar caminos camioneta
  camisa campana campus canada canal canales canalla cancelar cancer cancion canciones canones cansada cansado
  cantando cantar caos capa capaz capital capitan carajos caras caray carbon carcel cargar cargo cargos carino
  carla carlo carne caro carrera cartel cartera casada casado casamos casar casas cases casino casos castro
  causa causado causes caviar cayendo caza cazador cazas celula celulas centro cercano cerradas cerrados
  cerradura cerrando charla china chino ciego cielo cientos cierra ciertas cierto ciertos cine circo citas clara
  clase clases cliente clientes closet coca coches coco coger cogido cojo cojones coleccion colinas collar
  colonia colonias color coman comando comas come comen comer cometer comi comic comio comite comoda compete
  competir compra comprado comun condado condenada condenado conducir conducta conectado confesar consigue
  contactar contado contar contenta contesta conteste contiene continua continuar continues contratado contratar
  copas copia corea coronel corran correcta correcto corredor corren correo corriendo corrupcion cortando cortar
  corte corten cortes cortina corto cosas costa costado crean crear creen creer crees creyo cruzando cuadras
  cuadro cuales cuantica cuarentena cuenta cuentan cuentas cuentos cuerda cuero cuerpo cuidando cura curso dada
  dama damas dana danado dando dante danza daras dare deba debas deben deberas debias decia decias dejara
  dejaras dejare dejarte dejas dejaste dejeme dejes dejo delito delta demas dental desastre descanso descarga
  deseado desean desee deseo deshacerse deshazte despedido despertado deten deudas devuelve dial dicen dices
  diego dieron diga digan digas digno dijo diles dinero dios dioses dira diras disculpame disculpas disculpe
  disculpen diselo divina divino dudo duenos durante durar duras duro electrica electrico eliminar emergencias
  empacar empece empecemos empezando empiece empieces empiezan empiezas empiezo empresa encendido encerrado
  enfrentar engano enojada ensenado ensene entendio entere enterrado entra entradas entran entrar entrara entras
  entre entrega entregado entren entrenado entres entro envie eramos eras escapando escapar escena espacio
  espada esparta espejo esperaba esperad esperado esperame esperamos esperan esperandote esperanza esperare
  esperas espere esperen esperes espero espia esposa estabas estadio estado estados estais estar estara estaras
  estaremos estariamos estarian estas este estelar estemos esten estos evento excepto explosivo explosivos
  expresion extrana falda falla fallar falsa falsas faltaba fatal fiebre figura figures film firmada firmado
  firme firmes flores formula francos freno fuegos gatos gracia graciosa gracioso grado grandes grano grasa
  grave grecia gritos grosero grupos haber habia habido hablado hablan hablar hablas hablen hables habra hacen
  haces haciamos hacienda haciendolo hada hadas haga hallado halle hara haras haria harta hazlo helena heroe
  heroina higado hojas huelo incendios inglesa ingleses inspector jaula jefa jefes jugando justa justo lado lana
  lanza largo laser lata lean lenta letras levanta liberal liberar libre libres libro libros lider limpias linda
  lindas lisa listas listos litros llama llamamos llaman llamando llamas llames llave llegada llegado llegamos
  llegan llegare lleguen llegues llenar llenas llenos llevaba llevando llevar llevara llevaran llevaras llevare
  llevaremos llevarnos llevas llevate lleves llorando loan lobo loco luce lucia lunes macho madera madre madrina
  magneto maleta malo malos mama mananas manchas mandan mande mando manejar manejarlo manera maneras mani mano
  manzana manzanas mapa mapas maquinas marica masa masaje mata matado matan matara matas materia maya mear
  medias medica medida medio melodia mensajero mensajes mente mentes menudo meti metida metio metro metros mias
  mide miente mientes miento minas minimo mintio mios mirada mirado mirando mirate mire mito moda modo montana
  monte morfina moto mover movil mueras muevas muneca muneco nadar nana nasa necesita necesitan necesitar
  necesitas necesite necesites negar negra negro negros nena nieto nieve nina ninera ninguna ninita nino normas
  norte nota notas noticia novela nube nubes nuevas nuevos numeros obra oler oral orbita orina oscura oscuro
  otras otro oyen padre paga pagado pagamos pagar pagara pagaras pago paises pajaro pajaros palo panama papa
  paquete paraiso pareces pareja parejas pares parte partes partida partido parto pasamos pasan pasando pasara
  pasare pasaron pasas pasear pasen pasion pasos pata patada patan patatas patio pato patria patrones pavo
  payaso pecado pecados pecho pedazo pedido pedimos pedro pega pegado pegale peleando pelos pena pene pensaba
  pensado pensando pensaron pense pension penso peor perdemos perder perdi perdone perfecta perfectos perro
  personaje personajes personal personales pesca pescado peste pico pida pide piden piel pierde pierdes pierdo
  pies pintar pirata piratas piso pisos pita planta plantas poco podamos podeis poder poderes poderosa poderoso
  podiamos podremos pondremos pone ponemos poner pones pongo ponle ponlo portada pose precio premio prensa
  preparada preparado presa preso presos prestado presume prima primavera prime primeras primero primeros primo
  princesa proceso promesa pude pudimos pudo puedan puedas puente pulse pura pure puso queda quedando quedar
  quede queden quedes quemado quemar querida querido querra queso quieren quieta quieto quinta quiso quitado
  quitarme quitarte quito quiza quizas rapida rapido real recado recibe reciben recibi recibiendo recibira
  recien recoge record recto reduce regresa regresado regresar regresas regrese regresen regreses reino remoto
  repente repito reporte reportes resolve respeto resto resuelto resulta resultado retirada retirado retiro
  retraso reune ricos ries robot rocas rollo roma romance romano romanos roto sabado saben sabes sabia sabiendo
  sabio sable sacalo sacare sacaremos saco sagrado saldra salen salga salidas saliera salir salmon salon salsa
  salta saluda saludo salva salvado salve samuel sano santa saque saquenlo sara sean seas seco segui seguia
  seguida seguido seguira seguiran seguiras seguire segundos senado senadora senal senales sentir sepamos
  separado sera seran seras sere seria serian serias series serio serios servicio servido servira servirle
  sesion sesos sida siendo siente siento sierra siga sigamos sigas sigues sirva sirven sirves sirvo sistema
  social sociales sofa soio sois sola solia soliamos solos sonado sonando sone sono soporto sosten soze sube
  subiendo suelta suenas suenos sufre supe supone supuse tabla talento tales taller tango tapa tarado tardar
  tareas taza telefonos tema temas temer temes temo templo temporal tender tener tenga tercero teresa termina
  terminada terminara terminemos terminen termines termino terror tiempos tienda tienen tienes tierras tigre
  tinta tipo tirar tiren tiro tiros toca tocan tocando tocar tocas toco tomamos tomando tomaria tome tomes tomo
  tontos toque toquen torneo toro torpe trabajaba trabajado trabajador trabajan trabajar trabajas trabaje
  trabajo trabajos traelo traen traer traera trafico trago traia traido traiga traigan traje trajo transmisor
  trataba tratar tratas trate trenes tropas truco trucos ultimas ultimos unidad unido usas util vaca vacias
  valen valiente valle value varon vasos vayamos veamos vela vemos vende vendo venga veran verte vestidos vete
  viaja viajar vias viejas viejo vienen vienes viento viera vimos vine vinieron vision vista viste vitales vives
  volando volo volver volvio vote votes voto vuela vueltas vuelto vuelvas vuelves vuelvo vuestra
`;
