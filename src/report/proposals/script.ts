/**
 * The script of the page, as it runs in a browser: shows what has to be said of each proposal, counts what
 * is decided, and makes the file. It writes text and values of controls alone, never markup.
 */
export const proposalScript = `
'use strict';
const data = JSON.parse(document.getElementById('data').textContent);
const { words, choices } = data;
const parts = ['finding', 'region', 'side', 'presence'];
const byId = (id) => document.getElementById(id);
const findings = new Map(choices.findings.map(([code, label, places]) => [code, { label, places }]));
const regions = new Map(Object.entries(choices.regions));
const parents = new Map(Object.entries(choices.parents));
const rows = data.rows.map((row, at) => ({
  ...row,
  number: at + 1,
  box: byId('row-' + at),
  back: byId('row-' + at).querySelector('button'),
  selects: Object.fromEntries(parts.map((part) => [part, byId(part + '-' + at)])),
}));
let unsaved = false;
/** Number of the row that had the focus last. */
let visited = 0;

const say = (text, facts) => text.replace(/\\{(\\w+)\\}/g, (_, name) => String(facts[name]));
const decisionOf = (row) => row.box.querySelector('input[type="radio"]:checked')?.value;
const isShown = (row, part) => !row.selects[part].closest('[data-control]').hidden;
/** A part as it now stands: chosen where it is asked, otherwise as proposed. */
const partOf = (row, part) =>
  isShown(row, part) ? row.selects[part].value : row.proposal.statement[part] ?? '';

/** Shows a control with what can be chosen; what was chosen stays where it still can be. */
function offer(row, part, shown, options) {
  const select = row.selects[part];
  select.closest('[data-control]').hidden = !shown;
  if (!shown) return;
  const kept = row.wanted?.[part] ?? select.value;
  const all = [['', words.told.notChosen], ...options];
  const now = [...select.options].map((option) => option.value);
  if (now.length !== all.length || all.some(([code], at) => code !== now[at])) {
    select.replaceChildren(...all.map(([code, label]) => new Option(label, code)));
  }
  select.value = all.some(([code]) => code === kept) ? kept : '';
}

function signsOf(row, how) {
  const { candidates } = row.proposal;
  const codes = how === 'confirm' && candidates ? candidates : [...findings.keys()];
  return codes.filter((code) => findings.has(code)).map((code) => [code, findings.get(code).label]);
}

function sidesOf(region) {
  const row = regions.get(region);
  if (row === undefined) return [];
  const sides = choices.sides.filter(([code]) => row.sides.includes(code));
  return row.required ? sides : [...sides, ['none', words.noSide]];
}

function update(row) {
  const how = decisionOf(row);
  const { statement, open } = row.proposal;
  const decides = how === 'confirm' || how === 'change';
  const asks = (part) => how === 'change' || (how === 'confirm' && open.includes(part));
  offer(row, 'finding', asks('finding'), signsOf(row, how));
  const finding = findings.get(partOf(row, 'finding'));
  const places = finding === undefined ? [] : choices.places[finding.places];
  offer(row, 'region', asks('region'), places.map((code) => [code, regions.get(code).label]));
  const sides = sidesOf(partOf(row, 'region'));
  const misfits = statement.side !== undefined && !sides.some(([code]) => code === statement.side);
  offer(row, 'side', asks('side') || (decides && misfits), sides);
  offer(row, 'presence', asks('presence'), Object.entries(words.presence));
  row.wanted = undefined;
  row.back.hidden = how === undefined;
}

/** A new decision starts anew: a change from what is proposed, a confirmation from nothing. */
function decide(row) {
  const { finding, region, side, presence } = row.proposal.statement;
  for (const part of parts) row.selects[part].value = '';
  if (decisionOf(row) === 'change') {
    const isSided = side !== undefined || row.proposal.open.includes('side');
    row.wanted = { finding, region, side: isSided ? side : 'none', presence };
  }
}

function count() {
  const done = rows.filter((row) => decisionOf(row) !== undefined).length;
  byId('count').textContent = say(words.told.count, { done, all: rows.length });
}

function statementOf(row) {
  const side = partOf(row, 'side');
  return {
    kind: 'finding',
    finding: partOf(row, 'finding'),
    region: partOf(row, 'region'),
    ...(side !== '' && side !== 'none' && { side }),
    presence: partOf(row, 'presence'),
  };
}

const covers = (side, one) => ['both', one, one + '-of-midline', undefined].includes(side);
function overlap(a, b) {
  if (a === undefined || b === undefined || a === b) return true;
  if (a === 'midline' || b === 'midline') return false;
  return ['right', 'left'].some((one) => covers(a, one) && covers(b, one));
}
function isWithin(region, other) {
  for (let at = region, steps = 0; at !== undefined && steps < 20; at = parents.get(at), steps += 1) {
    if (at === other) return true;
  }
  return false;
}
function oppose(a, b) {
  if (a.finding !== b.finding || !overlap(a.side, b.side)) return false;
  const [there, absent] = a.presence === 'absent' ? [b, a] : [a, b];
  if (there.presence !== 'present' || absent.presence !== 'absent') return false;
  return isWithin(there.region, absent.region);
}

/** The first row whose statement is the opposite of another one of its exam. */
function firstOpposite(confirmed) {
  const said = new Map();
  const key = (exam, finding) => JSON.stringify([exam, finding]);
  const add = (exam, statement) => {
    const name = key(exam, statement.finding);
    said.set(name, [...(said.get(name) ?? []), statement]);
  };
  for (const [exam, statements] of Object.entries(data.said)) {
    for (const one of statements) add(exam, one);
  }
  for (const { exam, statement, confirmed: by } of data.decided) {
    if (by !== undefined && statement) add(exam, statement);
  }
  return confirmed.find((row) => {
    const statement = statementOf(row);
    const { exam } = row.proposal;
    const others = said.get(key(exam, statement.finding)) ?? [];
    if (others.some((one) => oppose(one, statement))) return true;
    add(exam, statement);
    return false;
  });
}

/** This moment with the offset of the machine, to the second. */
function moment() {
  const now = new Date();
  const offset = -now.getTimezoneOffset();
  const two = (number) => String(number).padStart(2, '0');
  const local = new Date(now.getTime() + offset * 60000).toISOString().slice(0, 19);
  const away = Math.abs(offset);
  return local + (offset < 0 ? '-' : '+') + two(Math.floor(away / 60)) + ':' + two(away % 60);
}

function refuse(text, control) {
  byId('told').textContent = text;
  if (control === undefined) return;
  control.setAttribute('aria-invalid', 'true');
  control.focus();
}

function save() {
  for (const one of document.querySelectorAll('[aria-invalid]')) one.removeAttribute('aria-invalid');
  const decided = rows.filter((row) => decisionOf(row) !== undefined);
  if (decided.length === 0) return refuse(words.told.nothingDecided);
  const by = byId('by').value.trim();
  if (by === '') return refuse(words.told.nameMissing, byId('by'));
  const missing = decided.flatMap((row) => {
    const open = parts.filter((part) => isShown(row, part) && row.selects[part].value === '');
    return open.length === 0 ? [] : [[row, open]];
  });
  if (missing.length > 0) {
    for (const [row, open] of missing) {
      for (const part of open) row.selects[part].setAttribute('aria-invalid', 'true');
    }
    const [[row, [first]]] = missing;
    const facts = { count: missing.length, number: row.number };
    return refuse(say(words.told.unanswered, facts), row.selects[first]);
  }
  const confirmed = decided.filter((row) => decisionOf(row) !== 'reject');
  const opposite = firstOpposite(confirmed);
  if (opposite !== undefined) {
    const radio = opposite.box.querySelector('input[type="radio"]:checked');
    return refuse(say(words.told.opposite, { number: opposite.number }), radio);
  }
  const signed = { by, at: moment() };
  const lines = decided.map((row) =>
    decisionOf(row) === 'reject'
      ? { ...row.proposal, rejected: signed }
      : { ...row.proposal, statement: statementOf(row), confirmed: signed });
  const text = [...data.decided, ...lines].map((one) => JSON.stringify(one) + '\\n').join('');
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/x-ndjson' }));
  link.download = 'confirmed.ndjson';
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  unsaved = false;
  const facts = {
    file: link.download,
    confirmed: confirmed.length,
    rejected: decided.length - confirmed.length,
    open: rows.length - decided.length,
  };
  byId('told').textContent = say(words.told.saved, facts);
}

/** Goes to the first undecided one below where the person is, and from the last one to the first. */
function nextOpen() {
  const open = rows.filter((row) => decisionOf(row) === undefined);
  const next = open.find((row) => row.number > visited) ?? open[0];
  if (next === undefined) {
    byId('told').textContent = words.told.allDecided;
    return;
  }
  next.box.scrollIntoView();
  next.box.querySelector('input').focus();
}

for (const row of rows) {
  update(row);
  row.box.addEventListener('focusin', () => {
    visited = row.number;
  });
  row.box.addEventListener('change', (event) => {
    unsaved = true;
    if (event.target.type === 'radio') decide(row);
    update(row);
    count();
  });
  row.back.addEventListener('click', () => {
    unsaved = true;
    for (const radio of row.box.querySelectorAll('input')) radio.checked = false;
    update(row);
    count();
    row.box.querySelector('input').focus();
  });
}
byId('save').addEventListener('click', save);
byId('next').addEventListener('click', nextOpen);
addEventListener('beforeunload', (event) => {
  if (unsaved) event.preventDefault();
});
count();
`;
