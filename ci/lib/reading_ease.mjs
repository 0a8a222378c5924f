// How easy a Spanish or Portuguese text reads, by published formulas. W words, S sentences, Y syllables.
//   es: Szigriszt-Pazos 1993, on the INFLESZ bands of Barrio-Cantalejo et al. 2008: 206.835 - 62.3 Y/W - W/S;
//       over 80 very easy, 65-80 fairly easy, 55-65 normal (facts/diagnosis.md 7; the bands from memory).
//   es: Fernandez-Huerta 1959 as mended by Law 2011: 206.84 - 60 Y/W - 1.02 W/S (facts/diagnosis.md 7).
//   pt: Flesch as fitted to Portuguese by Martins et al. 1996 (+42): 248.835 - 84.6 Y/W - 1.015 W/S;
//       75-100 very easy (school years 1-4), 50-75 easy (years 5-8) (from memory).

export const words_in = (text) => text.match(/[\p{L}\p{N}]+(?:['’-][\p{L}\p{N}]+)*/gu) ?? [];
export const split = (text) => text.split(/(?<=[.!?:])[»”"]?\s+/).filter((part) => words_in(part).length > 0);

// Words with a spelling of another language, and the one pair that glides in no other word.
const k_by_ear = { es: { spray: 1, clic: 1 }, pt: { spray: 1, ao: 1, aos: 1 } };

// Spanish: a e o and every accented vowel are strong; strong ones stand apart, weak ones lean on a neighbour.
function syllables_es(word) {
  const spoken = word.replace(/qu(?=[eiéí])/g, 'k').replace(/gu(?=[eiéí])/g, 'g')
    .replace(/(?<=[aeiouáéíóúü])h(?=[aeiouáéíóúü])/g, '').replace(/y(?![aeiouáéíóúü])/g, 'i');
  const runs = spoken.match(/[aeiouáéíóúü]+/g) ?? [];
  return runs.reduce((sum, run) => sum + Math.max(1, run.match(/[aeoáéíóú]/g)?.length ?? 0), 0);
}

// Portuguese: i and u glide after another vowel unless accented or shutting the syllable with nh or l m n r z;
// before one they stand apart, but for an unstressed end (série, água). ão, ãe, õe are one.
function syllables_pt(word) {
  const spoken = word.replace(/[qg]u(?=[aeioáéíóâêôã])/g, 'k').replace(/ã[eo]/g, 'ã').replace(/õe/g, 'õ')
    .replace(/(?<=[áéíóúâêô].*[^aeiouáéíóúâêôãõ])[iu](?=[aeo]s?$)/, '')
    .replace(/(?<=[aeiouáéóúâêô])[iu](?!nh|[lmnrz](?:[^aeiouáéíóúâêôãõh]|$))/g, 'j');
  return (spoken.match(/[aeiouáéíóúâêôàãõü]/g) ?? []).length;
}

export function syllables(word, language) {
  const lower = word.toLowerCase().normalize('NFC');
  const spoken = k_by_ear[language][lower] ?? (language === 'es' ? syllables_es : syllables_pt)(lower);
  return Math.max(1, spoken);
}

export function counts(text, language) {
  const words = words_in(text);
  return {
    words: words.length, sentences: Math.max(1, split(text).length),
    syllables: words.flatMap((word) => word.split(/['’-]/)).reduce((sum, word) => sum + syllables(word, language), 0),
  };
}

const k_formulas = {
  es: (a, b) => 206.835 - 62.3 * b - a,
  pt: (a, b) => 248.835 - 84.6 * b - 1.015 * a,
};

export function ease(text, language) {
  const { words, sentences, syllables: spoken } = counts(text, language);
  return k_formulas[language](words / sentences, spoken / words);
}

export function fernandez_huerta(text) {
  const { words, sentences, syllables: spoken } = counts(text, 'es');
  return 206.84 - 60 * (spoken / words) - 1.02 * (words / sentences);
}
