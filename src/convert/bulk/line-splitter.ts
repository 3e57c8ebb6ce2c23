/** A line without its ending, and its number from 1. */
export interface Line {
  readonly text: string;
  readonly number: number;
}

export interface LineSplitter {
  readonly push: (piece: string) => Line[];
  readonly end: () => Line[];
}

/** Cuts text into lines; blank lines are passed over. */
export function lineSplitter(): LineSplitter {
  let held: string[] = [];
  let number = 0;
  const line = (text: string): Line[] => {
    number += 1;
    const body = text.endsWith('\r') ? text.slice(0, -1) : text;
    return body.trim() === '' ? [] : [{ text: body, number }];
  };
  return {
    push: (piece) => {
      const parts = piece.split('\n');
      const last = parts.pop() ?? '';
      if (parts.length === 0) {
        held.push(last);
        return [];
      }
      const [first = '', ...others] = parts;
      const lines = [...line(held.join('') + first), ...others.flatMap(line)];
      held = [last];
      return lines;
    },
    end: () => {
      const rest = held.join('');
      held = [];
      return rest === '' ? [] : line(rest);
    },
  };
}
