import type { Attachment } from 'fhir/r4.js';
import { sha1Base64 } from '../../fhir/sha1.ts';
import type { Exam } from '../../model/exam.ts';

/** The whole report in a form that people read: a page of HTML as text, a PDF as bytes. */
export interface PresentedForm {
  /** `text/html`, `application/pdf`. */
  readonly contentType: string;
  readonly content: string | Uint8Array;
  readonly title?: string;
  /** BCP 47. */
  readonly language?: string;
}

/** Makes the forms of an exam, such as `htmlForm()` of the entry `report`. */
export type FormMaker = (exam: Exam) => readonly PresentedForm[];

/** Each form with its length in bytes and its SHA-1, by which a receiver sees that it came over whole. */
export function presentedForms(exam: Exam, make: FormMaker | undefined): Attachment[] {
  return (make?.(exam) ?? []).map(({ contentType, content, title, language }) => {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    return {
      contentType,
      ...(language !== undefined && { language }),
      data: base64(bytes),
      size: bytes.length,
      hash: sha1Base64(bytes),
      ...(title !== undefined && { title }),
    };
  });
}

function base64(bytes: Uint8Array): string {
  let characters = '';
  for (const byte of bytes) characters += String.fromCharCode(byte);
  return btoa(characters);
}
