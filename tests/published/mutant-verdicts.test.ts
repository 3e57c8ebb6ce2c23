import { describeMutants } from '../validate/verdicts/mutant-verdicts.ts';

// The quick suite has a part of R4.

describeMutants('R4');
describeMutants('R4B');
describeMutants('R5');
