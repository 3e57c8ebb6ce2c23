Profile: FaceNeckRegionGroup
Parent: FaceNeckObservation
Id: face-neck-region-group
Title: "Part of a face and neck examination"
Description: "The observations of one part of the body, or of the examination as a whole. It has no value of its own: a part without a statement has no group, which means that nothing is known of it."
* insert Published
* category = $category#exam
* code from FaceNeckExamParts (extensible)
* value[x] 0..0
* dataAbsentReason 0..0
* interpretation 0..0
* hasMember 1..
* hasMember only Reference(FaceNeckObservation)

ValueSet: FaceNeckExamParts
Id: exam-parts
Title: "Parts of an examination"
Description: "The parts of the body, the circumstances and the assessment."
* insert Published
* include codes from system $sections
* $items#circumstances
* $items#assessment
