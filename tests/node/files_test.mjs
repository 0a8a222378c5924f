// The files we hand to other programs, read by general libraries: FHIR R4 by two validators (one of them the
// published JSON schema), calendars by an iCalendar parser; and spoilt ones, which these must refuse.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import ICAL from 'ical.js';

const require = createRequire(import.meta.url);
const { Fhir } = require('fhir');
const Schema = require('@asymmetrik/fhir-json-schema-validator');

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const tool = path.join(root, '.build/tools/tests/rehale_files');
const made = (...what) => execFileSync(tool, what, { encoding: 'utf8', maxBuffer: 1 << 24 });

const fhir = new Fhir();
const schema = new Schema();
const by_rules = (resource) => fhir.validate(resource, { errorOnUnexpected: true });
const families = ['spray', 'powder-lever', 'powder-cover', 'soft-mist'];

test('bundles of every family are valid FHIR R4', () => {
  for (const family of families) {
    for (const seed of ['1', '2', '5']) {
      const bundle = JSON.parse(made('fhir', family, seed));
      const told = by_rules(bundle);
      assert.deepEqual(told.messages.filter(({ severity }) => severity === 'error'), [], family);
      assert.deepEqual(schema.validate(bundle), [], family);
      for (const { resource } of bundle.entry) assert.deepEqual(schema.validate(resource), [], family);
    }
  }
});

test('the parts of a bundle belong together', () => {
  const bundle = JSON.parse(made('fhir', 'soft-mist', '3'));
  const [form, answers, seen] = bundle.entry.map(({ resource }) => resource);
  assert.deepEqual([form.resourceType, answers.resourceType, seen.resourceType],
    ['Questionnaire', 'QuestionnaireResponse', 'Observation']);
  assert.equal(answers.questionnaire, `${form.url}|${form.version}`);
  assert.equal(seen.derivedFrom[0].reference, bundle.entry[1].fullUrl);
  assert.equal(seen.category[0].coding[0].code, 'survey');
  assert.match(seen.note[0].text, /not observed/);
  assert.equal(answers.authored, '2026-11-25');
  const options = new Map(form.item.map((item) => [item.linkId, (item.answerOption ?? []).map(({ valueCoding }) => valueCoding.code)]));
  let answered = 0;
  for (const { linkId, answer = [] } of answers.item) {
    for (const { valueCoding } of answer.filter((one) => one.valueCoding)) {
      assert.ok(options.get(linkId).includes(valueCoding.code));
      answered += 1;
    }
  }
  assert.ok(answered >= 8);
  for (const part of seen.component) assert.ok(part.valueQuantity.value >= 0 && part.valueQuantity.value <= 1);
});

test('no code pretends to be a standard one and no person is named', () => {
  const text = made('fhir', 'spray', '4');
  const systems = new Set([...text.matchAll(/"system":"([^"]+)"/g)].map(([, system]) => system));
  assert.ok(systems.size > 0);
  for (const system of ['loinc', 'snomed']) assert.ok(![...systems].some((name) => name.includes(system)));
  assert.ok(!/"(subject|patient|performer|author)"/.test(text));
});

test('spoilt bundles are refused', () => {
  const spoil = (change) => {
    const bundle = JSON.parse(made('fhir', 'spray', '1'));
    change(bundle.entry.map(({ resource }) => resource), bundle);
    const rules = by_rules(bundle);
    return !rules.valid || schema.validate(bundle).length > 0;
  };
  assert.ok(spoil(([form]) => { delete form.item[0].linkId; }));
  assert.ok(spoil(([form]) => { form.status = 'done'; }));
  assert.ok(spoil(([, answers]) => { delete answers.status; }));
  assert.ok(spoil(([, , seen]) => { delete seen.code; }));
  assert.ok(spoil(([, , seen]) => { seen.component[0].valueQuantity.value = 'high'; }));
  assert.ok(spoil((parts, bundle) => { bundle.type = 'heap'; }));
});

test('a calendar reads as it was meant', () => {
  const text = made('calendar');
  for (const line of text.split('\r\n')) assert.ok(Buffer.byteLength(line) <= 75, line);
  assert.ok(!/[^\r]\n/.test(text) && text.endsWith('\r\n'));
  const calendar = new ICAL.Component(ICAL.parse(text));
  assert.equal(calendar.getFirstPropertyValue('version'), '2.0');
  const events = calendar.getAllSubcomponents('vevent').map((part) => new ICAL.Event(part));
  assert.deepEqual(events.map(({ uid }) => uid), ['check-1@rehale', 'clean-1@rehale', 'refill-1@rehale']);
  assert.equal(events[0].startDate.toString(), '2026-12-23');
  assert.ok(events[0].startDate.isDate);
  assert.equal(events[0].description, 'How you use it fades; a short look helps.');
  assert.equal(events[1].summary, 'Clean it; then let it dry, all night');
  assert.equal(events[1].description, 'Line one\nLine two\\end');
  assert.match(events[2].summary, /– üñ水🌬 in time, as .* folded more than once$/);
  const days = [];
  const iterator = events[1].iterator();
  for (let next = iterator.next(); next; next = iterator.next()) days.push(next.toString());
  assert.equal(days.length, 8);
  assert.deepEqual(days.slice(0, 2), ['2026-11-28', '2026-12-05']);
  assert.ok(events.every(({ component }) => component.getFirstSubcomponent('valarm').getFirstPropertyValue('action') === 'DISPLAY'));
  assert.match(text, /DTSTAMP:20261125T170101Z/);
});
