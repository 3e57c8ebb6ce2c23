import type { Option } from './arguments.ts';
import type { Command } from './command.ts';

const NAME = 'face-neck-fhir';
const WIDTH = 88;

/** Help on one command, made from its own table of options. */
export function commandHelp(name: string, command: Command): string {
  return [
    `${NAME} ${name} ${command.argumentsText}`.trimEnd(),
    '',
    ...wrapped(command.description),
    '',
    'Options',
    ...columns(
      Object.entries(command.options).map(([option, entry]) => [
        `--${option}${valueText(entry)}`,
        optionHelp(entry),
      ]),
    ),
    '',
    'Examples',
    ...command.examples.flatMap(([call, what]) => [`  ${NAME} ${call}`, `      ${what}`]),
    '',
  ].join('\n');
}

/** Help on the whole: what it is for and which commands there are. */
export function generalHelp(commands: readonly (readonly [name: string, what: string])[]): string {
  return [
    `${NAME} COMMAND [FILE ...] [OPTIONS]`,
    '',
    ...wrapped(
      'Typed examinations of face and neck as FHIR, and back. Reads files or standard input, ' +
        'writes results to standard output or to --out, and issues to standard error.',
    ),
    '',
    'Commands',
    ...columns(commands),
    '',
    `  ${NAME} COMMAND --help  explains one of them, with examples`,
    `  ${NAME} --version       prints the version`,
    '',
    'Exit codes',
    ...columns([
      ['0', 'no error; there may be warnings and remarks'],
      ['1', 'at least one issue is an error'],
      ['2', 'wrong usage, or a file that cannot be read or written'],
      ['3', 'validate only: no error was found, but some rule was not checked'],
      ['4', 'with --lines: each record has its answer, but some were kept back'],
    ]),
    '',
  ].join('\n');
}

function valueText({ type, values, value }: Option): string {
  if (type === 'flag') return '';
  const words = values?.join('|');
  // A long list of words stands in the right column, where it can be broken.
  return ` ${words !== undefined && words.length <= 60 ? words : (value ?? 'TEXT')}`;
}

function optionHelp({ values, fallback, help }: Option): string {
  const words = values?.join('|').length ?? 0;
  const list = words > 60 ? `: ${values?.join(', ')}` : '';
  return help + list + (fallback === undefined ? '' : ` (default ${fallback})`);
}

/** Two columns; a left part that is too wide stands on a line of its own. */
function columns(rows: readonly (readonly [left: string, right: string])[]): string[] {
  const wide = Math.min(28, Math.max(...rows.map(([left]) => left.length)));
  return rows.flatMap(([left, right]) => {
    const lines = wrapped(right, WIDTH - wide - 4);
    const indent = ' '.repeat(wide + 4);
    const [first = '', ...more] = lines;
    const head =
      left.length > wide ? [`  ${left}`, indent + first] : [`  ${left.padEnd(wide)}  ${first}`];
    return [...head, ...more.map((line) => indent + line)];
  });
}

function wrapped(text: string, width: number = WIDTH): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, line];
}
