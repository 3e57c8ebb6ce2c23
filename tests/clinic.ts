/** What a clinic sets once: below this stand the ids of its exams. */
export const clinic = { identity: 'https://clinic.example/records' } as const;
