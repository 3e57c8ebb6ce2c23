/**
 * Invented exports of our vineyards and harbours, with what a careful person would make of each column
 * (common practice, no source). Written before the proposals were made from the lexicon. Proposals
 * were tuned on the first list alone.
 *
 * A target is written `kind/code@region side unit modality`; `open` is a column that nobody can place
 * from its name: to place it is wrong. `words` is what each word of a column means for sure; any other
 * meaning that is proposed is wrong, and so is a unit that no name or value states.
 */
export interface Table {
  readonly name: string;
  readonly text: string;
  readonly columns: { readonly [name: string]: string };
  /** Codes of the items of a long table. */
  readonly items?: { readonly [code: string]: string };
  readonly words?: { readonly [name: string]: { readonly [word: string]: string } };
  /** The form of the dates, or `open` where day and month cannot be told apart. */
  readonly dates?: string;
}

const rows = (...lines: readonly string[]): string => `${lines.join('\n')}\n`;

export const tunedTables: readonly Table[] = [
  {
    name: 'vineyard lids, side after the name',
    text: rows(
      'Visit no,Worker no,Visit date,MRD1 R (mm),MRD1 L (mm),Palpebral fissure R (mm),Palpebral fissure L (mm),Levator R (mm),Ptosis R,Ptosis L',
      'V1,W4,2025-03-14,4.0,4.5,9,10,14,no,no',
      'V2,W9,2025-03-15,1.5,4.0,6,9,11,yes,no',
    ),
    columns: {
      'Visit no': 'head/exam',
      'Worker no': 'head/subject',
      'Visit date': 'head/performed',
      'MRD1 R (mm)': 'measure/mrd1 right mm',
      'MRD1 L (mm)': 'measure/mrd1 left mm',
      'Palpebral fissure R (mm)': 'measure/pfh right mm',
      'Palpebral fissure L (mm)': 'measure/pfh left mm',
      'Levator R (mm)': 'measure/levator right mm',
      'Ptosis R': 'sign/lid-position.ptosis@lid-upper right',
      'Ptosis L': 'sign/lid-position.ptosis@lid-upper left',
    },
    words: {
      'Ptosis R': { yes: 'present', no: 'absent' },
      'Ptosis L': { yes: 'present', no: 'absent' },
    },
    dates: 'YYYY-MM-DD',
  },
  {
    name: 'harbour ears, day and month not told apart',
    text: rows(
      'Exam ID;Badge;Date;Ear canal right;Ear canal left;Eardrum right;Eardrum left;Tinnitus;Hearing loss;Remarks',
      'H-1;B7;03/04/2025;clear;wax;intact;not seen;N;Y;-',
      'H-2;B8;05/06/2025;wax;clear;intact;intact;Y;N;left noisy job',
    ),
    columns: {
      'Exam ID': 'head/exam',
      Badge: 'head/subject',
      Date: 'head/performed',
      'Ear canal right': 'region/eac right',
      'Ear canal left': 'region/eac left',
      'Eardrum right': 'region/tm right',
      'Eardrum left': 'region/tm left',
      Tinnitus: 'symptom/sym-ear.tinnitus',
      'Hearing loss': 'symptom/sym-ear.hearing-loss',
      Remarks: 'note',
    },
    words: {
      Tinnitus: { Y: 'yes', N: 'text' },
      'Hearing loss': { Y: 'yes', N: 'text' },
    },
    dates: 'open',
  },
  {
    name: 'Weingut, Lider',
    text: rows(
      'Untersuchungsnr.;Personalnr.;Geburtsdatum;Geschlecht;Untersuchungsdatum;Lidspalte re (mm);Lidspalte li (mm);Ptose re;Ptose li;Bemerkung',
      'U1;P10;12.05.1980;w;14.03.2025;9;8,5;nein;ja;müde',
      'U2;P11;30.01.1975;m;15.03.2025;10;10;nein;nein;',
    ),
    columns: {
      'Untersuchungsnr.': 'head/exam',
      'Personalnr.': 'head/subject',
      Geburtsdatum: 'head/born',
      Geschlecht: 'head/gender',
      Untersuchungsdatum: 'head/performed',
      'Lidspalte re (mm)': 'measure/pfh right mm',
      'Lidspalte li (mm)': 'measure/pfh left mm',
      'Ptose re': 'sign/lid-position.ptosis@lid-upper right',
      'Ptose li': 'sign/lid-position.ptosis@lid-upper left',
      Bemerkung: 'note',
    },
    words: {
      'Ptose re': { ja: 'present', nein: 'absent' },
      'Ptose li': { ja: 'present', nein: 'absent' },
    },
    dates: 'DD.MM.YYYY',
  },
  {
    name: 'Hafen, Haut',
    text: rows(
      'Fall;Mitarbeiter-Nr;Datum;Stirn;Schläfe rechts;Schläfe links;Wange rechts;Nase;Kinn;Leberfleck Schläfe links',
      'F1;M3;02.11.2025;unauffällig;unauffällig;auffällig;unauffällig;o.B.;o.B.;ja',
      'F2;M4;23.11.2025;unauffällig;auffällig;unauffällig;unauffällig;o.B.;o.B.;nein',
    ),
    columns: {
      Fall: 'head/exam',
      'Mitarbeiter-Nr': 'head/subject',
      Datum: 'head/performed',
      Stirn: 'region/forehead',
      'Schläfe rechts': 'region/temple right',
      'Schläfe links': 'region/temple left',
      'Wange rechts': 'open',
      Nase: 'region/nose',
      Kinn: 'region/chin',
      'Leberfleck Schläfe links': 'sign/naevus@temple left',
    },
    words: {
      Stirn: { unauffällig: 'normal', auffällig: 'abnormal' },
      'Leberfleck Schläfe links': { ja: 'present', nein: 'absent' },
      Nase: { 'o.B.': 'text' },
    },
    dates: 'DD.MM.YYYY',
  },
  {
    name: 'sensation, wide',
    text: rows(
      'Encounter,MRN,DOB,Sex,Exam date,V1 touch R,V1 touch L,V2 pin R,V2 pin L,V3 touch R,V3 touch L,Corneal reflex R',
      'E1,123,1990-01-31,F,2025-09-01,normal,normal,reduced,normal,normal,normal,normal',
    ),
    columns: {
      Encounter: 'head/exam',
      MRN: 'head/subject',
      DOB: 'head/born',
      Sex: 'head/gender',
      'Exam date': 'head/performed',
      'V1 touch R': 'point/v1 right light-touch',
      'V1 touch L': 'point/v1 left light-touch',
      'V2 pin R': 'point/v2 right pinprick',
      'V2 pin L': 'point/v2 left pinprick',
      'V3 touch R': 'point/v3 right light-touch',
      'V3 touch L': 'point/v3 left light-touch',
      'Corneal reflex R': 'point/corneal-reflex right',
    },
    words: { 'V1 touch R': { normal: 'normal' }, 'V2 pin R': { reduced: 'reduced' } },
    dates: 'YYYY-MM-DD',
  },
  {
    name: 'neck nodes by level',
    text: rows(
      'case_id|emp_id|seen_on|node_level_IA|node_level_IB_rt|node_level_IB_lt|node_level_IIA_rt|supraclavicular_node_lt|thyroid|goitre_grade|neck_lump',
      'c1|e1|2025-01-20|neg|neg|pos|neg|neg|normal|0|no',
      'c2|e2|2025-01-21|neg|pos|neg|neg|neg|abnormal|1|yes',
    ),
    columns: {
      case_id: 'head/exam',
      emp_id: 'head/subject',
      seen_on: 'head/performed',
      node_level_IA: 'region/ln-ia',
      node_level_IB_rt: 'region/ln-ib right',
      node_level_IB_lt: 'region/ln-ib left',
      node_level_IIA_rt: 'region/ln-iia right',
      supraclavicular_node_lt: 'region/ln-supraclav left',
      thyroid: 'region/thyroid',
      goitre_grade: 'scale/goitre',
      neck_lump: 'open',
    },
    words: {
      thyroid: { normal: 'normal', abnormal: 'abnormal' },
      node_level_IA: { neg: 'text', pos: 'text' },
      node_level_IB_rt: { neg: 'text', pos: 'text' },
    },
    dates: 'YYYY-MM-DD',
  },
  {
    name: 'jaw, units stated in no name',
    text: rows(
      'Record number,Patient number,Date of visit,Mouth opening,Overbite,Protrusion,Jaw click right,Jaw click left,Bruxism,Jaw pain',
      'R1,P1,14 Mar 2025,45,3,7,present,absent,present,yes',
    ),
    columns: {
      'Record number': 'head/exam',
      'Patient number': 'head/subject',
      'Date of visit': 'head/performed',
      'Mouth opening': 'measure/mio',
      Overbite: 'measure/overbite',
      Protrusion: 'measure/protrusion',
      'Jaw click right': 'sign/tmj-click@tmj right',
      'Jaw click left': 'sign/tmj-click@tmj left',
      Bruxism: 'sign/bruxism',
      'Jaw pain': 'symptom/sym-jaw.pain',
    },
    words: { 'Jaw click right': { present: 'present', absent: 'absent' } },
    dates: 'DD MMM YYYY',
  },
  {
    name: 'Mimik',
    text: rows(
      'Besuchsnummer;Nachname;Vorname;Geb.-Datum;Termin;House-Brackmann rechts;House-Brackmann links;Stirnrunzeln re;Lidschluss re;Lächeln re;Lächeln li;Arzt',
      'B1;Traub;Lena;01.02.1988;17.04.2025;II;I;normal;normal;leicht schwach;normal;Dr. Kai',
    ),
    columns: {
      Besuchsnummer: 'head/exam',
      Nachname: 'head/family',
      Vorname: 'head/given',
      'Geb.-Datum': 'head/born',
      Termin: 'head/performed',
      'House-Brackmann rechts': 'scale/hb right',
      'House-Brackmann links': 'scale/hb left',
      'Stirnrunzeln re': 'open',
      'Lidschluss re': 'open',
      'Lächeln re': 'point/zygomaticus right',
      'Lächeln li': 'point/zygomaticus left',
      Arzt: 'head/examiner',
    },
    words: { 'Lächeln re': { 'leicht schwach': 'text' }, 'Lächeln li': { normal: 'normal' } },
    dates: 'DD.MM.YYYY',
  },
  {
    name: 'long table of the harbour',
    text: rows(
      'exam;person;day;test;laterality;result;unit;comment',
      'A;1;2025-02-01;MRD1;OD;4;mm;',
      'A;1;2025-02-01;MRD1;OS;3;mm;',
      'A;1;2025-02-01;Nasal septum;;midline;;',
      'A;1;2025-02-01;Ear canal;R;wax;;',
      'B;2;2025-02-02;Thyroid;;normal;;',
      'B;2;2025-02-02;Tophus;R;yes;;',
    ),
    columns: {
      exam: 'head/exam',
      person: 'head/subject',
      day: 'head/performed',
      test: 'item/code',
      laterality: 'item/side',
      result: 'item/value',
      unit: 'item/unit',
      comment: 'item/note',
    },
    items: {
      MRD1: 'measure/mrd1',
      'Nasal septum': 'region/septum',
      'Ear canal': 'region/eac',
      Thyroid: 'region/thyroid',
      Tophus: 'sign/tophus@pinna',
    },
    dates: 'YYYY-MM-DD',
  },
  {
    name: 'lange Liste, deutsch',
    text: rows(
      'Untersuchung\tPatient\tDatum\tMerkmal\tSeite\tBefund\tEinheit\tKommentar',
      'X1\tP1\t13.01.2025\tTrommelfell\tre\tintakt\t\t',
      'X1\tP1\t13.01.2025\tSchilddrüse\t\tunauffällig\t\t',
      'X2\tP2\t14.01.2025\tMundöffnung\t\t42\tmm\t',
      'X2\tP2\t14.01.2025\tNasenpolyp\tli\tja\t\t',
    ),
    columns: {
      Untersuchung: 'head/exam',
      Patient: 'head/subject',
      Datum: 'head/performed',
      Merkmal: 'item/code',
      Seite: 'item/side',
      Befund: 'item/value',
      Einheit: 'item/unit',
      Kommentar: 'item/note',
    },
    items: {
      Trommelfell: 'region/tm',
      Schilddrüse: 'region/thyroid',
      Mundöffnung: 'measure/mio',
      Nasenpolyp: 'sign/nasal-polyp',
    },
    dates: 'DD.MM.YYYY',
  },
  {
    name: 'eye clinic words OD and OS',
    text: rows(
      'ID,PatientID,ExamDate,OD_Ptosis,OS_Ptosis,OD_Ectropion,OS_Ectropion,OD_PupilDiameter_mm,OS_PupilDiameter_mm,OD_Hertel_mm,OS_Hertel_mm',
      '1,7,2025/04/01,0,1,0,0,3.5,3.0,18,17',
    ),
    columns: {
      ID: 'open',
      PatientID: 'head/subject',
      ExamDate: 'head/performed',
      OD_Ptosis: 'sign/lid-position.ptosis@lid-upper right',
      OS_Ptosis: 'sign/lid-position.ptosis@lid-upper left',
      OD_Ectropion: 'sign/lid-turn.ectropion right',
      OS_Ectropion: 'sign/lid-turn.ectropion left',
      OD_PupilDiameter_mm: 'measure/pupil-diam right mm',
      OS_PupilDiameter_mm: 'measure/pupil-diam left mm',
      OD_Hertel_mm: 'measure/hertel right mm',
      OS_Hertel_mm: 'measure/hertel left mm',
    },
    words: { OD_Ptosis: { '0': 'text', '1': 'text' }, OS_Ptosis: { '0': 'text', '1': 'text' } },
    dates: 'YYYY/MM/DD',
  },
  {
    name: 'symptoms of a yearly check',
    text: rows(
      'check_no,staff_no,check_date,recorded_at,fever,night sweats,weight loss,double vision,blocked nose,hoarseness,difficulty swallowing,shoe size',
      'k1,s1,2025-05-05,2025-05-05T10:00:00Z,no,no,no,no,yes,no,no,42',
    ),
    columns: {
      check_no: 'head/exam',
      staff_no: 'head/subject',
      check_date: 'head/performed',
      recorded_at: 'head/recorded',
      fever: 'symptom/sym-general.fever',
      'night sweats': 'symptom/sym-general.night-sweats',
      'weight loss': 'symptom/sym-general.weight-loss',
      'double vision': 'symptom/sym-eye.double-vision',
      'blocked nose': 'symptom/sym-nose.blocked',
      hoarseness: 'symptom/sym-throat.hoarseness',
      'difficulty swallowing': 'symptom/sym-throat.dysphagia',
      'shoe size': 'open',
    },
    words: { fever: { no: 'no' }, 'blocked nose': { yes: 'yes' } },
    dates: 'YYYY-MM-DD',
  },
  {
    name: 'typing errors in the headings',
    text: rows(
      'exam no,worker id,exam date,Eardum right,Forhead,Thyriod,Septm,Ectropoin lower lid left,notes',
      'e1,w1,2025-06-30,normal,normal,normal,normal,no,ok',
    ),
    columns: {
      'exam no': 'head/exam',
      'worker id': 'head/subject',
      'exam date': 'head/performed',
      'Eardum right': 'region/tm right',
      Forhead: 'region/forehead',
      Thyriod: 'region/thyroid',
      Septm: 'region/septum',
      'Ectropoin lower lid left': 'sign/lid-turn.ectropion@lid-lower left',
      notes: 'note',
    },
    words: { Forhead: { normal: 'normal' } },
    dates: 'YYYY-MM-DD',
  },
  {
    name: 'Verneinung im Namen',
    text: rows(
      'Fallnummer;Personalnummer;Untersucht am;Kein Stridor;Stridor;Ohne Druckschmerz Kiefergelenk re;Keine Ptose li;Naevus Stirn',
      'f1;p1;2025-07-01;x;;x;ja;nein',
    ),
    columns: {
      Fallnummer: 'head/exam',
      Personalnummer: 'head/subject',
      'Untersucht am': 'head/performed',
      'Kein Stridor': 'open',
      Stridor: 'sign/stridor',
      'Ohne Druckschmerz Kiefergelenk re': 'open',
      'Keine Ptose li': 'open',
      'Naevus Stirn': 'sign/naevus@forehead',
    },
    words: { 'Naevus Stirn': { nein: 'absent' } },
    dates: 'YYYY-MM-DD',
  },
  {
    name: 'two units in one table',
    text: rows(
      'visit,subject no,date,node size cm,lesion diameter (mm),lesion height mm,pain score,mrd2 r,mrd2 l',
      'v1,s1,20250131,1.2,6,1,3,5 mm,5 mm',
    ),
    columns: {
      visit: 'head/exam',
      'subject no': 'head/subject',
      date: 'head/performed',
      'node size cm': 'measure/node-size cm',
      'lesion diameter (mm)': 'measure/lesion-max mm',
      'lesion height mm': 'measure/lesion-elev mm',
      'pain score': 'scale/pain-nrs',
      'mrd2 r': 'measure/mrd2 right',
      'mrd2 l': 'measure/mrd2 left',
    },
    dates: 'YYYYMMDD',
  },
  {
    name: 'español',
    text: rows(
      'Visita,Paciente,Fecha,Ptosis derecha,Ptosis izquierda,Tiroides,Observaciones',
      'v1,p1,2025-08-31,no,sí,normal,nada',
    ),
    columns: {
      Visita: 'head/exam',
      Paciente: 'head/subject',
      Fecha: 'head/performed',
      'Ptosis derecha': 'sign/lid-position.ptosis@lid-upper right',
      'Ptosis izquierda': 'sign/lid-position.ptosis@lid-upper left',
      Tiroides: 'region/thyroid',
      Observaciones: 'note',
    },
    words: { 'Ptosis derecha': { no: 'absent' } },
    dates: 'YYYY-MM-DD',
  },
];
