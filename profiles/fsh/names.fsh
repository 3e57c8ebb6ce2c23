// Code systems and value sets of our tables are made by src/generate/fhir-package.ts. What is named
// here by its code is looked up in the tables by tests/profiles.
Alias: $category = http://terminology.hl7.org/CodeSystem/observation-category
Alias: $interpretation = http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation
Alias: $ucum = http://unitsofmeasure.org
Alias: $items = https://face-neck-fhir.example/fhir/CodeSystem/items
Alias: $sections = https://face-neck-fhir.example/fhir/CodeSystem/sections
Alias: $findings-set = https://face-neck-fhir.example/fhir/ValueSet/findings
Alias: $regions-set = https://face-neck-fhir.example/fhir/ValueSet/regions
Alias: $measures-set = https://face-neck-fhir.example/fhir/ValueSet/measures
Alias: $modalities-set = https://face-neck-fhir.example/fhir/ValueSet/modalities
Alias: $sensation-results-set = https://face-neck-fhir.example/fhir/ValueSet/sensation-results
Alias: $symptoms-set = https://face-neck-fhir.example/fhir/ValueSet/symptoms
Alias: $test-points-set = https://face-neck-fhir.example/fhir/ValueSet/test-points
Alias: $test-results-set = https://face-neck-fhir.example/fhir/ValueSet/test-results
Alias: $answer-set = https://face-neck-fhir.example/fhir/ValueSet/values-answer
Alias: $comparison-set = https://face-neck-fhir.example/fhir/ValueSet/values-comparison
Alias: $presence-set = https://face-neck-fhir.example/fhir/ValueSet/values-presence
Alias: $state-reasons-set = https://face-neck-fhir.example/fhir/ValueSet/values-state-reasons
Alias: $state-set = https://face-neck-fhir.example/fhir/ValueSet/values-state

RuleSet: Published
* ^experimental = false
* ^publisher = "The face-neck-fhir authors"
* ^date = "2026-11-25"
* ^copyright = "Copyright the face-neck-fhir authors. Licensed under Apache-2.0."
