// Days in words against the Unicode common locale data that node carries (Intl): every month in every language.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const k_locales = { en: ['en-GB'], es: ['es-ES', 'es-MX'], pt: ['pt-BR', 'pt-PT'] };

for (const [language, locales] of Object.entries(k_locales)) {
  test(`${language}: a day is written as in ${locales}`, () => {
    const { dates, kit } = JSON.parse(readFileSync(path.join(root, `assets/text/${language}.json`), 'utf8'));
    for (const locale of locales) {
      assert.ok(Intl.DateTimeFormat.supportedLocalesOf(locale).length, `this node has no ${locale}`);
      const { format } = new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' });
      for (let month = 0; month < 12; month += 1) {
        for (const day of [1, 15, 28]) {
          const words = dates.day.replace('{day}', day).replace('{month}', dates.months[month + 1]).replace('{year}', 2026);
          assert.equal(words, format(new Date(Date.UTC(2026, month, day))));
        }
      }
      // es-MX writes a point; Spain, most of South America and the academies' own rule allow the comma.
      if (locale !== 'es-MX') assert.equal(kit.decimal, new Intl.NumberFormat(locale).format(2.5)[1]);
    }
  });
}
