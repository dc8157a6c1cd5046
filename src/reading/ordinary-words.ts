/**
 * Words of ordinary talk that are one slip of the finger away from a word of ours, and must never be taken for it
 * ("jumped" is not "dumped"): from the commonest words of English (SUBTLEX-US, Brysbaert & New 2009,
 * https://doi.org/10.3758/BRM.41.4.977) and of Spanish films' subtitles. A new word of ours needs its neighbours here.
 */
const list = `
  abogada abogado abort abra abran abras abrigo abril abrir acaba acabado acabaron acabas acabemos acabo
  acaso accent access aces actors actos actress adams adentro adora adore adoro advierto aerea agarrate
  agarren agent agotado agreed agrees aigo alerta algo aliento alleged allow allows almas alone alter
  alternate alto altos amamos amiga amigos amount ancient andar andas anger angles anna anne answers ante
  ants anymore aparte aprende aprendio arabe arana area arena argue arregla arreglo arrestado arrestaron
  arrival arrive arrives arrows artes asco asiento asientos ataca atacado atacando ataco atajo ataque
  ataquen ataques atrae atrapada atrapados atrapar atraparlo atraparon aunt awaiting aware ayudado ayudar
  ayudara ayudare ayudarle ayudarme ayudarte ayudas ayudaste ayude ayuden ayudo babes backs badge baja
  baje bajos bake baked baker bakery baking ballet banana band bandas bands banera bank bano banos bark
  barra barras bases bass basura bates bath batter baxter bean beard beating beats beck become beers began
  begging begins begun behaving behold beings bell bend besos beta beth bets better betting beware beyond
  bigger bind bing bitter black blades blake blaming bled blessing blind bloke blows boarding boards bola
  bolas boleto boletos bolsa bolsas bolt bonita bonitas booked boom booth borde border bore borracha
  borracho borrow boston botas bote bothers boton bottle bottoms boveda boys brace braces brains brass
  brave brazos breaks breathing breeding breeze bret bribe bride bridges bridget bring brings broker
  bromeo brooke bruja bruno brutal bubber buck bugging bumped bumper buscas busting butter button buying
  buzzing cabana cabe cabina cabra caca cada cadena caen caes cagar caida caido caiga caigo cain caja
  cajas cajon cakes caleb calientes callado callar calle called callense caller calles callese calls
  calmado calmense calvin calzones cambiado cambian cambiara cambiarlo cambiaron cambias cambie cambio
  came camel camilla caminar caminos camioneta camisa campana camps campus canada canal canales canalla
  cancelar canceled cancer cancion canciones candles candy cane cannon canones cans cansada cansado
  cantando cantar caos capa capaz capital capitan carajos caras caray carbon carcel card cards care cared
  career carefully cargar cargo cargos carino carla carlo carne caro carrera carriage carrot cars carson
  cart cartel carter cartera carved casada casado casamos casar casas cases casino casos castro catch
  causa causado causes causing caution caves caviar cayendo caza cazador cazas ceiling cellar celula
  celulas cent centro cents cercano cerradas cerrados cerradura cerrando chained chamber champ champion
  chan chance chang changes changing chanting chapter charla charmed charming chase chatter chatting
  cheated checks cheer cheng chew chick chicken china chino choir choke choking choosing chop chopper
  chores chowder chuck chung church ciego cielo cientos cierra ciertas cierto ciertos cinch cine circo
  citas clamp clan clara clase clases clears cliente clientes close closely closer closes closest closet
  cloth cloud clown clowns coaching coal coats coca coches coco cocoa cody coger cogido coin cojo cojones
  coleccion colin colinas collar collect collection collins colonia colonias colony color colored coman
  comando comas comb come comen comer cometer comi comic comics comio comite command commander comments
  common comoda compete competir compra comprado computers comun condado condenada condenado condo
  conducir conduct conducta conducted conectado confesar connect connection consigue contactar contado
  contar contenta contest contesta conteste contiene continua continuar continued continues contratado
  contratar convince cook cooked cooking cooler cooper copas cope copia copper cops cord corea corn corny
  coronel coroner corps corran correcta correcto corredor corren correo corriendo corrupcion corrupt
  corruption cortando cortar corte corten cortes cortina corto cosas costa costado costs couch cough
  couldn counts county courage court courts cover cows cozy cracking crane crap crash crawled crean crear
  creen creep creer crees crews creyo cross crowd crowds crunch crush cruzando crying cuadras cuadro
  cuales cuantica cuarentena cuenta cuentan cuentas cuentos cuerda cuero cuerpo cuidando cunning cura
  currency cursed curso dada dagger dale dama damages damas dame dana danado dando dandy danger dante
  danza daras dare darn dawn dealer dear dearly deba debas deben deberas debias decia decias deer degree
  dejara dejaras dejare dejarte dejas dejaste dejeme dejes dejo delight delito delivery delta demas dent
  dental denver desastre descanso descarga deseado desean desee deseo deshacerse deshazte desires
  despedido despertado dessert destroy deten deudas devuelve dial diaper dicen dices didn diego dieron
  diga digan digas digno dijo diles dinero ding dinner dios dioses dira diras disaster disculpame
  disculpas disculpe disculpen diselo divina divine diving divino dock doesn doggie dogs door dork
  dragging drawer drawers drawing dresser dried drinking drinks dripping drove drown dryer dudes dudo
  duenos duke dump durante durar duras during duro dutch dying earl ease easier eighth elaine electrica
  electrical electrico electronic element eliminar eliminate elle ellen elves emergencias empacar empece
  empecemos empezando empiece empieces empiezan empiezas empiezo empresa encendido encerrado ending
  enfrentar engage engano engineer engines enojada ensenado ensene entendio enter entere enterrado enters
  entra entradas entran entrar entrara entras entre entrega entregado entren entrenado entres entro envie
  eramos eras erased escapando escapar escena espacio espada esparta espejo esperaba esperad esperado
  esperame esperamos esperan esperandote esperanza esperare esperas espere esperen esperes espero espia
  esposa estabas estadio estado estados estais estar estara estaras estaremos estariamos estarian estas
  este estelar estemos esten estos eugene even evento excepto expect explosive explosivo explosivos
  expresion extent extrana faces facing failing failure faking falcon falda falla fallar fallen falling
  falsa falsas faltaba fame fare fasten fatal favors favour feds feeds feeling feels fella fellow felt
  fiebre fifth figura figured figures figuring filing filling film filming films finch finding finds
  finest finishes firm firmada firmado firme firmes fish fishing fist fitting fixing flag flags flame
  flare flavor flee flies fling flirting float flores flying folk fond forcing foreign form formula fort
  foster foul frame framed francos francs freaking freaks freed freely freezer french freno fridge fried
  friend fries frog fuegos fund fury future gaining gatos gene genie gentle gods gold goods goody grabs
  grace gracia graciosa gracioso gracious grades grado grams grandes grano grape grapes grasa grasp grass
  grave graves greasy greater grecia greece greene greet greeting grenade grey gritos grocery grosero
  ground grove grow grown grows growth grupos guest guests guitar guns haber habia habido hablado hablan
  hablar hablas hablen hables habra hacen haces haciamos hacienda haciendolo hack hacked hada hadas haga
  hail haley hallado halle hamlet handling hanged hanging hara haras hardest haria harlem harta harvey
  hasn hasty hatred haunted havana haven hazlo heads healed healing health heard heart heave heavens
  height helena helio helm helped helping helps helsing herb hero heroe heroina herr hers hide hiding
  higado highly hike hills hiring hitting hojas holding holds holes homer homey homo honored hoped hopper
  horn horns horse horses host house houses housing howdy howling huelo hugo hull hundreds hunt hunted
  incendios inches infection info inglesa ingleses injection inquiry inspector instance jasper jaula jefa
  jefes jeff join joint joints jones jugando jump jumping jumps justa justo keen lace lack laden lado lads
  lame lana landed landing lang lanza large largo laser lasts lata layer lead leader leads league leaking
  lean leaning learning least leaves legs lenning lens lent lenta less lester letras letter letting
  levanta liable liars liberal liberar library libre libres libro libros lick lider lied lies lifted
  lighter lighting lights limited limpias linda lindas lines lining link linked lisa listas listed listen
  listos litros litter liver llama llamamos llaman llamando llamas llames llave llegada llegado llegamos
  llegan llegare lleguen llegues llenar llenas llenos llevaba llevando llevar llevara llevaran llevaras
  llevare llevaremos llevarnos llevas llevate lleves llorando loaf loan lobo located locked locking loco
  loft looked looks loop loot lord lords lose loses loud louder loved loves loving luce lucia lucky lucy
  luke lunes lung lure macho madera madre madrina magneto maker makes making maleta mall malo malos mama
  manage mananas manchas mandan mande mando manejar manejarlo manera maneras mani manly manning manny mano
  manzana manzanas mapa mapas maquinas marica marked mary masa masaje massage mata matado matan matara
  matas materia mating matrix maya meal meaning means mear meat medias medic medica medida medio megan
  melodia menace mensajero mensajes mente mentes menudo mere merit messages meti metida metio metro metros
  mias mide miente mientes miento mike mild minas mines minimo mintio minus mios mirada mirado mirando
  mirate mire miss mito mixing moaning moda modo montana monte moore morfina mornings mothers moto
  mourning mover moves movie movies movil mueras muevas muneca muneco nadar nana nasa native neal near
  nearby neat necesita necesitan necesitar necesitas necesite necesites needn negar negra negro negros
  nemo nena nerd nest nicely nicer nick niece nieto nieve nights nina ninera ninguna ninita nino ninth
  nobles noise noises normas norte noses nota notas notch notes noticed noticia notify notion novela nube
  nubes nuevas nuevos numb numbers numeros numerous obra occurs offers oler opener operate operated
  operation oral orbita orders orina oscura oscuro other otras otro ounce overheard overreacting overseas
  owen owned owners oyen pace pack packed padre paga pagado pagamos pagar pagara pagaras page pago painter
  paises pajaro pajaros palmer palo panama papa papers paquete paradise paraiso paramedics pardon pareces
  pareja parejas parent pares parker parks parrot parte partes partida partido parto pasamos pasan pasando
  pasara pasare pasaron pasas pasear pasen pasion pasos passed pata patada patan patatas patio pato patria
  patrol patrones pavo payaso peace peas pecado pecados pecho peck pedazo pedido pedimos pedro pega pegado
  pegale pegged peleando pelos pena pene pensaba pensado pensando pensaron pense pension penso peor
  percent perdemos perder perdi perdone perfecta perfection perfectly perfectos perro personaje personajes
  personal personales persons pervert pesca pescado peste pete peters phase phileas phoned phones phony
  phrase picks pico pida pide piden piel pier pierde pierdes pierdo pies pike pills pilots pinch pine pink
  pintar pipe piper pirata piratas piso pisos pita place places plane planned planta plantas plate platoon
  plea plead pleased pleases pleasure pledge plug plum poco podamos podeis poder poderes poderosa poderoso
  podiamos podremos poems points poison poker pole pond pondremos pone ponemos poner pones pongo ponle
  ponlo pope porch portada pose potion powder powers prayer precio prefer premio prensa preparada
  preparado presa preso presos prestado presume price prick priest prima primary primavera prime primeras
  primero primeros primo princesa princess print printed prior prison proceso process promesa proper
  proves psycho pudding pude pudimos pudo puedan puedas puente pulls pulse pump pumping punch punks pura
  pure purple pursue pushed pushing puso puts putting quarrel quarters queda quedando quedar quede queden
  quedes queen queens quemado quemar querida querido querra queso quick quieren quieta quieto quincy
  quinta quiso quitado quitarme quitarte quito quiz quiza quizas race races racing radiation raging raines
  rains rainy raise raised raising rapida rapido rates ratio reading reads real rear reason recado receive
  recent recibe reciben recibi recibiendo recibira recien recipe recoge record recover recto reduce reed
  reform refuse regresa regresado regresar regresas regrese regresen regreses regret regrets reino
  remained remaining remote remoto removed repair repairs repeat repente repito reporte reported reporter
  reportes reports required rescue resent reserved resolve resort respeto resto restore resuelto result
  resulta resultado results retard retirada retirado retired retiro retraso reune revenge ribs rice riches
  ricos rides ridge riding ries rights rings riot ripped rises rising river rivers roads roam roar robber
  robbers robbery robbing robot robots rocas rocking rogers rohan role roller rollo rolls roma roman
  romance romano romanos roof room rooms roto rotting rough round rounds rover rowan rubbing rube rudder
  ruin ruled runner rushed rushing sabado saben sabes sabia sabiendo sabio sable sacalo sacare sacaremos
  saco safer sagrado sail sakes saldra salen salga salidas saliera saline salir salmon salon salsa salta
  saluda saludo salva salvado salve samson samuel sang sano santa saque saquenlo sara sark saves sayid
  scalp scar scare scares scaring scarlet scars scenes scores scotch scratched screech seal sealed sean
  seas seasons seated seats seco seconds section seed seek seem segui seguia seguida seguido seguira
  seguiran seguiras seguire segundos senado senadora senal senales send sentir seoul sepamos separado sera
  seran seras sere seria serian serias series serio serios serve serves services servicio servido serving
  servira servirle sesion sesos session sets settling seventh shaft shakes shared shares sharing shark
  sharon shaw shed shield shifts ship shipped shoes shoot shooting shops shore shorter shorts shorty
  shoulder shouldn shouting shouts shoved showed shown shows sida siendo siente siento sierra siga sigamos
  sigas sign signal signing sigues singing sinking sirva sirven sirves sirvo sistema sister site situation
  situations sixth skill skipped slapped slater sleeps sleeve slide slipped slow smart smarter smiles
  smoke snakes snapped snatch sneak snow snuck social sociales sofa soio sois sola sold solia soliamos
  solid solos sonado sonando sone sono soporto sosten soul souls soze spank spare spared sparks sparky
  speaks spear special spill spitting splitting spoke spoon sport stabbed stack stain stairs stake stalker
  stalking stall stalling stamps stan standing stands star stare staring stars starters starts starved
  starving stated states stationed statue stayed staying stays steak step stepped steven stick sting
  stitches stock stole stone stoned stops store stove strapped stretch strike strikes stripped stroll
  strong struck stuart sube subiendo suck suction suelta suenas suenos sufre supe supone support supported
  supposedly supuse surf survive swift switch systems tabla table taken takin talent talento tales talking
  talks taller tango tank tanks tanner tapa tapes tapping tarado tardar tareas targets tastes taught taxes
  taza teacher tearing teasing teen teenage telefonos tells telly tema temas temer temes temo templo
  temporal temporary tender tener tenga tennis tent tenth tercero teresa termina terminada terminara
  terminemos terminen termines termino terror terry thai thanked theatre theirs theory thick things thirst
  thirsty thomas thousands threw thus tick ticking tickle tied tiempos tienda tienen tienes tierras tigre
  timer timing tinta tipo tips tirar tiren tiro tiros toad toca tocan tocando tocar tocas toco toilet
  tomamos tomando tomaria tome tomes tomo tontos tony tops toque toquen torch torneo toro torpe toss tough
  tower towns toys trabajaba trabajado trabajador trabajan trabajar trabajas trabaje trabajo trabajos
  traced track tracked tracking tracks trade traded trading traelo traen traer traera trafico trago traia
  traido traiga traigan trail train trained training trains traitor traje trajo transmisor trap traps
  trataba tratar tratas trate tray treaty trees trek trenes triad trick tricked tricks tricky trip trooper
  troops tropas truco trucos true trunk trusts trying tuck tucker tunes tunnel tunnels turn turner turning
  turns typing ultimas ultimate ultimos understands unidad unido unlock unlocked untie unto usas used
  useless util vaca vacias valen valet valiente valle value valve varon vase vasos vayamos veamos vein
  veins vela velma velvet vemos vende vendo venga vent veran verne vernon verte vestidos vete viaja viajar
  vias viejas viejo vienen vienes viento viera vile vimos vince vine vinieron vision vista viste vitales
  vives volando volcano volo volver volvio vote voted votes voto vuela vueltas vuelto vuelvas vuelves
  vuelvo vuestra waist waking walked walker wall walls wally walter wang wanting ward warn warp wars wash
  washing wasn wasting waving wealthy wearing webster well weren west whale whales whatever wheat wheeler
  wheels whereas wherever whew whining whites whitey whoa whoever whom whoo widow wild willy window winds
  wire wires wise wished wishing wong word works world worn worrying wouldn wound wounds wrapped wright
  write writing yards years yell yelled yield yours
`;

export const ordinaryWords: ReadonlySet<string> = new Set(list.trim().split(/\s+/));
