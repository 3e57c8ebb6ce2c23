import iconv from 'iconv-lite';
import type { Issue } from '../../../issues/issue.ts';
import { issue } from '../../issue.ts';
import type { Encoding } from '../../mapping/source.ts';
import type { RawUnit } from '../../record/record.ts';

/** Text and what is to be said about its bytes. */
export interface Decoded {
  readonly text: string;
  readonly problem?: 'undeclared-encoding' | 'lost-character' | 'unknown-encoding';
  /** Character set that was used in the end. */
  readonly used?: string;
}

const strictUtf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** A byte that ASCII does not have, and one that ISO 8859-1 has as a control character only. */
const highByte = /[\u0080-\u00FF]/;
const controlByte = /[\u0080-\u009F]/;

/**
 * Real text of a text with one character for each byte. Without a declared set: strict UTF-8 first,
 * then Windows-1252 with a problem told. Windows-1252 is also taken where ISO 8859-1 or ASCII is
 * declared and the bytes say otherwise. The engine's own decoder is not used for it: it gives control
 * characters for the bytes 80 to 9F in several versions of Node.
 * @see https://www.unicode.org/Public/MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT
 */
export function decodeBytes(bytes: string, encoding: string | undefined): Decoded {
  // By an escape byte ISO 2022 leaves ASCII without any high byte.
  if (!highByte.test(bytes) && !bytes.includes('\u001b')) return { text: bytes };
  const buffer = Buffer.from(bytes, 'latin1');
  switch (encoding) {
    case undefined:
    case 'auto':
    case 'utf-8':
    case 'us-ascii':
    case 'utf-16': {
      // Marks were found in single bytes, so it is not UTF-16, whatever was declared.
      const text = asUtf8(buffer);
      if (text === undefined) return asWindows1252(buffer, true);
      if (text.includes('\uFFFD')) return { text, problem: 'lost-character', used: 'utf-8' };
      return encoding === 'us-ascii' || encoding === 'utf-16'
        ? { text, problem: 'undeclared-encoding', used: 'utf-8' }
        : { text };
    }
    case 'iso-8859-1':
      return controlByte.test(bytes) ? asWindows1252(buffer, true) : { text: bytes };
    case 'windows-1252':
      return asWindows1252(buffer, false);
    default:
      return asNamed(buffer, encoding);
  }
}

/** The unit with its text decoded; a set that cannot be decoded is an error. */
export function decodeUnit(unit: RawUnit, stated: Encoding | undefined): RawUnit {
  const encoding = stated === undefined || stated === 'auto' ? unit.declaredEncoding : stated;
  const { text, problem, used } = decodeBytes(unit.raw, encoding);
  if (problem === undefined) return text === unit.raw ? unit : { ...unit, raw: text };
  const found = encodingIssue(problem, unit, used);
  return { ...unit, raw: text, issues: [...(unit.issues ?? []), found] };
}

function encodingIssue(
  problem: NonNullable<Decoded['problem']>,
  unit: RawUnit,
  used: string | undefined,
): Issue {
  const source = unit.at;
  switch (problem) {
    case 'undeclared-encoding':
      return issue(
        problem,
        [],
        { reason: 'read-as', encoding: used ?? 'latin1' },
        {
          severity: 'warning',
          source,
        },
      );
    case 'lost-character':
      return issue(
        problem,
        [],
        { reason: 'replaced' },
        {
          severity: 'warning',
          source,
        },
      );
    case 'unknown-encoding':
      return issue(
        'undeclared-encoding',
        [],
        { reason: 'cannot-decode' },
        {
          source,
        },
      );
  }
}

function asUtf8(buffer: Buffer): string | undefined {
  try {
    return strictUtf8.decode(buffer);
  } catch {
    return undefined;
  }
}

function asWindows1252(buffer: Buffer, assumed: boolean): Decoded {
  const text = iconv.decode(buffer, 'windows-1252');
  if (text.includes('\uFFFD')) return { text, problem: 'lost-character', used: 'windows-1252' };
  return assumed ? { text, problem: 'undeclared-encoding', used: 'windows-1252' } : { text };
}

function asNamed(buffer: Buffer, encoding: string): Decoded {
  if (!iconv.encodingExists(encoding)) {
    return { text: buffer.toString('latin1'), problem: 'unknown-encoding' };
  }
  const text = iconv.decode(buffer, encoding);
  return text.includes('\uFFFD') ? { text, problem: 'lost-character', used: encoding } : { text };
}
