/**
 * The script of the page, as it runs in a browser: shows what has to be said of each choice, counts what
 * is decided, and makes the mapping. It writes text and values of controls alone, never markup.
 */
export const reviewScript = `
'use strict';
const data = JSON.parse(document.getElementById('data').textContent);
const rows = data.rows.map((row, at) => ({ ...row, box: document.getElementById('row-' + at) }));
const part = (row, name) => row.box.querySelector('[data-part="' + name + '"]');
const valueOf = (row, name) => part(row, name).value.trim();
const decided = (row) => row.box.querySelector('input[type="radio"]:checked').value;
const own = (object, name) => (Object.hasOwn(object, name) ? object[name] : undefined);

function choiceOf(row) {
  const how = decided(row);
  if (how === 'take') return row.choice;
  if (how !== 'other') return undefined;
  const choice = own(data.choices, valueOf(row, 'code'));
  if (choice === undefined) return undefined;
  const beside = row.item === undefined ? {} : data.beside[row.item] || {};
  return {
    ...choice,
    sideRequired: choice.sideRequired && !beside.side,
    units: beside.unit ? [] : choice.units,
  };
}

function fill(select, words, chosen) {
  const known = [...select.options].map((option) => option.value).join('|');
  const wanted = ['', ...words];
  if (known !== wanted.join('|')) {
    select.replaceChildren(...wanted.map((word) => new Option(word === '' ? 'not chosen' : word, word)));
    if (wanted.includes(chosen)) select.value = chosen;
  }
}

function show(row, name, isShown) {
  part(row, name).closest('[data-control]').hidden = !isShown;
}

function update(row) {
  const how = decided(row);
  const choice = choiceOf(row);
  const target = choice && choice.target;
  show(row, 'code', how === 'other');
  show(row, 'side', target !== undefined && choice.sides.length > 0);
  show(row, 'unit', target !== undefined && choice.units.length > 0);
  show(row, 'region', target !== undefined && choice.regionRequired);
  const isDate = choice !== undefined && ['performed', 'recorded', 'born'].includes(choice.head);
  show(row, 'form', isDate && row.forms.length > 0);
  if (target !== undefined) {
    fill(part(row, 'side'), choice.sides, how === 'take' ? target.side : undefined);
    fill(part(row, 'unit'), choice.units, how === 'take' ? target.unit : undefined);
  }
  fill(part(row, 'form'), row.forms);
  const words = part(row, 'words');
  const meanings = choice && choice.meanings === undefined ? undefined : choice && data.meanings[choice.meanings];
  words.hidden = meanings === undefined;
  if (meanings !== undefined) {
    words.querySelectorAll('select').forEach((select, at) => fill(select, meanings, row.words[at][1]));
  }
}

function count() {
  const open = rows.filter((row) => decided(row) === 'later').length;
  document.getElementById('count').textContent =
    rows.length - open + ' of ' + rows.length + ' decided';
}

function problemsOf(row) {
  const how = decided(row);
  const choice = choiceOf(row);
  if (how === 'other' && choice === undefined) return ['code'];
  if (choice === undefined) return [];
  const target = choice.target;
  const problems = [];
  if (choice.sideRequired && valueOf(row, 'side') === '') problems.push('side');
  if (target && choice.units.length > 0 && valueOf(row, 'unit') === '') problems.push('unit');
  if (choice.regionRequired && !data.regions.includes(valueOf(row, 'region'))) problems.push('region');
  if (!part(row, 'form').closest('[data-control]').hidden && valueOf(row, 'form') === '') problems.push('form');
  return problems;
}

function targetOf(row, choice) {
  const { side: _side, unit: _unit, ...target } = choice.target;
  const [side, unit, region] = ['side', 'unit', 'region'].map((name) =>
    part(row, name).closest('[data-control]').hidden ? '' : valueOf(row, name));
  if (side !== '') target.side = side;
  if (unit !== '') target.unit = unit;
  if (region !== '') target.region = region;
  if ('words' in target) {
    const selects = [...part(row, 'words').querySelectorAll('select')];
    target.words = Object.fromEntries(
      row.words.flatMap(([word], at) => (selects[at].value === '' ? [] : [[word, selects[at].value]])));
  }
  return target;
}

function setHead(exam, head, row, name) {
  const form = part(row, 'form').closest('[data-control]').hidden ? '' : valueOf(row, 'form');
  const stated = own(data.dates, name);
  const dated = form === '' ? stated || name : { from: name, formats: [form] };
  const subject = exam.subject;
  if (head === 'exam') exam.id = { from: [name] };
  if (head === 'status') exam.status = { from: name };
  if (head === 'subject') subject.identifiers = [{ from: name }];
  if (head === 'family') subject.family = name;
  if (head === 'given') subject.given = name;
  if (head === 'born') subject.birthDate = dated;
  if (head === 'gender') subject.gender = { from: name, words: data.genders };
  if (head === 'performed') exam.performed = { start: dated };
  if (head === 'recorded') exam.recorded = { from: dated };
  if (head === 'examiner') exam.examiner = { name };
}

function mappingOf() {
  const { items = [], ...rest } = structuredClone(data.mapping);
  const exam = { subject: {}, performed: {}, recorded: {}, examiner: {} };
  const fields = {};
  const [layout, text] = [[], []];
  const roles = new Set();
  const maps = items.map(() => ({}));
  for (const row of rows) {
    const how = decided(row);
    if (how === 'text' && row.of === 'field') text.push(row.name);
    if (how === 'layout') layout.push(row.name);
    if (how === 'text' && row.of === 'item') maps[row.item][row.name] = { kind: 'note' };
    const choice = choiceOf(row);
    if (choice === undefined) continue;
    if (choice.head !== undefined) setHead(exam, choice.head, row, row.name);
    else if (choice.target === undefined) roles.add(row.name);
    else if (row.of === 'item') maps[row.item][row.name] = targetOf(row, choice);
    else Object.defineProperty(fields, row.name, { value: targetOf(row, choice), enumerable: true });
  }
  const used = items.flatMap(({ kind, code, value, map: _map, ...others }, at) => {
    if (![...code, value].every((name) => roles.has(name))) return [];
    const beside = Object.entries(others).filter(([, name]) => roles.has(name));
    return [{ ...(kind && { kind }), code, value, ...Object.fromEntries(beside), map: maps[at] }];
  });
  return {
    ...rest,
    exam,
    ...(Object.keys(fields).length > 0 && { fields }),
    ...(used.length > 0 && { items: used }),
    ...(layout.length > 0 && { layout }),
    ...(text.length > 0 && { text }),
  };
}

function save() {
  const told = document.getElementById('told');
  for (const row of rows) {
    for (const control of row.box.querySelectorAll('[aria-invalid]')) control.removeAttribute('aria-invalid');
  }
  const wrong = rows.map((row) => [row, problemsOf(row)]).filter(([, problems]) => problems.length > 0);
  if (wrong.length > 0) {
    for (const [row, problems] of wrong) {
      for (const name of problems) part(row, name).setAttribute('aria-invalid', 'true');
    }
    const [[row, [first]]] = wrong;
    told.textContent = 'Not saved: ' + wrong.length + ' still need an answer, first ' + row.name + ': ' + first;
    part(row, first).focus();
    return;
  }
  const file = new Blob([JSON.stringify(mappingOf(), undefined, 2) + '\\n'], { type: 'application/json' });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = 'mapping.json';
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  told.textContent = 'Saved as mapping.json. What is not decided is not in it.';
}

for (const row of rows) {
  update(row);
  for (const event of ['change', 'input']) {
    row.box.addEventListener(event, () => {
      update(row);
      count();
    });
  }
}
document.getElementById('save').addEventListener('click', save);
count();
`;
