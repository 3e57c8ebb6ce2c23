import { describeMutants } from '../validate/mutant-verdicts.ts';

// The quick suite has R4.

describeMutants('R4B');
describeMutants('R5');
