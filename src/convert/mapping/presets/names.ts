/** Name of a preset, as `use` of a mapping takes it. */
export type PresetName = 'c-cda' | 'hl7v2-oru' | 'hl7v2-mdm' | 'practice-csv';
