import type { Exam } from './exam.ts';
import { type ParseOptions, parseExam } from './parse-exam.ts';

/** What a validator says in the form of Standard Schema: the value, or why there is none. */
type StandardResult<T> =
  | { readonly value: T; readonly issues?: undefined }
  | {
      readonly issues: readonly {
        readonly message: string;
        readonly path: readonly PropertyKey[];
      }[];
    };

/** A validator in the form that form and API frameworks take. @see https://standardschema.dev */
export interface StandardSchema<T> {
  readonly '~standard': {
    readonly version: 1;
    readonly vendor: string;
    readonly validate: (value: unknown) => StandardResult<T>;
    /** For types alone; never there at run time. */
    readonly types?: { readonly input: T; readonly output: T } | undefined;
  };
}

/**
 * Gives {@link parseExam} as a Standard Schema, for form and API frameworks. Warnings have no place
 * in one: call `parseExam` for them.
 *
 * @param options As for `parseExam`.
 * @returns The object to hand to the framework. A failure holds message and path of each error.
 * @example
 * const result = await examSchema()['~standard'].validate(resource);
 * @see https://standardschema.dev
 */
export function examSchema(options?: ParseOptions): StandardSchema<Exam> {
  return {
    '~standard': {
      version: 1,
      vendor: 'face-neck-fhir',
      validate: (value) => {
        const outcome = parseExam(value, options);
        if (outcome.ok) return { value: outcome.value };
        const errors = outcome.issues.filter(({ severity }) => severity === 'error');
        return { issues: errors.map(({ message, path }) => ({ message, path })) };
      },
    },
  };
}
