Profile: FaceNeckSymptom
Parent: FaceNeckObservation
Id: face-neck-symptom
Title: "Symptom that was asked about"
Description: "A complaint and the answer to it. Not asked is an answer of its own, and never no."
* insert Published
* category = $category#survey
* code from $symptoms-set (extensible)
* effective[x] 1..
* effective[x] only dateTime or Period
* value[x] 1..
* value[x] only CodeableConcept
* value[x] from $answer-set (required)
* dataAbsentReason 0..0
* hasMember 0..0
