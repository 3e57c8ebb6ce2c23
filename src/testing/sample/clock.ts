import type { Random } from '../random.ts';
import type { Clock, SampleSize } from './sampling.ts';

const zones = ['Z', '+01:00', '+02:00', '-03:00'] as const;
const oddZones = ['+05:45', '-03:30', '+14:00', '-11:00', '+00:00', '-00:00'] as const;

/** Times of an exam on a working day; in an edge exam also with odd zones, fractions and bare dates. */
export function sampleClock(random: Random, size: SampleSize): Clock {
  const edge = size === 'edge';
  const year = random.int(2019, 2025);
  const month = random.int(1, 12);
  // The 20th at the latest, so that eight later days are in the same month.
  const day = random.int(1, 20);
  const zone = random.pick(edge ? oddZones : zones);
  const opening = random.int(7 * 60, 15 * 60);
  const fraction = edge && random.chance(0.3) ? `.${random.int(0, 9)}50` : '';

  const date = (d: number): string => `${year}-${two(month)}-${two(d)}`;
  const moment = (d: number, minutes: number): string =>
    `${date(d)}T${two(Math.floor(minutes / 60))}:${two(minutes % 60)}:00${fraction}${zone}`;

  const dated = edge && random.chance(0.4);
  const start = dated
    ? random.pick([`${year}`, date(day).slice(0, 7), date(day)])
    : moment(day, opening);
  return {
    start,
    ...(random.chance(0.5) && !dated && { end: moment(day, opening + 40) }),
    during: (choice) => moment(day, opening + choice.int(1, 39)),
    before: (choice) =>
      choice.pick([`${year - 1}`, `${year - 1}-${two(choice.int(1, 12))}`, `${year - 1}-03-09`]),
    after: (choice) =>
      choice.pick([`${year + 1}`, `${year + 1}-${two(choice.int(1, 12))}`, `${year + 1}-04-30`]),
    later: (step) => moment(day + Math.floor(step / 4), opening + 60 + (step % 4) * 60),
  };
}

function two(number: number): string {
  return String(number).padStart(2, '0');
}
