Profile: FaceNeckExamReport
Parent: DiagnosticReport
Id: face-neck-report
Title: "Report of a face and neck examination"
Description: "The examination with its parts as results, and the conclusion in the examiner's words."
* insert Published
* identifier 1..
* code = $items#exam
* subject 1..
* subject only Reference(Patient)
* effective[x] 1..
* effective[x] only dateTime or Period
* issued 1..
* performer 1..
* result 1..
* result only Reference(FaceNeckRegionGroup)
