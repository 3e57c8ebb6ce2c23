import { resolveReferences } from '../../xml/characters.ts';
import { isDeclaration } from '../../xml/namespaces.ts';
import { type Token, tokenAt } from '../../xml/tokens.ts';
import type { RawUnit, Splitter } from '../record/record.ts';
import { faultIssue, type XmlFault } from './faults.ts';
import { type XmlLimits, xmlLimits } from './limits.ts';
import { Place } from './place.ts';

/**
 * Cuts XML text into the elements at `path` (`['export', 'exam']`) and holds no more than one. Names
 * are as written; the step `*:exam` takes any prefix. After
 * broken markup it goes on at the next start or end of an exam, so that one fault costs one exam.
 * Text and attributes outside the exams become units with an error; plain markup there is dropped.
 * A document type is never read: it becomes a unit with an error, and no entity exists.
 */
export function elementSplitter(path: readonly string[], limits: XmlLimits = xmlLimits): Splitter {
  const gathering = new Gathering(path, limits);
  let pending = '';

  const take = (last: boolean): RawUnit[] => {
    const found = new Map<string, number>();
    let from = 0;
    while (from < pending.length) {
      const token = tokenAt({ text: pending, last, found }, from);
      if (token === undefined && !last && pending.length - from <= limits.units) break;
      const { end, ...read } = token ?? { kind: 'broken', end: nextMark(pending, from) };
      gathering.add(pending.slice(from, end), { ...read, end });
      from = end;
    }
    pending = pending.slice(from);
    if (last) gathering.finish();
    return gathering.units.splice(0);
  };

  return {
    push(piece) {
      pending += piece;
      return take(false);
    },
    end: () => take(true),
  };
}

function nextMark(text: string, from: number): number {
  const next = text.indexOf('<', from + 1);
  return next === -1 ? text.length : next;
}

class Gathering {
  readonly units: RawUnit[] = [];
  readonly #path: readonly string[];
  readonly #limits: XmlLimits;
  readonly #place = new Place();
  /** Open elements from the root; not reliable while `#lost`. */
  #open: string[] = [];
  #lost = false;
  #inside = false;
  #raw = '';
  #at = this.#place.now();
  #elements = 0;
  #fault: XmlFault | undefined;
  #encoding: string | undefined;
  /** Namespace declarations of the open elements outside the exam, by their depth. */
  #declared: { readonly depth: number; readonly text: string }[] = [];

  constructor(path: readonly string[], limits: XmlLimits) {
    this.#path = path;
    this.#limits = limits;
  }

