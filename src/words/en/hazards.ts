import { type Said, said, strong } from '#words/said.ts';

/** One hazard: its name, what to do in one sentence, and why. Lines with a published source are made from `facts`. */
type Section = { readonly title: string; readonly sentence: Said; readonly text: readonly string[] };

const sections = {
  botulism: {
    title: 'Botulism, and why nitrite is weighed',
    sentence: said(
      'Nitrite, salt, acid and drying hold it back together. ',
      strong('Weigh the curing salt'),
      '.',
    ),
    text: [
      'Clostridium botulinum lives in soil and dust and can be on any meat. Where there is no air, much water, and little salt and acid, as in the middle of a fresh sausage, it can grow and make a poison that stops the breath.',
      'The poison has no taste, no smell and no colour. A sausage that looks and tastes right can hold it.',
      'Of the four, only nitrite and salt are there from the first hour; acid takes a day or more, drying takes weeks. Nitrite is counted in thousandths of a gram to the kilogram, so it is weighed on a fine scale: never taken by the spoon, never guessed.',
    ],
  },
  nitrite: {
    title: 'Too much nitrite',
    sentence: said(
      'Go by the ',
      strong('percentages printed on the bag'),
      ', never by its name or its colour.',
    ),
    text: [
      'Nitrite is a poison in gram amounts: it keeps the blood from carrying oxygen, and children are harmed by less. Too much is no stronger cure. It is a batch that nobody may eat.',
      'Two curing salts that look alike can differ tenfold in nitrite. Keep each in its own bag, marked, away from table salt, where no child can reach it. Pure nitrite has no place at a small bench.',
      'A batch that got too much is held, the local authority is asked, and what was decided is written down. Waiting or drying is no remedy that this book could count.',
    ],
  },
  staphylococcus: {
    title: 'Staphylococcus aureus and degree-hours',
    sentence: said(
      'When the degree-hours are passed: ',
      strong('hold the batch, have it tested, decide, write it down'),
      '.',
    ),
    text: [
      'It lives on skin and in noses, and it bears salt and nitrite better than most. In a warm mix that is not yet acid it can grow and leave a toxin that heat does not destroy.',
      'Degree-hours limit how long a warm mix may take to reach pH 5.3. They speak of Staphylococcus aureus only: a batch that keeps them may still hold everything else on this page.',
      'Neither more fermenting nor cooking takes back a limit that was passed.',
    ],
  },
  coliSalmonella: {
    title: 'E. coli and Salmonella',
    sentence: said('They come in with the meat. ', strong('Buy well, work cold, work clean'), '.'),
    text: [
      'Some strains of E. coli make people gravely ill in very small numbers; children can lose their kidneys by them. Salmonella needs more, and is more common.',
      'Acid, salt and drying bring their numbers down slowly, and none of these removes them with certainty. A raw-cured sausage is never heated, so what was in the meat may be in the slice.',
      'What helps comes before the casing: whole cuts from a source you trust, cold all the way, clean hands, knives and tables, minced on the day. Degree-hours and nitrite say nothing about them.',
    ],
  },
  listeria: {
    title: 'Listeria',
    sentence: said('It grows in the cold. ', strong('Clean what touches the sausage last'), '.'),
    text: [
      'Listeria monocytogenes lives in drains, on floors, in slicers and in cold rooms, and often reaches a sausage after it was made: at peeling, cutting and packing.',
      'Healthy people may notice nothing. It can kill the unborn, the newborn, the old and the ill.',
    ],
  },
  trichinella: {
    title: 'Trichinella',
    sentence: said(
      strong('Use examined meat'),
      ', or freeze pork for the published time, counted from when the meat itself is that cold.',
    ),
    text: [
      'A worm in the muscle of pigs, wild boar, bears, horses and other animals that eat meat. The salt and drying of a usual sausage are not enough to rely on.',
      'A home freezer is often warmer in the middle of the meat than its display says. Measure in the thickest piece, and start counting only then.',
      'The published ways of curing against it are to be followed to the letter or not at all: salt, size of grind, diameter, temperature and days belong together.',
    ],
  },
  moulds: {
    title: 'Toxic moulds',
    sentence: said('Colour does not tell the kind. ', strong('When in doubt, do not eat it'), '.'),
    text: [
      'A thin, dry, white bloom from a culture that you put on is what is wanted. Green, yellow, black, pink or furry growth is of unknown kind. Some moulds make poisons that cannot be seen, and wiping the casing does not take them back.',
      'Growth under the casing, slime, a soft piece, a foul smell: take it away from the others and throw it away. Do not taste it.',
      'No regulator’s table of mould colours was found for this page, and popular advice contradicts itself.',
    ],
  },
  eaters: {
    title: 'Who should not eat raw-cured sausage',
    sentence: said(
      strong('Pregnant women, small children, old people'),
      ' and all whose defences are weakened by illness or medicine.',
    ),
    text: ['It is raw meat. Say so to guests and on the label, and let them choose.'],
  },
  salt: {
    title: 'Too little salt',
    sentence: said(strong('Do not cut the salt'), ' of a formula for taste or health.'),
    text: [
      'Salt takes water away from bacteria from the first hour, and while a piece dries it grows stronger. A formula with less salt must rely on everything else more, and this book cannot say that everything else will do.',
      'Count the salt that is in the curing salt as well, and look at what the percentage is counted on: the meat, or the whole mix.',
    ],
  },
  noCure: {
    title: 'No curing salt',
    sentence: said('Without nitrite, ', strong('nothing on this page but salt works in the first days'), '.'),
    text: [
      'There are sausages made without it, by people with meat, rooms, cold and habits that a new maker does not have, and under rules of their own. A formula here that has none says so on every page of its batch.',
      'Nitrate alone is no nitrite: bacteria must turn it first, slowly, and they stop when the mix grows sour.',
      'Plant powders and juices bring an unknown amount of nitrate or nitrite. What is unknown is not counted as present.',
    ],
  },
  noStarter: {
    title: 'No starter',
    sentence: said('The mix may not turn sour in time. ', strong('Read the pH all the same'), ', and early.'),
    text: [
      'Without a culture the souring is left to whatever came with the meat. It may be quick, slow, or none, and it can be another on the next day. The degree-hours run just as fast.',
      'A culture that is old, was kept warm or was given too thinly behaves like none at all.',
    ],
  },
  game: {
    title: 'Game',
    sentence: said(
      strong('Freezing does not make wild boar or bear fit to eat raw'),
      '; have it examined for Trichinella.',
    ),
    text: [
      'Some kinds of Trichinella in game stand the cold of a freezer. Hunted meat may also have lain warm, been shot through the gut, or carry other parasites, such as Toxoplasma.',
      'The limits in this book were published for farmed meat. Ask the local authority what game needs where you are.',
    ],
  },
  ill: {
    title: 'If somebody falls ill',
    sentence: said(
      'Seeing double, drooping lids, a dry mouth, trouble with speaking or swallowing, weak arms: ',
      strong('call an ambulance at once'),
      '.',
    ),
    text: [
      'That can be botulism, hours or days after eating, with no fever. Blue lips and short breath soon after eating can be nitrite. Both are emergencies.',
      'Bloody diarrhoea, high fever, or any illness of a child or a pregnant woman after raw sausage: see a doctor today and say what was eaten. Keep what is left of the batch, cold and marked.',
    ],
  },
  app: {
    title: 'What this app does, and does not',
    sentence: said('It computes from what was typed in. ', strong('It does not make food safe'), '.'),
    text: [
      'A wrong scale, a meter out of calibration or a slip of the thumb gives a wrong answer that looks like any other. Figures marked with ~ are estimates, and no verdict rests on one.',
      'Within limit means that a published limit was held by what was read; it says nothing about anything that was not read. Many of the limits were taken from copies or from memory. Each says so, and none was compared with the official text.',
    ],
  },
  selling: {
    title: 'Selling, and the law',
    sentence: said('Selling needs ', strong('a licence and an approved process'), '.'),
    text: [
      'Nothing that this book prints is either of the two. Giving away at a market, a fair or a restaurant can count as selling.',
      'Local codes and licensed practice come first, wherever they say something else than this app.',
    ],
  },
} satisfies Readonly<Record<string, Section>>;

