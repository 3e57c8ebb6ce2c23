/** Names, places and sentences of invented yearly health checks of vineyard and harbour workers. */
export const givenNames = [
  'Marenka',
  'Oluvemi',
  'Tjorven',
  'Sabelo',
  'Yukari',
  'Анелия',
  'Ευδοξία',
  'نوران',
  'אביטל',
  '桜子',
  'आराध्या',
  'Nhiên',
  'Þórdís',
  'Łucja',
  'Xiadani',
  'Temperance-Rose',
] as const;

export const familyNames = [
  'Kelsund',
  'Varrowby',
  'Adeyrami',
  'Tamurić',
  'Żelnikowa',
  'Óhirasson',
  'Лозановска',
  'Καρδαμίδου',
  'جابران',
  'שדמוני',
  '山瀬川',
  'एकतारा',
  'Trần-Bến',
  "O'Drayne",
  'de la Vendange',
  'van der Steiger',
] as const;

export const roles = [
  'Occupational physician',
  'Works doctor',
  'Nurse practitioner',
  'Harbour medical officer',
  'Trainee under supervision',
] as const;

export const workplaces = [
  'Health office of the Lower Terraces vineyard co-operative',
  'Quay 7 seafarers’ and dockers’ clinic',
  'Mobile clinic of the river wine growers',
  'Hafenärztlicher Dienst Neusiel',
] as const;

export const sentences = [
  'Works outdoors in the vines from March to November.',
  'Wind-burnt after the harvest, otherwise as last year.',
  'Handles pallets on the quay; wears a hood and goggles in the cold store.',
  'Patient says that it has been there "for ever".',
  'Photographed with ruler for comparison next year.',
  'Beard not shaved for the examination.',
  'Looked at again after washing: dust from sulphur spraying had covered it.',
  'No change to the drawing of last year.',
  'Kontrolle nach der Lese vereinbart.',
  'A revoir après les vendanges.',
  'Sensible al frío durante el turno de noche.',
] as const;

/** Text that breaks careless code: markup, quotes, formulas, direction marks, rare scripts, odd spaces. */
export const hardTexts = [
  '"quoted", \'single\' & <b>bold</b>',
  '</div></text><script>alert("x")</script><!--',
  ']]> &amp; &#x3C; %3Cscript%3E #{7*7} {{x}} $& $1',
  '=HYPERLINK("https://clinic.example","x")',
  'a|b^c&d~e\\F\\ MSH|^~\\&',
  'two  spaces,\ttab,\nline feed,\r\nboth \n\n  and space at the ends  ',
  'right to left: \u202Eevil\u202C, \u2067isolate\u2069, \u200Fmark',
  'العنق سليم، "لا كتل"، ٣ مم',
  'הצוואר תקין (ללא גושים) — 3 מ״מ',
  '左頬に直径4ミリの丘疹、圧痛なし。',
  '왼쪽 뺨에 4 mm 구진',
  'बाएँ गाल पर ४ मि॰मी॰ का दाना',
  'แก้มซ้ายมีตุ่ม ๔ มม.',
  'ግራ ጉንጭ ላይ ትንሽ እብጠት',
  'მარცხენა ლოყა, ᏣᎳᎩ, ᠮᠣᠩᠭᠣᠯ',
  '👩🏽‍⚕️ 🏴󠁧󠁢󠁳󠁣󠁴󠁿 👁️‍🗨️ 𝕗𝕒𝕔𝕖 𐍈',
  'e\u0301 is not é; Z\u0351\u036B\u0343a\u0300\u0328lgo',
  'ﬁ ½ ² № ﷺ ſ İ ı ß',
  'null',
  '__proto__',
  '0',
  'true',
  '4.0 mm < 5,0 mm > 3·5 mm',
  'line\u2028separator \u2029 no-break\u00A0space zero\u200Bwidth \uFEFF mark \uFFFD',
  '\u007F delete and \u0085 next line',
] as const;
