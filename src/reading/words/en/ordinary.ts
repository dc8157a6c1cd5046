/**
 * Words of ordinary talk that are one slip of the finger away from a word of ours, and must never be taken for it
 * ("jumped" is not "dumped"): from the commonest words of English (SUBTLEX-US, Brysbaert & New 2009,
 * https://doi.org/10.3758/BRM.41.4.977). A new word of ours needs its neighbours here.
 */
export const ordinary = `
  abort accent access aces actors actress adams adore agent agreed agrees alleged allow allows alone alter
  alternate amount ancient anger angles anna anne answers ants anymore area argue arrival arrive arrives arrows
  aunt awaiting aware babes backs badge bake baked baker bakery baking ballet banana band bands bank bark bases
  bass bates bath batter baxter bean beard beating beats beck become beers began begging begins begun behaving
  behold beings bell bend beta beth bets better betting beware beyond bigger bind bing bitter black blades blake
  blaming bled blessing blind bloke blows boarding boards bolt booked boom booth border bore borrow boston
  bothers bottle bottoms boys brace braces brains brass brave breaks breathing breeding breeze bret bribe bride
  bridges bridget bring brings broker brooke brutal bubber buck bugging bumped bumper busting butter button
  buying buzzing cain cakes caleb called caller calls calvin came camel camps campus canada canceled cancer
  candles candy cane cannon cans capital carbon card cards care cared career carefully cargo carriage carrot
  cars carson cart carter carved cases casino catch causes causing caution caves ceiling cellar cent cents
  chained chamber champ champion chan chance chang changes changing chanting chapter charmed charming chase
  chatter chatting cheated checks cheer cheng chew chick chicken china choir choke choking choosing chop chopper
  chores chowder chuck chung church cinch clamp clan clears close closely closer closes closest closet cloth
  cloud clown clowns coaching coal coats cocoa cody coin colin collar collect collection collins colony color
  colored comb come comic comics command commander comments common compete computers condo conduct conducted
  connect connection contest continued continues convince cook cooked cooking cooler cooper cope copper cops
  cord corn corny coroner corps corrupt corruption costs couch cough couldn counts county courage court courts
  cover cows cozy cracking crane crap crash crawled creep crews cross crowd crowds crunch crush crying cunning
  currency cursed dagger dale damages dame dana dandy danger dare darn dawn dealer dear dearly deer degree
  delight delivery delta dent dental denver desires dessert destroy dial diaper didn diego ding dinner disaster
  divine diving dock doesn doggie dogs door dork dragging drawer drawers drawing dresser dried drinking drinks
  dripping drove drown dryer dudes duke dump during dutch dying earl ease easier eighth elaine electrical
  electronic element eliminate elle ellen elves ending engage engineer engines enter enters erased eugene even
  expect explosive extent faces facing failing failure faking falcon fallen falling fame fare fasten fatal
  favors favour feds feeds feeling feels fella fellow felt fifth figured figures figuring filing filling film
  filming films finch finding finds finest finishes firm fish fishing fist fitting fixing flag flags flame flare
  flavor flee flies fling flirting float flying folk fond forcing foreign form formula fort foster foul frame
  framed francs freaking freaks freed freely freezer french fridge fried friend fries frog fund fury future
  gaining gene genie gentle gods gold goods goody grabs grace gracious grades grams grape grapes grasp grass
  grave graves greasy greater greece greene greet greeting grenade grey grocery ground grove grow grown grows
  growth guest guests guitar guns hack hacked hail haley hamlet handling hanged hanging hardest harlem harvey
  hasn hasty hatred haunted havana haven heads healed healing health heard heart heave heavens height helio helm
  helped helping helps helsing herb hero herr hers hide hiding highly hike hills hiring hitting holding holds
  holes homer homey homo honored hoped hopper horn horns horse horses host house houses housing howdy howling
  hugo hull hundreds hunt hunted inches infection info injection inquiry inspector instance jasper jeff join
  joint joints jones jump jumping jumps keen lace lack laden lads lame landed landing lang large laser lasts
  layer lead leader leads league leaking lean leaning learning least leaves legs lenning lens lent less lester
  letter letting liable liars liberal library lick lied lies lifted lighter lighting lights limited linda lines
  lining link linked listed listen litter liver llama loaf loan located locked locking loft looked looks loop
  loot lord lords lose loses loud louder loved loves loving lucky lucy luke lung lure maker makes making mall
  mama manage manly manning manny marked mary massage mating matrix meal meaning means meat medic megan menace
  mere merit messages mike mild mines minus miss mixing moaning moore mornings mothers mourning moves movie
  movies native neal near nearby neat needn negro nemo nerd nest nicely nicer nick niece nights ninth nobles
  noise noises noses notch notes noticed notify notion numb numbers numerous occurs offers opener operate
  operated operation oral orders other ounce overheard overreacting overseas owen owned owners pace pack packed
  page painter palmer panama papa papers paradise paramedics pardon parent parker parks parrot passed patio
  patrol peace peas peck pedro pegged percent perfection perfectly personal persons pervert pete peters phase
  phileas phoned phones phony phrase picks pier pike pills pilots pinch pine pink pipe piper place places plane
  planned plate platoon plea plead pleased pleases pleasure pledge plug plum poems points poison poker pole pond
  pope porch pose potion powder powers prayer prefer presume price prick priest primary prime princess print
  printed prior prison process proper proves psycho pudding pulls pulse pump pumping punch punks pure purple
  pursue pushed pushing puts putting quarrel quarters queen queens quick quincy quiz race races racing radiation
  raging raines rains rainy raise raised raising rates ratio reading reads real rear reason receive recent
  recipe record recover reduce reed reform refuse regret regrets remained remaining remote removed repair
  repairs repeat reported reporter reports required rescue resent reserved resort restore result results retard
  retired revenge ribs rice riches rides ridge riding rights rings riot ripped rises rising river rivers roads
  roam roar robber robbers robbery robbing robot robots rocking rogers rohan role roller rolls roman romance
  roof room rooms rotting rough round rounds rover rowan rubbing rube rudder ruin ruled runner rushed rushing
  safer sail sakes saline salmon salon samson samuel sang santa sark saves sayid scalp scar scare scares scaring
  scarlet scars scenes scores scotch scratched screech seal sealed seas seasons seated seats seconds section
  seed seek seem send seoul series serve serves services serving session sets settling seventh shaft shakes
  shared shares sharing shark sharon shaw shed shield shifts ship shipped shoes shoot shooting shops shore
  shorter shorts shorty shoulder shouldn shouting shouts shoved showed shown shows sign signal signing singing
  sinking sister site situation situations sixth skill skipped slapped slater sleeps sleeve slide slipped slow
  smart smarter smiles smoke snakes snapped snatch sneak snow snuck social sofa sold solid soul souls spank
  spare spared sparks sparky speaks spear special spill spitting splitting spoke spoon sport stabbed stack stain
  stairs stake stalker stalking stall stalling stamps stan standing stands star stare staring stars starters
  starts starved starving stated states stationed statue stayed staying stays steak step stepped steven stick
  sting stitches stock stole stone stoned stops store stove strapped stretch strike strikes stripped stroll
  strong struck stuart suck suction support supported supposedly surf survive swift switch systems table taken
  takin talent tales talking talks tank tanks tanner tapes tapping targets tastes taught taxes teacher tearing
  teasing teen teenage tells telly temporary tender tennis tent tenth terror terry thai thanked theatre theirs
  theory thick things thirst thirsty thomas thousands threw thus tick ticking tickle tied timer timing tips toad
  toilet tony tops torch toss tough tower towns toys traced track tracked tracking tracks trade traded trading
  trail train trained training trains traitor trap traps tray treaty trees trek triad trick tricked tricks
  tricky trip trooper troops true trunk trusts trying tuck tucker tunes tunnel tunnels turn turner turning turns
  typing ultimate understands unlock unlocked untie unto used useless valet value valve vase vein veins velma
  velvet vent verne vernon vile vince vine vision volcano vote voted votes waist waking walked walker wall walls
  wally walter wang wanting ward warn warp wars wash washing wasn wasting waving wealthy wearing webster well
  weren west whale whales whatever wheat wheeler wheels whereas wherever whew whining whites whitey whoa whoever
  whom whoo widow wild willy window winds wire wires wise wished wishing wong word works world worn worrying
  wouldn wound wounds wrapped wright write writing yards years yell yelled yield yours
`;
