// Sentences by name, with named values, in the room's language: the page's half of station/words (page-catalogue.h has the form).
// English is in the program, so that the page has words when nothing else answers.
import english from './english.js';

let spoken = english;

// What only one page says comes with that page.
export const also = (words) => Object.assign(english.words, words);

const zero = (n, digits) => String(n).padStart(digits, '0');
const rtl = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]/;

// A value keeps its own direction, whatever stands around it.
const isolated = (text) => (text && (spoken.direction === 'rtl' || rtl.test(text)) ? `\u2068${text}\u2069` : text);

export const language = () => spoken.code;
export const direction = () => spoken.direction;

// Takes another language, and says whether anything is otherwise now. One that is not there leaves English.
export async function speak(code) {
	if (!code || code === spoken.code)
		return false;
	let next = english;
	if (code !== english.code) {
		const answer = await fetch(`words/${encodeURIComponent(code)}.json`).catch(() => null);
		next = answer?.ok ? await answer.json() : english;
	}
	const other = next !== spoken;
	spoken = next;
	document.documentElement.lang = spoken.code;
	document.documentElement.dir = spoken.direction;
	return other;
}

export const has = (key) => key in english.words;

function form(key, n) {
	const forms = spoken.words[key] ?? english.words[key];
	if (forms === undefined) { // the rest of the board is still to be seen
		console.error(`no sentence '${key}'`);
		return key;
	}
	return Array.isArray(forms) ? forms[Number(spoken.plural[n < 200 ? n : 100 + n % 100])] : forms;
}

function value(name, values) {
	const v = values[name], [type, size] = english.values[name] ?? ['TEXT', 0];
	switch (type) {
	case 'SAYING': return v ? part(v, values) : '';
	case 'DIGIT': return part(`digit-${v}`);
	case 'DIGITS': return isolated(zero(v, size));
	case 'TIME': return isolated(typeof v === 'number' ? `${zero(Math.floor(v / 60), 2)}:${zero(v % 60, 2)}` : v);
	case 'WORDS': return v;
	default: return isolated(String(v));
	}
}

// As it stands in the middle of another sentence. A saying that is not given leaves nothing, nor the space before it.
export function part(key, values = {}) {
	return form(key, values.n ?? 0).replace(/( ?)\{([a-z_]+)\}/g, (all, space, name) => {
		const text = value(name, values);
		return text || english.values[name]?.[0] !== 'SAYING' ? space + text : '';
	});
}
