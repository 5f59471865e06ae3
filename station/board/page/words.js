// What the page itself says (station/words/board-words.h), and how times and states are said. Nothing here says more than
// was counted or seen. What the station says comes with its view.
import { has, part } from './sentences.js';

// The whole name of a sentence of the page, as a value of another.
export const key = (name) => `board-${name}`;
export const t = (name, values) => part(key(name), values);

// The plainer words where a patient who is awake reads them too.
const worded = (name, awake) => (awake && has(key(`${name}-awake`)) ? `${name}-awake` : name);
export const plain = (name, awake, values) => t(worded(name, awake), values);
export const reply = (verdict, awake) => t('reply', { what: key(worded(verdict, awake)) });

// What stands in the page from the start.
export function label() {
	document.title = t(document.body.dataset.title);
	for (const e of document.querySelectorAll('[data-label]'))
		e.setAttribute('aria-label', t(e.dataset.label));
	for (const e of document.querySelectorAll('[data-text]'))
		e.textContent = t(e.dataset.text);
}

// How long ago, as values of a sentence about {what}.
export function ago(ms) {
	const s = Math.max(0, Math.floor(ms / 1000));
	if (s < 60)
		return { what: key('ago-s'), n: s };
	if (s < 3600)
		return { what: key('ago-min'), n: Math.floor(s / 60) };
	return s < 172800 ? { what: key('ago-h'), n: Math.floor(s / 3600) } : { what: key('ago-days'), n: Math.floor(s / 86400) };
}

export function age(ms) {
	const days = Math.floor(ms / 86400000);
	return days > 0 ? t('age-days', { n: days }) : t('age-today');
}

// The time of day in the room, by the station's clock.
export function hour(wall_ms, utc_min) {
	const at = new Date(wall_ms + utc_min * 60000);
	return `${String(at.getUTCHours()).padStart(2, '0')}:${String(at.getUTCMinutes()).padStart(2, '0')}`;
}

export const whole = (ms) => Math.max(0, Math.floor(ms / 60000));

// Through a power cut the longer of both clocks: the wall clock's, or where it is not trusted the known minutes.
export const doubt = (d) => `${d.state === 'maybe-on' ? '-maybe' : ''}${!d.gap ? '' : d.by_wall_ms ? '-wall' : '-least'}`;
export const runs = (d) => d.state === 'on' || d.state === 'maybe-on';
export const ran_min = (d, passed_ms) => whole(Math.max(d.stretch_ms, d.by_wall_ms ?? 0) + passed_ms);

// What stands at a digit, in words.
export function digitWords(d, passed_ms) {
	if (runs(d))
		return t(`ran${doubt(d)}`, { n: ran_min(d, passed_ms) });
	if (d.state === 'off')
		return t(`was-on${d.gap ? '-at-least' : ''}${d.seen_bare ? '-seen' : ''}`, { n: whole(d.total_ms) });
	return d.seen_bare ? t('seen-bare') : d.marked ? t('marked-digit') : '';
}

export const digitName = (number) => part(`digit-${number}`);

// A list behind a colon, or of remarks.
export const list = (words) => (words.length ? words.reduce((first, second) => t('list', { first, second })) : '');

// Of a slip as the view has it.
export const slipValues = (s) => ({ slip: s.number, case: s.case, what: key(`slip-${s.kind}`), then: key(`slip-${s.state.replaceAll(' ', '-')}`) });
