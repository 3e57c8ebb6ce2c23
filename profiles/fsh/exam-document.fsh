Profile: FaceNeckComposition
Parent: Composition
Id: face-neck-composition
Title: "Head of the document of a face and neck examination"
Description: "The parts of the examination as sections with a narrative. A part of the protocol of which nothing was stated is there and says so."
* insert Published
* identifier 1..
* type = $items#exam
* subject 1..
* subject only Reference(Patient)
* section 1..
* section.title 1..
* section.code 1..
* section.text 1..
* section.section 0..0
* section obeys fn-doc-1

Invariant: fn-doc-1
Description: "A section has entries, or says why it is empty"
Severity: #error
Expression: "entry.exists() xor emptyReason.exists()"

Profile: FaceNeckDocument
Parent: Bundle
Id: face-neck-document
Title: "Document of a face and neck examination"
Description: "The examination as one document: the composition first, then all that it refers to."
* insert Published
* identifier 1..
* identifier.system 1..
* identifier.value 1..
* type = #document
* timestamp 1..
* entry 2..
* entry ^slicing.discriminator.type = #type
* entry ^slicing.discriminator.path = "resource"
* entry ^slicing.rules = #open
* entry contains
    composition 1..1 and
    report 1..1
* entry[composition].resource only FaceNeckComposition
* entry[report].resource only FaceNeckExamReport
