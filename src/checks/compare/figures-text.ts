import type { Comparison } from './comparison.ts';

/** `8.0 mm to 9.5 mm, +1.5 mm, +18.75 %, 91 days`. */
export function figuresText({ figures, days }: Comparison): string {
  if (figures === undefined) return '';
  const signed = (value: string): string => (/^-|^0(\.0+)?$/.test(value) ? value : `+${value}`);
  const parts = [
    `${figures.before.value} ${figures.before.unit} to ${figures.now.value} ${figures.now.unit}`,
    `${signed(figures.delta)} ${figures.unit}`,
  ];
  if (figures.percent !== undefined) parts.push(`${signed(figures.percent)} %`);
  if (days !== undefined) parts.push(`${days} days`);
  if (figures.withinResolution === true) parts.push('within the resolution, no change');
  return parts.join(', ');
}