  add(text: string, token: Token): void {
    if (this.#begins(token)) {
      // A broken exam ends where the next one begins.
      this.#close();
      if (this.#lost) this.#open = this.#path.slice(0, -1);
      else this.#open.length = this.#path.length - 1;
      this.#inside = true;
      this.#lost = false;
    }
    if (this.#raw === '') this.#at = this.#place.now();
    this.#raw += text;
    this.#place.pass(text);
    if (this.#inside) this.#follow(token);
    else this.#skip(text, token);
    if (this.#raw.length > this.#limits.units) {
      this.#fault = 'too-large';
      this.#close();
      this.#lost = true;
    }
  }

  finish(): void {
    if (this.#inside) this.#fault ??= 'not-well-formed';
    this.#close();
  }

  /** Whether an exam starts here: at its path, or by its name alone where the path is lost. */
  #begins(token: Token): boolean {
    if (token.kind !== 'start' && token.kind !== 'empty') return false;
    if (!isNamed(token.name, this.#path.at(-1))) return false;
    if (this.#inside) return this.#fault !== undefined;
    if (this.#lost) return true;
    return (
      this.#open.length === this.#path.length - 1 &&
      this.#open.every((name, depth) => isNamed(name, this.#path[depth]))
    );
  }

  /** A token inside an exam. */
  #follow(token: Token): void {
    this.#fault ??= faultOf(token);
    if (token.kind === 'start' || token.kind === 'empty') this.#opened(token);
    else if (token.kind === 'end') this.#ended(token.name ?? '');
    if (this.#open.length < this.#path.length) this.#close();
  }

  #opened(token: Token): void {
    const limits = this.#limits;
    this.#elements += 1;
    if (token.kind === 'start') this.#open.push(token.name ?? '');
    if (this.#open.length > limits.depth) this.#fault ??= 'too-deep';
    if (this.#elements > limits.elements || (token.attributes ?? 0) > limits.attributes) {
      this.#fault ??= 'too-large';
    }
    // In a broken exam the names are no longer compared, so they need not be held.
    if (this.#fault !== undefined) this.#open.length = this.#path.length;
  }

  #ended(name: string): void {
    if (this.#fault === undefined && this.#open.at(-1) !== name) this.#fault = 'not-well-formed';
    if (this.#fault === undefined) this.#open.pop();
    else if (isNamed(name, this.#path.at(-1))) this.#open.length = this.#path.length - 1;
  }

  /** A token outside any exam. */
  #skip(text: string, token: Token): void {
    if (token.kind === 'instruction') this.#encoding ??= encodingIn(text);
    else if (token.kind === 'start') {
      this.#open.push(token.name ?? '');
      this.#declare(text);
    } else if (token.kind === 'end') {
      if (this.#open.at(-1) === token.name) this.#open.pop();
      else this.#lost = true;
    }
    if (this.#open.length > this.#limits.depth) {
      this.#lost = true;
      this.#open = [];
    }
    if (token.kind === 'broken') this.#lost = true;
    else this.#fault ??= faultOf(token);
    if (holdsData(text, token)) this.#fault ??= 'stray-text';
  }

  #declare(tag: string): void {
    const depth = this.#open.length;
    while ((this.#declared.at(-1)?.depth ?? 0) >= depth) this.#declared.pop();
    for (const [text] of tag.matchAll(declaration)) {
      if (this.#declared.length >= mostDeclarations) return;
      this.#declared.push({ depth, text });
    }
  }

  /** What the elements around the exam declare, the innermost last. */
  #declarations(): string[] {
    return this.#declared.filter(({ depth }) => depth < this.#path.length).map(({ text }) => text);
  }

  /** Ends the exam, or the text between two exams, and notes what is wrong with it. */
  #close(): void {
    const fault = this.#fault;
    const header = this.#inside ? this.#declarations() : [];
    if (this.#raw !== '' && (this.#inside || fault !== undefined)) {
      this.units.push({
        raw: this.#raw,
        at: this.#at,
        ...(header.length > 0 && { header }),
        ...(this.#encoding !== undefined && { declaredEncoding: this.#encoding }),
        ...(fault !== undefined && { issues: [faultIssue(fault, this.#at)] }),
      });
    }
    this.#raw = '';
    this.#fault = undefined;
    this.#elements = 0;
    this.#inside = false;
  }
}

/** A step `*:name` of a path takes any prefix or none. */
function isNamed(name: string | undefined, step: string | undefined): boolean {
  if (name === undefined || step === undefined) return false;
  return step.startsWith('*:')
    ? name.slice(name.indexOf(':') + 1) === step.slice(2)
    : name === step;
}

function faultOf(token: Token): XmlFault | undefined {
  if (token.kind === 'broken') return 'not-well-formed';
  return token.kind === 'doctype' ? 'forbidden-doctype' : undefined;
}

/** Namespace declarations as written. */
const declaration = /xmlns(?::[^\s=<>"'/]{1,100})?=(?:"[^"<]{0,500}"|'[^'<]{0,500}')/g;

/** An export declares a handful around its exams; each exam carries them. */
const mostDeclarations = 50;

/** The namespace declarations that a unit carries from around it, as attributes. */
export function declarationsIn(header: readonly string[] = []): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const text of header) {
    const cut = text.indexOf('=');
    const name = text.slice(0, Math.max(cut, 0));
    if (isDeclaration(name)) found.set(name, resolveReferences(text.slice(cut + 2, -1)).text);
  }
  return found;
}

/** Attributes that say how to read a document and nothing about an exam. */
const ownAttributes = /\s(?!xmlns[:=\s]|xsi:|xml:)[^\s=]+\s*=/;

function holdsData(text: string, token: Token): boolean {
  switch (token.kind) {
    case 'text':
      return text.replace(/^(?:\ufeff|\u00ef\u00bb\u00bf)/, '').trim() !== '';
    case 'start':
    case 'empty':
      return ownAttributes.test(text);
    case 'cdata':
    case 'broken':
      return true;
    default:
      return false;
  }
}

/** @see https://www.w3.org/TR/xml/#NT-EncodingDecl */
function encodingIn(declaration: string): string | undefined {
  if (!/^<\?xml\s/.test(declaration)) return undefined;
  return /\sencoding\s*=\s*["']([A-Za-z][\w.-]{0,39})["']/.exec(declaration)?.[1]?.toLowerCase();
}
