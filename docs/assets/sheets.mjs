// @ts-check
// Questions that most people answer in the same way are asked together: what is not ticked gets the answer that stands here,
// what is ticked is asked by itself, with all its choices. So nothing is taken for granted that was not in sight.

/**
 * @typedef {{
 *   id: string, head: string, help: string,
 *   lines: [question: string, unticked: string, line: string][],
 *   unsure: string,
 * }} Sheet
 */

/** @type {Sheet[]} */
export const SHEETS = [
  {
    id: 'look',
    head: 'What do you see from a doorway?',
    help: 'Hold a light along the ceiling. Do not stand under it, and touch nothing. Tick what is there, and what you are not sure of.',
    lines: [
      ['sag', 'no', 'It sags or bulges'],
      ['stains', 'none', 'Stains, damp, mold or drips'],
      ['loose_board', 'tight', 'Loose board or plaster, an edge that hangs'],
      ['cracks', 'none', 'Cracks, fine or wide'],
      ['sprinklers', 'no', 'Sprinkler heads or flat caps'],
      ['sheen', 'flat', 'It shines, as paint does'],
    ],
    unsure: 'I cannot look now',
  },
  {
    id: 'people',
    head: 'Is anything of this so?',
    help: 'Else the owner works in the home lived in: a house of one to four homes, grown-ups in good health.',
    lines: [
      ['who_works', 'owner', 'A firm, employees, a renter or a landlord does the work'],
      ['building', 'house', 'It is no house of one to four homes'],
      ['occupied', 'yes', 'The home stands empty meanwhile'],
      ['household', 'adults', 'Children, a pregnant woman, or somebody with weak lungs lives there'],
    ],
    unsure: 'Not known',
  },
  {
    id: 'room',
    head: 'Does the room set a limit?',
    help: 'Think of doors, lights, fans, alarms, sprinklers and cupboards. Tick what is so, and what you are not sure of.',
    lines: [
      ['may_drop', 'yes', 'Something keeps the ceiling from coming lower'],
      ['light', 'soft', 'Light falls along the ceiling, from a side'],
      ['floors', 'covered', 'The floor is replaced anyway, or must not get wet at all'],
    ],
    unsure: 'Not known',
  },
];

/** What few people know: asked one by one of those who know some of it, and not known at one tap to all others. */
export const BUILD = {
  id: 'build',
  head: 'Do you know how it is built?',
  help: 'How many layers are up, how far apart the joists are, what they carry, and whether the ceiling is rated. Make no hole to find out.',
  questions: ['layers_up', 'joists_carry', 'rated_ceiling', 'joists'],
  some: 'Some of it: ask me one by one',
  unsure: 'No, none of it',
};

/** Figures that the amounts need as well, typed on one screen; each answers its question. */
export const MEASURED = {
  id: 'measured',
  head: 'Two figures, if you have them',
  help: 'The amounts need them too, and do not ask again.',
  questions: ['height', 'texture_depth'],
  unsure: 'Not measured: ask me one by one',
};

/** Two questions in one: each choice says all that it answers, and what it leaves open is asked by itself. */
export const LEAD = {
  id: 'lead',
  head: 'How old is the house, and is there lead in the paint?',
  help: 'The oldest part counts. The paint is tested by a certified inspector or an approved kit.',
  questions: ['built', 'paint_test'],
  picks: /** @type {[text: string, answers: Record<string, string>][]} */ ([
    ['Built 1978 or later', { built: 'later' }],
    ['Before 1978: tested, below both limits', { built: 'before-1978', paint_test: 'none' }],
    ['Before 1978: lead was found', { built: 'before-1978', paint_test: 'lead' }],
    ['Before 1978: paint not tested, or not known', { built: 'before-1978', paint_test: 'unknown' }],
    ['Year not known', { built: 'unknown' }],
  ]),
};
