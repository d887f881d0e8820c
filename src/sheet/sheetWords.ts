/** What only the sheet says; all else on it is said by `words/`. */
import type { Verdict } from '../assessment.ts';
import type { Logger } from '../house.ts';
import { count, dayOfYear } from '../words/figures.ts';

export const titles = {
  sheet: 'Handover sheet',
  firstPage: 'For the people who live here',
  nights: 'The last nights',
  cooling: 'How slowly it cools',
  watch: 'What to watch',
  builder: 'For the builder',
  answer: 'Measured beside the design',
  ratio: 'Measured over drawn',
  section: 'Where the drawing lets heat out',
  elements: 'What each element would have to be',
  changed: 'What changed between stages',
  moist: 'How moist the air was',
  next: 'What to do next',
  look: 'Where to look first',
  record: 'The technical record',
  lastNight: 'The last night that counts',
  eachNight: 'Nights used and left out',
  ways: 'The ways to the heat loss',
  loggers: 'Loggers and their check',
  assumed: 'What was assumed',
  siteNotes: 'Notes from the site',
  method: 'The method in short',
  files: 'Raw files',
  limits: 'What this does not prove',
  photos: 'Photos',
  signed: 'Names and signatures',
} as const;

export const madeOn = (date: string) => `Made on ${dayOfYear(date)}`;
export const madeBy = (version: string) => `Worked out by Stillwarm ${version}`;

export const address = 'Plot and address';
export const howToRead =
  'The stroke is the best single figure; in nineteen tests of twenty the true one is somewhere on the line.';
export const wattsPerKelvin =
  'W/K is the heat in watts that leaves for every degree (1 K is one degree) that it is colder outside: half the figure, half the heating.';
export const drawnNotch = 'The broken line is what the drawing says.';
export const noFigure = 'No heat loss can be given yet.';
export const noDesign = 'There is no design to set the measurement beside.';
export const earlierInBrief =
  'Of many stages only the last is told night by night. Every figure of the earlier ones stands in the assessment of the handover pack.';
export const noNights = 'No night has been recorded yet.';
export const diagram =
  'A diagram, not a drawing to scale: an element’s lines together are as thick as the heat that it loses by design; lengths follow the areas. Small circles are loggers. Shares are of the whole designed loss, bridges and ventilation included.';
/** For a column of a table. */
export const verdicts: Readonly<Record<Verdict, string>> = {
  meets: 'performs as drawn',
  exceeds: 'loses more than drawn',
  undecided: 'cannot be told yet',
};

export const places: Readonly<Record<Logger['place'], string>> = {
  inside: 'inside',
  outside: 'outdoors',
  void: 'in an unheated space',
  surface: 'on a surface',
  adjacent: 'next door',
};

export const noMoistOutside =
  'No logger outdoors had humidity, so how much more water the rooms held is not told here.';

export const atOne = 'At 1 the house loses exactly what the drawing says; left of it less, right of it more.';
export const unchangedAtOne =
  'At 1 nothing changed. A smaller heat loss and a longer time constant are the better house.';
export const fittedCurve =
  'The long dashes are the smooth fall that was fitted to the readings between the two marks.';
export const noFormerStage = 'There is one stage only, so there is nothing to compare it with.';

export const rowOfNights = (shown: number, all: number, anyHollow: boolean) =>
  [
    shown === all
      ? `All ${count(all, 'night')}, the newest at the right.`
      : `The last ${shown} of ${count(all, 'night')}, the newest at the right.`,
    'In each the solid line is the warmth inside, the broken one outdoors, and the figure is how far it fell (1 K is one degree).',
    ...(anyHollow ? ['A white one was not used, for the reason on it.'] : []),
  ].join(' ');

/** Advice of a general kind: nothing of it was measured. PRACTICE. */
export const watch = [
  'On a still, cold night with the heating off it should fall about as in these nights. If in like weather it falls much faster, have it looked at.',
  'Whoever drills through a wall, ceiling or floor later, for a cable or a pipe, should seal around it.',
  'A house that holds its heat still needs fresh air: keep vents and fans open and clean; leave flues and the ventilation of the roof as they are.',
  'Have damp patches, mould or a musty smell looked at before a lining or a cupboard hides them.',
];

export const openQuestion = 'What would settle it stands on the builder’s pages.';
export const openQuestionAlone = 'What would settle it stands in the handover sheet.';

export const evidence =
  'This is evidence, not a certificate: it says how the shell held its heat in these nights, as it then stood. Local codes and licensed practice decide.';

/** On the first page, which is handed on. */
export const privacy =
  'The readings tell when people are at home: hand them on only if whoever lives here agrees.';

/** What a reader might take from the sheet and should not. */
export const limits = [
  evidence,
  'It holds for the shell as it stood in each stage. What was changed since is not in it.',
  'It is the whole shell between the loggers and the outdoor air: loggers do not see a single joint, and a good figure does not show that each part is as drawn.',
  'An interval of 95 % misses the true figure in about one test of twenty. Where two readings of it are possible, the verdict says that it cannot be told.',
  'Fire, structure, damp, sound, fresh air and the heating itself were not looked at. Airtightness was not measured as a pressure test does it.',
  'The hashes show that a file is the one that was read, not that a logger hung where its entry says, nor that it was calibrated.',
  'Standards are named for the formulas that were used. No conformity with any of them is claimed.',
];

/** In the order in which a figure comes about. */
export const method = [
  'Readings of all loggers are laid on one grid of 10 minutes. Readings that no sensor can mean are kept out and counted; nothing is corrected in silence.',
  'A night counts from some time after sunset until sunrise while no heat comes in. Each is judged by rules that are the same for all, and a night that is left out has its reason in the table.',
  'In each night one exponential, driven by the measured outdoor temperature, is fitted by least squares. The time constants of a stage are pooled by a random-effects mean; its interval is 95 %.',
  'The heat loss comes by several ways. The widest one carries the design as a network of layers through the whole record and finds the insulation and leakage that the readings ask for, by the maximum of a posterior; what is believed of each figure beforehand, and the loggers’ own errors, are in the interval. The other ways stand beside it and are told where they disagree.',
  'The design: U-values of layers by ISO 6946, floors on the ground by ISO 13370, heat loss of the whole by ISO 13789, heat capacity by ISO 13786 and the classes of ISO 13790 and ISO 52016-1, junctions without a figure by defaults after ISO 14683, surface loggers by the average method of ISO 9869-1.',
  'Verdict: it meets the design when the whole interval of measured over drawn is within the allowance above 1, it exceeds the design when all of it is above 1; else it cannot be told yet.',
];

export const allowance = (share: string) => `The allowance above the design is ${share}.`;
export const zoneWords = (timeZone: string, latitude: number, longitude: number) =>
  `All times are in the zone ${timeZone}. The place is latitude ${signed(latitude)}, longitude ${signed(longitude)}.`;
/** With a true minus. */
const signed = (degrees: number) => String(degrees).replace('-', '−');
export const hashWords =
  'Each SHA-256 hash belongs to this very file and to no other: whoever works the same hash out has the same readings.';
export const sideBySide = (from: string, to: string) =>
  `All loggers lay side by side from ${from} to ${to}; what each reads high or low was taken off.`;
export const notSideBySide =
  'The loggers were not set side by side, so what they read high or low is only in the interval.';
export const photoHint = 'To glue in or draw: the openings that were closed, the loggers where they hung.';
export const picture = (i: number) => `Picture ${i}`;
export const signatures = ['Tested by', 'Builder', 'Received by'] as const;
export const signatureFields = ['Name', 'Signature', 'Date'] as const;