export type HazardId = keyof typeof sections;

export const hazards = {
  title: 'Hazards',
  line: 'Read this once before the first batch',
  sentence: said(
    'Raw sausage has made people ill and has killed. ',
    strong('Local codes and licensed practice come first'),
    '; this page says what can go wrong, and why the book asks what it asks.',
  ),
  memory: 'Lines with a source name it. All else here is general knowledge, written from memory.',
  contents: 'On this page',
  published: 'Published',
  toTop: 'Back to the top',
  toLimits: 'All limits and their sources',
  sections,
  facts: {
    botulinumGrowth: (n: { aw: string; ph: string }) =>
      `The kinds that matter most in meat (types A and B, proteolytic) are reported to need a water activity above ${n.aw} and a pH of ${n.ph} or more to grow.`,
    cureFloor: (n: { mgPerKg: string; salt: string }) =>
      `Canada asks for at least ${n.mgPerKg} of nitrite or nitrate and ${n.salt} of salt in every fermented meat product, against Clostridium botulinum.`,
    nitriteFloorUs: (n: { mgPerKg: string }) =>
      `A handbook of the United States names ${n.mgPerKg} of nitrite as the least with some preserving effect in a product kept unchilled.`,
    nitriteMostUs: (n: { ground: string; whole: string }) =>
      `United States: at most ${n.ground} of nitrite on the meat of a ground sausage. The ${n.whole} of the same text are for whole muscle, not for sausage.`,
    nitriteMostCa: (n: { mgPerKg: string }) =>
      `Canada: at most ${n.mgPerKg} of nitrite and nitrate together, before fermenting.`,
    nitriteMostEu: (n: { mgPerKg: string }) =>
      `European Union: at most ${n.mgPerKg} of nitrite, counted as the ion, put into meat that is not heated.`,
    nitriteHome: (n: { nitrite: string; nitrate: string }) =>
      `Curing mixtures sold for home use in the United States must lead to at most ${n.nitrite} of nitrite and ${n.nitrate} of nitrate in the finished meat, and must warn to be kept out of the reach of children.`,
    staphFrom: (n: { temp: string }) =>
      `Above ${n.temp} Staphylococcus aureus can multiply and form its toxin; some strains form one that is very stable to heat.`,
    staphRoom: () =>
      'The temperature that counts is that of the fermentation room, and the limit is that of the warmest hour before pH 5.3.',
    staphLimits: (n: { system: string; limits: readonly string[]; unit: string }) =>
      `${n.system}: fewer than ${n.limits.join(', ')} ${n.unit}; the warmer the room was, the fewer.`,
    staphAw: (n: { low: string; high: string }) =>
      `Least water activity for growth: two sources disagree, ${n.low} and ${n.high}.`,
    coliGrowth: (n: { coliAw: string; coliPh: string; salmonellaAw: string; salmonellaPh: string }) =>
      `Least for growth: E. coli at a water activity of ${n.coliAw} and pH ${n.coliPh}, Salmonella at ${n.salmonellaAw} and pH ${n.salmonellaPh}. Not to grow is not to die.`,
    coliLimits: (n: { samples: string; coli: string; sampleG: string }) =>
      `Australia and New Zealand: of ${n.samples} samples of uncooked fermented mince none may hold more than ${n.coli} E. coli in a gram, and none Salmonella in ${n.sampleG}.`,
    coliSampling: (n: { batter: string; finished: string }) =>
      `One way for a Canadian plant to show that a lot keeps free of them takes ${n.batter} samples of raw mix and ${n.finished} of the finished product: no number of readings at home stands in for that.`,
    listeriaGrowth: (n: { aw: string; ph: string }) =>
      `Least for growth: a water activity of ${n.aw} and pH ${n.ph}.`,
    listeriaEu: (n: { ph: string; aw: string; ph2: string; aw2: string }) =>
      `European Union: taken to be unable to grow at pH ${n.ph} or less, or at a water activity of ${n.aw} or less, or at pH ${n.ph2} together with ${n.aw2}.`,
    listeriaLimit: (n: { cfu: string }) =>
      `In such a product at most ${n.cfu} in a gram while it is on sale.`,
    trichinellaFreezing: (n: { cm: string; times: readonly { days: string; temp: string }[] }) =>
      `Pork in pieces of up to ${n.cm}: ${n.times.map(({ days, temp }) => `${days} days at ${temp}`).join(', ')}.`,
    trichinellaReserved: () =>
      'The federal text of the United States that held these tables stands empty since 2018; state rules still print them.',
    trichinellaCuring: (n: { salt: string; mm: string; temp: string; days: string; total: string }) =>
      `One published way of curing asks for ${n.salt} of salt, ${n.days} days of drying at ${n.temp} or warmer for pieces of up to ${n.mm}, and ${n.total} days in all.`,
    trichinellaOnly: () =>
      'Such ways are for Trichinella alone, and promise nothing about Salmonella, Toxoplasma, E. coli or Listeria.',
    mouldTable: () =>
      'No regulator’s table of mould colours was found, and popular advice contradicts itself.',
    mouldJudge: () => 'A trade textbook leaves the decision to wipe off mould to experienced staff.',
    mouldSummer: (n: { from: string; to: string }) =>
      `In one survey a mould that can form a kidney poison (Aspergillus ochraceus) sat on ${n.from} to ${n.to} of sausages made in summer.`,
    nitrateStops: (n: { ph: string }) => `Below about pH ${n.ph} nitrate is no longer turned into nitrite.`,
    saltLeast: (n: { salt: string }) =>
      `Canada asks for at least ${n.salt} of salt in fermented meat products.`,
    saltSlows: () =>
      'More salt slows souring as well: in one trial the mix with least salt soured fastest. Salt and starter belong together.',
    gameFreezing: () => 'Freezing cannot be relied on to kill the cysts in meat other than pork.',
    gameBoar: (n: { weeks: string; temp: string }) =>
      `Meat of one naturally infected wild boar could still infect after ${n.weeks} weeks at ${n.temp}.`,
  },
};
