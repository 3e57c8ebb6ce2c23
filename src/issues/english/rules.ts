/** Titles of the consistency rules of the checks, which are what their issues say. */
export const ruleTitles = {
  R02: 'Words that name a side other than the coded one',
  R03: 'Region called normal, with an abnormal sign or value in it',
  R06: 'Lid measurements that do not add up',
  R25: 'Jaw measurements and tests that do not fit together',
  R26: 'Whispered voice test against wax, ear and count',
  R28: 'Notes and figures repeated from the prior exam',
  R29: 'Words that call everything normal',
  R30: 'Times that do not fit together',
  R32: 'Word for a lesion and its size',
  R34: 'Wide fissure on the weak side that may look like ptosis of the other',
  R35: 'Signs at one place that exclude each other',
  R36: 'States of one region that exclude each other',
  R37: 'Measurement or score of something that is not there',
  R38: 'House-Brackmann grade against the recorded movements',
  R39: 'Total of a scale against its items',
  R40: 'Sides compared against the result of each side',
  R41: 'Value outside the reference range of a chosen population',
  R42: 'Reported value against its readings',
  R47: 'Figure that is impossible or unusual for its measure',
  R48: 'Two statements of one place that exclude each other',
  R49: 'Two figures of one place that do not go together',
  R50: 'Conclusion that the statements do not bear out',
  R51: 'What is said of a group of regions does not hold of a member',
} as const;

export type RuleTitleId = keyof typeof ruleTitles;
