/** Where a logger belongs, in the words of the trade. */

export interface Advice {
  readonly head: string;
  readonly text: string;
}

export const placingAdvice: readonly Advice[] = [
  {
    head: 'In a room',
    text: 'At breast height (1.1 to 1.7 m), on an inner wall or hanging free in the room, some centimetres off the wall. Never on the inner face of an outside wall, which is colder than the air.',
  },
  {
    head: 'Away from',
    text: 'Sun at any hour, also through a roof window; draughts from doors, hatches, vents and sockets; heaters, pipes, chimneys, lamps, fridges and screens. Not in a cupboard, not behind a curtain, not on the floor.',
  },
  {
    head: 'How many',
    text: 'One on every floor at least, and one in each large room. Give each the volume of air that it stands for.',
  },
  {
    head: 'Outdoors',
    text: 'On the north side in the shade, about 1.2 to 2 m above ground, with air all round it and a roof over it: a ventilated screen, or a pale open box. Some 10 cm off the wall, away from vents, flues, windows and drains.',
  },
  {
    head: 'In a void',
    text: 'Hanging free in the middle of the void, not on the ceiling’s insulation and not against the tiles or the felt. Where the form does not ask which element it lies behind, say it as “element” in house.json.',
  },
  {
    head: 'On a surface',
    text: 'Tape it down over its whole face under foil, and cover it with a hand-sized piece of insulation, so that it feels the surface and not the room. Away from studs, corners, windows and the heater’s sight.',
  },
  {
    head: 'Next door',
    text: 'In the neighbour’s room behind the party wall, with their leave, on an inner wall.',
  },
  {
    head: 'Set to',
    text: 'Every 5 or 10 minutes, steps of 0.1 °C or finer, all clocks by the same watch on the same day, and memory for the whole test.',
  },
];

export const coLocationAdvice: readonly string[] = [
  'Two loggers of one make may differ by half a degree, and between inside and outdoors that half degree is an error of the result.',
  'Lay all of them side by side in one room, close together, out of the sun and off the floor, with a sheet of card over them: at least 3 hours after the first hour, better a night. Before the test or after it.',
  'Write the hours down and give them here. What each logger is off is then taken off its readings, and these hours count for nothing else.',
];

export const coLocationWords = {
  from: 'Side by side from',
  to: 'Until',
  keep: 'Keep these hours',
  takeOut: 'Take these hours out',
  needTime: 'Give the day and the time.',
  needLater: 'Give an end after the beginning.',
  kept: 'Kept. The house is assessed again.',
  takenOut: 'Taken out. The house is assessed again.',
};

export const ladderCaution =
  'Mind ladders: on firm ground, footed or tied, not alone. In a loft stand on the joists or on boards, never on the ceiling; mind cables under the insulation.';
