import type { LegacyFormatName } from '../format.ts';
import { formatLosses, type LossPlace } from './losses.ts';

/** Takes the losses of one format from the parts of an exam, and keeps which there were. */
export interface Arriving {
  readonly format: LegacyFormatName;
  readonly losses: ReadonlySet<string>;
  readonly lost: (id: string) => void;
  /** The part without the properties that the format does not carry. */
  readonly without: <Part extends object>(of: LossPlace, part: Part) => Part;
  readonly text: (text: string) => string;
  /** A text of the exam head. */
  readonly head: (text: string) => string;
  readonly time: <Time extends string>(time: Time) => string;
  /** Of several codes, those that the format has room for. */
  readonly oneOf: <Code>(codes: readonly Code[]) => readonly Code[];
}

export function arriving(format: LegacyFormatName): Arriving {
  const own = formatLosses.filter(({ formats }) => formats.includes(format));
  const known = new Set(own.map(({ id }) => id));
  const losses = new Set<string>();
  /** The changed value, if the format has this loss. */
  const changed = <Value>(id: string, value: Value, change: () => Value): Value => {
    if (!known.has(id)) return value;
    const result = change();
    if (result !== value) losses.add(id);
    return result;
  };
  const text = (value: string): string => {
    const lines = changed('line-ends', value, () => value.replace(/\r\n?/g, '\n'));
    return changed('space-cda', lines, () => lines.trim());
  };
  return {
    format,
    losses,
    lost: (id) => {
      losses.add(id);
    },
    without: (of, part) => {
      const rows = own.filter(({ leavesOut }) => leavesOut?.of === of);
      const gone = new Set(rows.flatMap(({ leavesOut }) => leavesOut?.properties ?? []));
      for (const { id, leavesOut } of rows) {
        if (leavesOut?.properties.some((name) => Object.hasOwn(part, name))) losses.add(id);
      }
      const kept = Object.entries(part).filter(([name]) => !gone.has(name));
      return Object.fromEntries(kept) as typeof part; // only optional properties stand in the table
    },
    text,
    head: (value) => {
      const told = text(value);
      return changed('head-space', told, () => told.trim());
    },
    time: (value) => changed<string>('zone', value, () => value.replace('Z', '+00:00')),
    oneOf: (codes) =>
      changed('methods-csv', codes, () => (codes.length === 1 ? codes : codes.slice(0, 1))),
  };
}
