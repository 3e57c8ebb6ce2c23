import type { Code, Key, Side, Text, Uri } from '../../model/primitive.ts';
import type { StatementBase } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atRegion, type Meaning } from '../facets/meaning.ts';

/** A picture taken or referred to. It is never the only record of a measurement. */
export interface Image extends StatementBase {
  readonly kind: 'image';
  readonly region: Code;
  readonly side?: Side;
  readonly title: Text;
  /**
   * Media type such as `image/jpeg`.
   * @pattern ^[a-z]+/[A-Za-z0-9.+-]+$
   */
  readonly contentType: string;
  readonly url: Uri;
  /** A scale bar or ruler is in the picture. */
  readonly scaleBar?: boolean;
  /** What the picture may be used for, as the patient agreed. */
  readonly consent: 'given' | 'refused' | 'not-asked';
  readonly purpose?: Text;
  /**
   * Keys of the statements that it shows.
   * @minItems 1
   */
  readonly about?: readonly Key[];
}

/** Words and pictures are kept as they are; nothing is taken from them. */
export const imageMeaning: Meaning<Image> = {
  subject: () => ({ table: 'items', code: 'image' }),
  standing: (image, catalogue) => atRegion(image, catalogue, false),
  said: () => [{ polarity: 'none', of: { table: 'items', code: 'image' } }],
};

export const imageForm: Form<Image> = {
  about: ({ about = [] }) => about.map((key, i) => ({ key, path: ['about', i] })),
};
