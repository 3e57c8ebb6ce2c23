import { build } from './java.ts';

/** Builds the validator before the first suite, so that a missing JDK fails the run at once. */
export default async function setup(): Promise<void> {
  await build('validator');
}
