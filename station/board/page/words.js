// What the page itself says, by name and with named values, and how times and states are said. Nothing here says more
// than was counted or seen. What the station says comes with its view.
const texts = {
	board: 'Count board',
	place: '{room} · case {case}',
	'by-hand': 'Count by hand on the paper sheet.',
	'not-styled': 'This page loaded only in part. Count by hand on the paper sheet, and load it again.',
	silent: 'No word from the station for {n} s. Count by hand on the paper sheet.',
	waiting: 'Waiting for the station. Until it speaks, count by hand on the paper sheet.',
	'no-such-room': 'The station does not know room {room}. Count by hand on the paper sheet.',
	'no-room': 'The station does not know any room. Count by hand on the paper sheet.',
	'may-be-old': 'The figures below may be old.',

	'single-person': 'single-person count',
	'patient-left': 'patient has left the room',
	cancelled: 'cancelled, count owed',
	awake: 'patient awake',
	'last-word': 'last word {ago}',
	'last-scan': 'last scan {ago}',
	'no-scan': 'no scan yet',

	'ago-s': '{n} s ago',
	'ago-min': '{n} min ago',
	'ago-h': '{n} h ago',
	'ago-days': ['{n} day ago', '{n} days ago'],
	min: 'min',
	minutes: '{n} min',
	accepted: 'Accepted',
	refused: 'Refused',
	question: 'Question',
	'accepted-awake': 'Noted',
	'refused-awake': 'Not taken',
	'question-awake': 'Question',
	reply: '{verdict}:',

	on: 'On: {digit}',
	'maybe-on': 'On? {digit}',
	since: 'since {time}',
	'since-reminder': 'since {time}; next reminder at {n} min',
	'by-wall-clock': 'by wall clock',
	'at-least': 'at least',
	'seen-bare': 'seen bare',
	'marked-digit': 'marked digit',
	'was-on': 'was on {n} min, not yet seen bare',
	'was-on-at-least': 'was on at least {n} min, not yet seen bare',
	'was-on-seen': 'was on {n} min, seen bare',
	'was-on-at-least-seen': 'was on at least {n} min, seen bare',
	'told-on': '{digit}: tourniquet on, {time}',
	'told-forceps': '{what}, forceps on it',
	'told-digit': '{digit}: {what}',
	'no-digit': 'No digit has a tourniquet on this sheet',
	'left-hand': 'left hand', 'right-hand': 'right hand', 'left-foot': 'left foot', 'right-foot': 'right foot',

	sheet: 'count sheet',
	'counted-in': 'counted in',
	'accounted-for': 'accounted for',
	'no-case': 'No case is open here',
	'nothing-known': 'Nothing is known here',
	'nothing-in': 'Nothing is counted in yet',
	'of-accounted': '{n} of {all} accounted for',
	'nothing-in-yet': 'nothing in yet',
	'is-on': 'on: {digit}',
	'is-on-it': 'on',
	'is-on-nowhere': 'on a digit',
	'is-off': 'off, not yet accounted for',
	'is-missing': 'NOT FOUND',
	'is-missing-awake': 'still to be found',
	'is-extra': 'extra item',
	'is-away': 'isolated, not in the count',
	'is-returned': 'returned unopened',
	'not-listed': 'not listed',
	dropped: 'dropped',
	added: 'added',
	'and-lines': ['{n} further line, all accounted for', '{n} further lines, all accounted for'],
	total: 'all',

	discrepancy: 'DISCREPANCY',
	'discrepancy-awake': 'Counting again',
	'not-found': 'Not found: {items}',
	'not-found-awake': 'Still to find: {items}',
	'extra-found': 'Extra: {items}',
	'may-be-on': 'May be on: {digits}',
	'may-be-on-awake': 'Look at: {digits}',
	'one-of': '{item} ({n} of {all})',
	'counted-again': 'Counted again: {n} of {all} shown',
	step: '{n}. {step}',
	'step-done': 'done',
	'step-not-done': 'not done',
	'steps-done': '{n} done',
	'steps-not-done': '{n} not done',
	'steps-to-go': '{n} to go',

	'after-patient-called-back': 'Call that patient back now',
	'after-digit-seen-bare': ['Look at that patient\'s digit now', 'Look at that patient\'s digits now'],
	'after-ward-told': 'Tell the ward now',
	'owed-patient-called-back': 'patient called back, or still here',
	'owed-digit-seen-bare': 'digit seen bare',
	'owed-ward-told': 'ward told',
	'after-case': 'Case {case}, since {time}. Stays until it is entered:',
	'after-more': ['and {n} further case', 'and {n} further cases'],
	'after-open': 'Case {case}: {what}',

	'sign-out': 'Sign-out: read aloud',
	'point-yes': 'yes',
	'point-no': 'NO: held',

	'ended-reconciled': 'Case {case} ended reconciled, {time}',
	'ended-unresolved': 'Case {case} ended UNRESOLVED, {time}',
	'ended-cancelled': 'Case {case} ended as cancelled, {time}',

	stray: 'Not counted: a scanner that the station does not know typed into this page. Use the room\'s own scanner; scanners.ini lists which are known.',
	'gap-by-wall': 'Clock gap: {digit} on since {time} by the wall clock; at least {n} min are known.',
	'gap-at-least': 'Clock gap: {digit} on for at least {n} min; the wall clock cannot be trusted.',
	owed: 'Still to do: {what}.',
	'suspended-case': 'Case {case} is suspended here: its clocks go on. SUSPEND continues it.',
	'incident-owed': 'Case {case}: incident number owed.',
	'slip-of': 'Slip {slip}, case {case}: {state}, not seen yet.',
	'slip-of-kind': 'Slip {slip}, case {case}, {kind}: {state}, not seen yet.',
	'kind-discrepancy': 'discrepancy',
	'kind-addendum': 'addendum',
	'typing-over': 'Typing is closed: ask for a new ticket.',
	'sound-waits': 'Sound waits until this board is touched once.',
	'no-printer': 'No printer is set: slips are written as PDF.',
	'and-more': 'and {n} more',
	'and-more-oldest': 'and {n} more, oldest {age}',
	'age-today': 'of today',
	'age-days': ['{n} day', '{n} days'],
	'nobody-answers': 'Nobody answers:',
	member: '{place} {name}',
	'nobody-badged': 'Nobody is badged yet',
	agreed: '{count} agreed aloud {time} by {field} and {circulating}, recorded by {recorded}',
	'agreed-alone': '{count} {time}, single-person, by {field}',
	intended: 'This station records and supports the count that people make, and never replaces it. Local policy and the licensed practitioner decide.',

	'type-a-code': 'Type a code',
	'light-and-sound': 'Light and sound',
};

