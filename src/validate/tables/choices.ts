/**
 * Elements whose JSON name ends in their type, and the types, over all FHIR versions.
 * Made by src/generate/choices.ts from hl7.fhir.r4.examples@4.0.1, hl7.fhir.r4b.core@4.3.0, hl7.fhir.r5.core@5.0.0 (CC0-1.0).
 */
export const choiceElements: Readonly<Record<string, readonly string[]>> = {
  address: ['ContactPoint', 'ExtendedContactDetail', 'string', 'url'],
  asNeeded: ['CodeableConcept', 'boolean'],
  author: ['Reference', 'string'],
  bounds: ['Duration', 'Period', 'Range'],
  created: ['Period', 'dateTime'],
  deceased: ['boolean', 'dateTime'],
  dose: ['Quantity', 'Range'],
  effective: ['Period', 'Timing', 'dateTime', 'instant'],
  identified: ['Period', 'dateTime'],
  instantiates: ['Reference', 'canonical'],
  instruction: ['Reference', 'markdown'],
  multipleBirth: ['boolean', 'integer'],
  occurred: ['Period', 'dateTime'],
  occurrence: ['Period', 'Timing', 'dateTime'],
  quantity: ['Quantity', 'Range', 'Ratio'],
  rate: ['Quantity', 'Range', 'Ratio'],
  source: ['Attachment', 'Reference'],
  subject: ['CodeableConcept', 'Reference'],
  target: ['Identifier', 'Reference'],
  timing: ['Reference', 'Timing', 'date', 'dateTime'],
  value: ['Address', 'Age', 'Annotation', 'Attachment', 'Availability', 'CodeableConcept', 'CodeableReference', 'Coding', 'ContactDetail', 'ContactPoint', 'Contributor', 'Count', 'DataRequirement', 'Distance', 'Dosage', 'Duration', 'Expression', 'ExtendedContactDetail', 'HumanName', 'Identifier', 'Meta', 'Money', 'ParameterDefinition', 'Period', 'Quantity', 'Range', 'Ratio', 'RatioRange', 'Reference', 'RelatedArtifact', 'SampledData', 'Signature', 'Timing', 'TriggerDefinition', 'UsageContext', 'base64Binary', 'boolean', 'canonical', 'code', 'date', 'dateTime', 'decimal', 'id', 'instant', 'integer', 'integer64', 'markdown', 'oid', 'positiveInt', 'string', 'time', 'unsignedInt', 'uri', 'url', 'uuid'],
};

/** Ordinary elements with such a name, some only below the element named first. */
export const plainElements: readonly string[] = ['instantiatesCanonical', 'property.valueCode', 'property.valueQuantity', 'sourceAttachment', 'sourceReference'];