// A text with its values; of two forms `n` decides.
export function t(name, values = {}) {
	const found = texts[name] ?? name, form = Array.isArray(found) ? found[values.n === 1 ? 0 : 1] : found;
	return form.replace(/\{([a-z]+)\}/g, (_, value) => values[value] ?? '');
}

const has = (name) => name in texts;
// The plainer words where a patient who is awake reads them too.
export const plain = (name, awake, values) => t(awake && has(`${name}-awake`) ? `${name}-awake` : name, values);

export function ago(ms) {
	const s = Math.max(0, Math.floor(ms / 1000));
	if (s < 60)
		return t('ago-s', { n: s });
	if (s < 3600)
		return t('ago-min', { n: Math.floor(s / 60) });
	return s < 172800 ? t('ago-h', { n: Math.floor(s / 3600) }) : t('ago-days', { n: Math.floor(s / 86400) });
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

const whole = (ms) => Math.max(0, Math.floor(ms / 60000));
export const minutes = (ms) => t('minutes', { n: whole(ms) });
export const verdict = (v, awake) => plain(v, awake);

// Through a power cut the longer of both clocks: the wall clock's, or the known minutes where it cannot be trusted.
export const doubt = (d) => (!d.gap ? '' : d.by_wall_ms ? t('by-wall-clock') : t('at-least'));
export const runs = (d) => d.state === 'on' || d.state === 'maybe-on';
export const ran_min = (d, passed_ms) => whole(Math.max(d.stretch_ms, d.by_wall_ms ?? 0) + passed_ms);

// What stands at a digit, in words.
export function digitWords(d, passed_ms) {
	const how = doubt(d) && `${doubt(d)} `;
	switch (d.state) {
	case 'on': return `${how}${t('minutes', { n: ran_min(d, passed_ms) })}`;
	case 'maybe-on': return `on? ${how}${t('minutes', { n: ran_min(d, passed_ms) })}`;
	case 'off': return t(`was-on${d.gap ? '-at-least' : ''}${d.seen_bare ? '-seen' : ''}`, { n: whole(d.total_ms) });
	default: return d.seen_bare ? t('seen-bare') : d.marked ? t('marked-digit') : '';
	}
}

// A list as people say it.
export const list = (words) => words.join(', ');
